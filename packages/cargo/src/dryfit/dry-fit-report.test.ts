import { DEFAULT_CLEARANCES } from '@gusset/contracts/cargo';
import type { DryFitProgress, DryFitQuestion } from '@gusset/contracts/dryfit';
import { describe, expect, it } from 'vitest';
import { buildCavity } from '../build-cavity.ts';
import { HATCH_ESTATE } from '../forms/hatch-estate.ts';
import { answered, changed, lengthReading, RECTANGLE, uprightProfile } from '../survey-fixture.ts';
import { checkMotion } from './check-motion.ts';
import { dryFitReport } from './dry-fit-report.ts';
import { reportCase } from './report/report-case.ts';

/** Halden hatch, 800 deep and 500 high behind a sill of 100: an opening of 400, with a ± of its own. */
function question(heightMm: number, plusMinusMm = 0, depthMm = 700): DryFitQuestion {
  const readings = changed(
    RECTANGLE,
    lengthReading('sillHeight', 100),
    lengthReading('opening', 400, plusMinusMm),
  );
  return {
    cavity: answered(buildCavity(HATCH_ESTATE, readings, { obstructions: [], keepFree: [] })),
    clearances: DEFAULT_CLEARANCES,
    profile: uprightProfile(depthMm, heightMm),
    widthMm: 900,
    final: { xMm: 20, yMm: 0, thetaRad: 0, zMm: 0 },
    thetaRange: null,
    alternatives: [],
    removable: [],
  };
}

const report = (asked: DryFitQuestion, onProgress?: (progress: DryFitProgress) => void) =>
  answered(
    dryFitReport(asked, {
      finestMm: 2,
      mostCells: 20_000,
      ...(onProgress === undefined ? {} : { onProgress }),
    }),
  );

describe('dryFitReport', () => {
  it('says what a low box has to spare, and shows a motion that the independent check passes', () => {
    const asked = question(380);
    const said = report(asked);
    expect(said).toMatchObject({ verdict: 'goes-in', shortBy: null, jam: null, remedies: [] });
    // 380 through 400: never more than 10 all round.
    expect(said.margin.atLeastMm).toBeGreaterThanOrEqual(8);
    expect(said.margin.atMostMm).toBeLessThanOrEqual(11);
    expect(said.tightest?.contacts[0]?.surface.name).toMatch(/opening|roof|floor/i);
    const { input } = answered(reportCase(asked.cavity, asked, 'nominal'));
    const path = said.path.map((pose) => ({ ...pose, zMm: pose.zMm - asked.widthMm / 2 }));
    expect(checkMotion(input, path, 0).holds).toBe(true);
  });

  it('says by how much a box that is too high falls short, where it jams, and what would help', () => {
    const said = report(question(412));
    expect(said).toMatchObject({ verdict: 'does-not-go-in', tooClose: null, path: [] });
    // 412 through 400: 12 too many, 6 on either side at best.
    expect(said.shortBy?.atLeastMm).toBeLessThanOrEqual(6);
    expect(said.shortBy?.atMostMm).toBeGreaterThanOrEqual(5);
    expect(said.jam?.contacts[0]?.gapMm).toBeLessThan(0);
    const lower = said.remedies.find(({ kind }) => kind === 'lower');
    // Anything above 400 stays out; what the search can't tell apart may cost a few mm more.
    expect(lower?.byMm).toBeGreaterThanOrEqual(12);
    expect(lower?.byMm).toBeLessThanOrEqual(16);
    expect(lower?.outsideLitresLost).toBeCloseTo(((lower?.byMm ?? 0) * 700 * 900) / 1e6, 6);
  });

  it('says that it is too close where the ± decide, and names the dimension that would settle it', () => {
    const said = report(question(396, 8));
    expect(said).toMatchObject({ verdict: 'too-close', tooClose: 'plus-minus' });
    expect(said.decidingDimension).toMatchObject({ key: 'opening' });
  });

  it('says no to a place that overlaps a wall, and where', () => {
    const said = report({ ...question(380), final: { xMm: -40, yMm: 0, thetaRad: 0, zMm: 0 } });
    expect(said).toMatchObject({ verdict: 'does-not-go-in', fits: { asMeasured: false } });
    expect(said.jam?.contacts[0]?.surface).toMatchObject({ type: 'wall', id: 'seat-back' });
    expect(said.jam?.contacts[0]?.gapMm).toBeCloseTo(-40, 6);
  });

  it('tells its steps and ends with the answer it gives', () => {
    const steps: DryFitProgress[] = [];
    const said = report(question(380), (progress) => steps.push(progress));
    expect(steps.at(-1)).toEqual({ step: 'done', share: 1, soFar: said });
  });

  it('refuses a place tipped farther than is allowed on the way', () => {
    const answer = dryFitReport({ ...question(380), thetaRange: { minRad: 0.2, maxRad: 0.5 } });
    expect(answer).toMatchObject({ refusal: { field: 'final.thetaRad' } });
  });
});

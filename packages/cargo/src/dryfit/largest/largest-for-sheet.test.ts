// Truth: the rectangle on paper, 800 deep and 500 high, open at its whole rear, every reading exact: a box may be as deep and
// high as the clearances leave, and a floor kept free takes its own millimetres off the depth.
import { DEFAULT_CLEARANCES } from '@gusset/contracts/cargo';
import type { LargestForSheetWish, ProfileMeasures } from '@gusset/contracts/dryfit';
import { describe, expect, it } from 'vitest';
import { buildCavity } from '../../build-cavity.ts';
import { HATCH_ESTATE } from '../../forms/hatch-estate.ts';
import { placeBox } from '../../place-box.ts';
import { answered, RECTANGLE } from '../../survey-fixture.ts';
import { largestForSheet } from './largest-for-sheet.ts';
import { SHEET_FAMILIES } from './sheet-family.ts';

const WIDTH_MM = 700;
const cavity = answered(buildCavity(HATCH_ESTATE, RECTANGLE, { obstructions: [], keepFree: [] }));
const wish: LargestForSheetWish = {
  cavity,
  clearances: DEFAULT_CLEARANCES,
  widthMm: WIDTH_MM,
  anchor: { xMm: 20, yMm: 0, thetaRad: 0, zMm: 0 },
  slide: { minMm: 0, maxMm: 0 },
  thetaRange: null,
  families: ['box'],
  ranges: {
    b: { minMm: 200, maxMm: 760 },
    t: { minMm: 150, maxMm: 700 },
    h: { minMm: 200, maxMm: 480 },
    m: { minMm: 60, maxMm: 400 },
  },
  longestPanelMm: null,
  driverDepth: null,
  leastBaffleHeightMm: null,
  leastBaffleAreaMm2: null,
  floorKeptFreeMm: [],
};

/** 18 mm board all round a box whose section is `shape`: near enough to tell better from worse. */
const netLitres = (measures: ProfileMeasures, family: keyof typeof SHEET_FAMILIES) => {
  const inside = SHEET_FAMILIES[family].areaMm2(measures) - 36 * (measures.b + measures.h);
  return inside <= 0 ? null : (inside * (WIDTH_MM - 36)) / 1e6;
};
const search = (change: Partial<LargestForSheetWish>, isCancelled = () => false) =>
  answered(largestForSheet({ ...wish, ...change }, { netLitres, isCancelled }));

describe('largestForSheet', () => {
  it('fills a rectangle up to what the clearances leave, within a step', () => {
    const { best, endedEarly } = search({});
    const roofMm = 500 - (best?.measures.h ?? 0);
    expect(endedEarly).toBe(false);
    expect(best?.measures.b).toBeGreaterThan(745);
    expect(roofMm).toBeLessThan(30);
    if (best === null) throw new Error('nothing found');
    const placed = answered(placeBox({ cavity, profile: best.profile, widthMm: WIDTH_MM, pose: best.final }));
    expect(placed.clearances.every(({ verdict }) => verdict === 'clear')).toBe(true);
  });

  it('gives up litres for floor kept free, never the other way round', () => {
    const { tradeOff } = search({ floorKeptFreeMm: [0, 100, 300] });
    const [none, some, much] = tradeOff.map(({ best }) => best);
    for (const [best, keptFreeMm] of [
      [some, 100],
      [much, 300],
    ] as const) {
      expect((best?.final.xMm ?? 0) + (best?.measures.b ?? 900)).toBeLessThanOrEqual(800 - keptFreeMm);
    }
    expect(none?.netLitres).toBeGreaterThan(some?.netLitres ?? 0);
    expect(some?.netLitres).toBeGreaterThan(much?.netLitres ?? 0);
  });

  it('keeps the depth that the magnet needs, and panels within the sheet', () => {
    const { best } = search({
      families: ['wedge', 'stepped'],
      driverDepth: { depthMm: 420, atHeightMm: 190 },
      longestPanelMm: 720,
    });
    if (best === null) throw new Error('nothing found');
    expect(SHEET_FAMILIES[best.family].depthAtMm(best.measures, 190)).toBeGreaterThanOrEqual(420);
    expect(best.measures.b).toBeLessThanOrEqual(720);
  });

  it('finds nothing where no box can be built', () => {
    const answer = answered(largestForSheet(wish, { netLitres: () => null }));
    expect(answer).toMatchObject({ best: null, runs: 0 });
  });

  it('tells of better boxes as it finds them and stops when told to', () => {
    const told: number[] = [];
    const answer = answered(
      largestForSheet(wish, {
        netLitres,
        onBest: (best) => told.push(best.netLitres),
        isCancelled: () => told.length >= 2,
      }),
    );
    expect(told).toHaveLength(2);
    expect(told[1]).toBeGreaterThan(told[0] ?? 0);
    expect(answer.endedEarly).toBe(true);
  });

  it('refuses a range that runs backwards', () => {
    const answer = largestForSheet({ ...wish, slide: { minMm: 5, maxMm: 0 } }, { netLitres });
    expect(answer).toMatchObject({ refusal: { field: 'slide.maxMm', got: 0 } });
  });
});

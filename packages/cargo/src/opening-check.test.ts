import { openingCheckSchema } from '@gusset/contracts/cargo';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildCavity } from './build-cavity.ts';
import { HATCH_ESTATE } from './forms/hatch-estate.ts';
import { passesOpeningSquareOn } from './opening-check.ts';
import { answered, changed, lengthReading, RECTANGLE, SLANTED, uprightProfile } from './survey-fixture.ts';

// Opening 500 high and upright, 950 wide; 10 mm wanted all round.
const cavity = answered(buildCavity(HATCH_ESTATE, RECTANGLE));

const check = (depthMm: number, heightMm: number, widthMm = 900, finishMm = 0, of = cavity) =>
  answered(
    passesOpeningSquareOn({ cavity: of, profile: uprightProfile(depthMm, heightMm), widthMm, finishMm }),
  );

describe('passesOpeningSquareOn', () => {
  it('passes upright with room to spare', () => {
    const answer = check(450, 400);
    expect(answer).toMatchObject({
      verdict: 'passes',
      heightSpareMm: 100,
      widthSpareMm: 50,
      minCaliperWidthMm: 400,
    });
    expect(openingCheckSchema.safeParse(answer).error).toBeUndefined();
  });

  it('passes tipped over where only the least caliper width is small enough', () => {
    const answer = check(300, 520);
    expect(answer).toMatchObject({ verdict: 'passes', minCaliperWidthMm: 300, heightSpareMm: 200 });
    const [upright, least] = answer.trials;
    expect(upright).toMatchObject({ orientation: 'upright', extentMm: 520, heightSpareMm: -20 });
    expect(Math.abs(least?.tiltRad ?? 0)).toBeCloseTo(Math.PI / 2, 9);
  });

  it('is too close to call inside clearance and ±', () => {
    expect(check(490, 490)).toMatchObject({ verdict: 'too-close', heightSpareMm: 10, wantedSpareMm: 20 });
    const unsure = answered(buildCavity(HATCH_ESTATE, changed(RECTANGLE, lengthReading('opening', 500, 8))));
    expect(check(475, 475, 900, 0, unsure)).toMatchObject({
      verdict: 'too-close',
      worstHeightSpareMm: expect.closeTo(17, 6),
    });
    expect(check(504, 504, 900, 0, unsure).verdict).toBe('too-close');
  });

  it('does not pass where neither way goes through, or the width does not', () => {
    expect(check(520, 520)).toMatchObject({ verdict: 'does-not-pass', heightSpareMm: -20 });
    expect(check(300, 300, 960)).toMatchObject({ verdict: 'does-not-pass', widthSpareMm: -10 });
  });

  it('adds the finish to both faces', () => {
    expect(check(450, 400, 900, 4)).toMatchObject({
      heightSpareMm: 92,
      widthSpareMm: 42,
      minCaliperWidthMm: 408,
    });
  });

  it('measures across a leaning opening: 3-4-5', () => {
    // The jaws run along (-3, 4): an upright a x b box spans 0.6 a + 0.8 b.
    const slanted = answered(buildCavity(HATCH_ESTATE, SLANTED));
    const [upright] = check(200, 300, 900, 0, slanted).trials;
    expect(upright?.extentMm).toBeCloseTo(0.6 * 200 + 0.8 * 300, 6);
  });

  it('says in every sentence that turning is not considered', () => {
    for (const answer of [check(450, 400), check(490, 490), check(520, 520)]) {
      expect(answer.sentenceCode).toContain('turning-not-considered');
    }
  });

  it('never passes a larger box where a smaller one does not', () => {
    const rank = { 'does-not-pass': 0, 'too-close': 1, passes: 2 } as const;
    const size = fc.double({ min: 50, max: 700, noNaN: true });
    fc.assert(
      fc.property(size, size, fc.double({ min: 1, max: 1.5, noNaN: true }), (depthMm, heightMm, larger) => {
        const small = check(depthMm, heightMm);
        const large = check(depthMm * larger, heightMm * larger);
        expect(rank[large.verdict]).toBeLessThanOrEqual(rank[small.verdict]);
        expect(small.minCaliperWidthMm).toBeLessThanOrEqual(Math.min(depthMm, heightMm) + 1e-9);
      }),
      { numRuns: 100 },
    );
  });

  it('refuses a box that is none and a finish below nothing', () => {
    expect(isRefusal(passesOpeningSquareOn({ cavity, profile: [], widthMm: 900, finishMm: 0 }))).toBe(true);
    const answer = passesOpeningSquareOn({
      cavity,
      profile: uprightProfile(1, 2),
      widthMm: 900,
      finishMm: -1,
    });
    expect(isRefusal(answer) && answer.refusal.field).toBe('finishMm');
  });
});

import type { Measurement } from '@gusset/contracts/cargo';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildCavity, NO_SURROUNDINGS } from './build-cavity.ts';
import { SALOON_BOOT } from './forms/saloon-boot.ts';
import { UNDER_SEAT } from './forms/under-seat.ts';
import { lengthOf, minus } from './plane/vector.ts';
import { answered, changed, lengthReading, RECTANGLE, UNDER_SEAT_READINGS } from './survey-fixture.ts';
import { cornerSpreads, reconcileSurvey } from './survey-stand.ts';

/**
 * Front edge 220 ±4, opening under it 210 ±3, lip exactly 0: both say how high the front edge is. By hand, weights 1/16 and
 * 1/9: (220/16 + 210/9) / (1/16 + 1/9) = 213.6, ± 1/√(1/16 + 1/9) = 2.4.
 */
const TWICE = changed(
  UNDER_SEAT_READINGS,
  lengthReading('frontHeight', 220, 4),
  lengthReading('floorDepth', 460, 2),
  lengthReading('openingHeight', 210, 3),
);

describe('reconcileSurvey', () => {
  it('weighs readings by their ±', () => {
    const adjusted = answered(reconcileSurvey(UNDER_SEAT, TWICE));
    expect(adjusted.find(({ key }) => key === 'frontHeight')).toMatchObject({
      measured: 220,
      adjusted: expect.closeTo(213.6, 4),
      residual: expect.closeTo(6.4, 4),
      timesPlusMinus: expect.closeTo(1.6, 4),
      plusMinus: 4,
      adjustedPlusMinus: expect.closeTo(2.4, 4),
      isCheck: false,
    });
    expect(adjusted.find(({ key }) => key === 'openingHeight')).toMatchObject({
      adjusted: expect.closeTo(213.6, 4),
      residual: expect.closeTo(-3.6, 4),
      adjustedPlusMinus: expect.closeTo(2.4, 4),
      isCheck: true,
    });
    // What no check says anything about stays as it was.
    expect(adjusted.find(({ key }) => key === 'floorDepth')).toMatchObject({ adjusted: 460, residual: 0 });
  });

  it('is null where nothing was taken twice over', () => {
    expect(reconcileSurvey(UNDER_SEAT, UNDER_SEAT_READINGS)).toBeNull();
  });
});

describe('a cavity on reconciled values', () => {
  const reconciled = (form = UNDER_SEAT, readings: readonly Measurement[] = TWICE) =>
    answered(buildCavity(form, readings, NO_SURROUNDINGS, { reconciles: true }));

  it('stands on them only where the shop says so', () => {
    const asTaken = answered(buildCavity(UNDER_SEAT, TWICE));
    expect(asTaken.opening.heightMm).toBe(220);
    expect(asTaken.adjusted).toBeUndefined();
    const { opening, adjusted } = reconciled();
    expect(opening.heightMm).toBeCloseTo(213.6, 4);
    expect(adjusted?.length).toBeGreaterThan(0);
  });

  it('still says that the readings contradict each other', () => {
    const far = changed(TWICE, lengthReading('openingHeight', 190, 3));
    const { findings } = reconciled(UNDER_SEAT, far);
    expect(findings).toContainEqual(expect.objectContaining({ code: 'check-disagrees', byMm: -30 }));
  });

  it('stands on the readings as taken where there is no check', () => {
    expect(reconciled(UNDER_SEAT, UNDER_SEAT_READINGS)).toEqual(
      answered(buildCavity(UNDER_SEAT, UNDER_SEAT_READINGS)),
    );
  });

  it('carries the ± to every corner', () => {
    const spreads = answered(cornerSpreads(UNDER_SEAT, TWICE, { reconciles: true }));
    expect(spreads.find(({ cornerId }) => cornerId === 'front-edge')).toMatchObject({
      xxMm2: expect.closeTo(4, 3),
      xyMm2: expect.closeTo(0, 3),
      yyMm2: expect.closeTo(2.4 ** 2, 3),
      likelyMm: expect.closeTo(2.4, 3),
      // Own ± and correction of the height, own ± of the depth.
      worstMm: expect.closeTo(4 + 6.4 + 2, 2),
    });
    const asTaken = answered(cornerSpreads(UNDER_SEAT, TWICE));
    expect(asTaken.find(({ cornerId }) => cornerId === 'front-edge')).toMatchObject({
      yyMm2: expect.closeTo(16, 6),
      worstMm: expect.closeTo(6, 6),
    });
  });

  it('is never less sure than its readings alone', () => {
    const plusMinus = fc.double({ min: 0.5, max: 12, noNaN: true });
    const off = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.array(plusMinus, { minLength: 5, maxLength: 5 }), off, off, (sizes, a, b) => {
        const readings = withDiagonals(sizes, a, b);
        const before = answered(buildCavity(SALOON_BOOT, readings));
        const after = reconciled(SALOON_BOOT, readings);
        for (const [i, wall] of after.walls.entries()) {
          const own = before.walls[i]?.likelyPlusMinusMm ?? 0;
          // The section has moved a little, so its slopes have too.
          expect(wall.likelyPlusMinusMm).toBeLessThanOrEqual(own * 1.05 + 0.05);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('has every car within its ± inside the worst case of its corners', () => {
    const within = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.array(within, { minLength: 5, maxLength: 5 }), within, within, (errors, a, b) => {
        const truth = withDiagonals([], 0, 0);
        const readings = withDiagonals([4, 4, 4, 4, 4], a, b).map((it, i) =>
          'valueMm' in it && it.plusMinusMm !== 0
            ? { ...it, valueMm: it.valueMm + 4 * (errors[i] ?? 0) }
            : it,
        );
        const car = answered(buildCavity(SALOON_BOOT, truth));
        const spreads = cornerSpreads(SALOON_BOOT, readings, { reconciles: true });
        if (isRefusal(spreads)) throw new Error(spreads.refusal.why);
        for (const [i, { at, worstMm }] of spreads.entries()) {
          expect(lengthOf(minus(at, car.polygon[i] ?? at))).toBeLessThanOrEqual(worstMm + 0.05);
        }
      }),
      { numRuns: 60 },
    );
  });
});

/** A saloon boot with both diagonals, each off by a share of its ±; the first readings get these ±. */
function withDiagonals(sizes: readonly number[], a: number, b: number): Measurement[] {
  const loose = sizes.some((size) => size > 0);
  const boot: readonly Measurement[] = [
    lengthReading('floorDepth', 900),
    lengthReading('seatHeight', 520),
    lengthReading('shelfDepth', 500),
    lengthReading('shelfEdgeHeight', 500),
    lengthReading('sillHeight', 200),
    ...RECTANGLE.filter(({ key }) => ['openingWidth', 'archWidth', 'seatLean'].includes(key)),
    ...['floorRise', 'sillLean', 'lidFrame'].map((key) => lengthReading(key, 0)),
  ];
  const readings = boot.map((it, i) => ('valueMm' in it ? { ...it, plusMinusMm: sizes[i] ?? 0 } : it));
  if (!loose) return readings;
  return [
    ...readings,
    lengthReading('footToEdge', Math.hypot(500, 500) + 3 * a, 3),
    lengthReading('floorEndToSeatTop', Math.hypot(900, 520) + 3 * b, 3),
  ];
}

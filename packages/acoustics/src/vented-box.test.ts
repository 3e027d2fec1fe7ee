import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { medlar12, quince10 } from '../truth/drivers.ts';
import { solveResponse } from './response.ts';
import {
  chebyshevOrder,
  fitFamily,
  fourthOrderOf,
  quasiThirdOrder,
  ratiosFor,
  ventedAlignment,
  ventedF3Ratio,
} from './vented-box.ts';

const FLATTEST = chebyshevOrder(1);

/** |H|² of the fourth-order high-pass at x = f/f0. */
function powerAt({ a1, a2, a3 }: ReturnType<typeof fourthOrderOf>, x: number): number {
  const re = x ** 4 - a2 * x ** 2 + 1;
  const im = a3 * x - a1 * x ** 3;
  return x ** 8 / (re ** 2 + im ** 2);
}

// Spot values of the published alignments (Thiele 1971, Small 1973).
describe('vented alignments', () => {
  it('has the flattest response at QT 0.3827, alpha 1.4142, h 1, with -3 dB at fs', () => {
    const box = ratiosFor(FLATTEST, 0);
    expect(box?.qts).toBeCloseTo(0.3827, 4);
    expect(box?.alpha).toBeCloseTo(Math.SQRT2, 4);
    expect(box?.h).toBeCloseTo(1, 10);
    expect(box === null ? null : ventedF3Ratio(box)).toBeCloseTo(1, 9);
  });

  it('has it at QT 0.4048, alpha 1.0613 with QL 7', () => {
    const box = ratiosFor(FLATTEST, 1 / 7);
    expect(box?.qts).toBeCloseTo(0.4048, 4);
    expect(box?.alpha).toBeCloseTo(1.0613, 4);
  });

  it('has the Chebyshev member k 0.8 at QT 0.4148, alpha 1.055, h 0.928, f3 0.867 fs', () => {
    const box = ratiosFor(chebyshevOrder(0.8), 0);
    expect(box?.qts).toBeCloseTo(0.4148, 4);
    expect(box?.alpha).toBeCloseTo(1.055, 3);
    expect(box?.h).toBeCloseTo(0.928, 3);
    expect(box === null ? null : ventedF3Ratio(box)).toBeCloseTo(0.867, 3);
  });

  it.each([
    ['quasi-third-order', 1.47, 3.03, 1.235],
    ['sub-chebyshev', 1.58, 3.01, 1.098],
    ['twin', 1.66, 2.78, 1],
  ] as const)(
    'gives a tight box of a QT 0.30 driver in %s f3 %f fs, alpha %f, h %f',
    (family, f3, alpha, h) => {
      const box = fitFamily(family, 0.3, 0);
      expect(box === null ? null : ventedF3Ratio(box)).toBeCloseTo(f3, 2);
      expect(box?.alpha).toBeCloseTo(alpha, 2);
      expect(box?.h).toBeCloseTo(h, 3);
    },
  );

  it('finds the response back from the box, with and without leak', () => {
    const target = fc.tuple(fc.double({ min: 2.62, max: 5, noNaN: true }), fc.constantFrom(0, 1 / 15, 1 / 7));
    fc.assert(
      fc.property(target, ([a1, leak]) => {
        const order = quasiThirdOrder(a1);
        const box = ratiosFor(order, leak);
        if (box === null) return;
        const back = fourthOrderOf(box);
        expect(back.a1).toBeCloseTo(order.a1, 8);
        expect(back.a2).toBeCloseTo(order.a2, 8);
        expect(back.a3).toBeCloseTo(order.a3, 8);
      }),
    );
  });

  it('stands at half power at f3, and nowhere above it', () => {
    const box = fc.record({
      qts: fc.double({ min: 0.15, max: 1.2, noNaN: true }),
      alpha: fc.double({ min: 0.1, max: 10, noNaN: true }),
      h: fc.double({ min: 0.3, max: 3, noNaN: true }),
      leak: fc.constantFrom(0, 1 / 7),
    });
    fc.assert(
      fc.property(box, (ratios) => {
        const order = fourthOrderOf(ratios);
        const corner = ventedF3Ratio(ratios) / Math.sqrt(ratios.h);
        expect(powerAt(order, corner)).toBeCloseTo(0.5, 6);
        for (const above of [1.05, 1.3, 2, 4, 10])
          expect(powerAt(order, corner * above)).toBeGreaterThan(0.5);
      }),
    );
  });
});

describe('ventedAlignment', () => {
  it('gives a box whose circuit is -3 dB at the corner it names', () => {
    const box = ventedAlignment({ ...medlar12, leMh: 0 }, 'quasi-third-order', { ql: 7 });
    if (isRefusal(box)) throw new Error(box.refusal.why);
    const flat = 9_000; // Hz, far above
    const result = solveResponse({
      frequenciesHz: [box.f3Hz, flat],
      source: { voltageVrms: 1 },
      driver: { ...medlar12, leMh: 0 },
      enclosure: {
        kind: 'vented',
        chamber: { netLitres: box.netLitres, ql: 7 },
        port: {
          mouth: { shape: 'round', diameterMm: 100 },
          outerEnd: { kind: 'flanged' },
          innerEnd: { kind: 'free' },
          sizing: { by: 'tuning', tuningHz: box.tuningHz },
        },
      },
    });
    if (isRefusal(result)) throw new Error(result.refusal.why);
    expect((result.splDb[0] ?? 0) - (result.splDb[1] ?? 0)).toBeCloseTo(-3.0103, 3);
    expect(result.figures.f3Hz).toBeCloseTo(box.f3Hz, 6);
  });

  it('refuses a family that has no member for the driver', () => {
    const box = ventedAlignment(quince10, 'quasi-third-order');
    expect(isRefusal(box) && box.refusal).toMatchObject({ field: 'family', got: 'quasi-third-order' });
  });
});

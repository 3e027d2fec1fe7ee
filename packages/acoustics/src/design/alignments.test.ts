import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { medlar12, quince10 } from '../../truth/drivers.ts';
import { closedBoxVolumeForQ } from '../closed-box.ts';
import { ventedAlignment } from '../vented-box.ts';
import { qForRise, suggestAlignments } from './alignments.ts';

function alignments(...args: Parameters<typeof suggestAlignments>) {
  const found = suggestAlignments(...args);
  if (isRefusal(found)) throw new Error(JSON.stringify(found.refusal));
  return found;
}

/** A driver of fs 30 Hz and Vas 100 L whose total Q is `qts`. */
const withQts = (qts: number) => ({ ...medlar12, fsHz: 30, vasLitres: 100, qms: 10 * qts, qes: qts / 0.9 });

const named = (found: ReturnType<typeof alignments>, textbook: string) =>
  found.designs.find((design) => design.textbook === textbook);

describe('closed alignments', () => {
  const found = alignments({ driver: quince10 });

  it('are the boxes of their Q, small first', () => {
    const closed = found.designs.filter(({ kind }) => kind === 'closed');
    expect(closed.map(({ textbook }) => textbook)).toEqual([
      'C2, 1 dB',
      'C2, 0.5 dB',
      'B2',
      'Bessel, second order',
      'critically damped, Q 0.5',
    ]);
    for (const design of closed) {
      if (design.kind !== 'closed') continue;
      expect(closedBoxVolumeForQ(quince10, design.qtc)).toMatchObject({
        netLitres: expect.closeTo(design.netLitres, 9),
      });
    }
  });

  // The book's table of Chebyshev filters: Q 0.8637 ripples by 0.5 dB, Q 0.9565 by 1 dB.
  it('rise by what they are listed for', () => {
    expect(qForRise(0.5)).toBeCloseTo(0.8637, 4);
    expect(qForRise(1)).toBeCloseTo(0.9565, 4);
    expect(named(found, 'C2, 1 dB')?.peakDb).toBeCloseTo(1, 9);
    expect(named(found, 'B2')).toMatchObject({ peakDb: 0, peakHz: null });
  });

  it('have Butterworth as flattest and deepest, critical damping as gentlest, the liveliest as smallest', () => {
    expect(named(found, 'B2')?.strengths).toEqual(['flattest', 'deepest']);
    expect(named(found, 'critically damped, Q 0.5')?.strengths).toContain('gentlest');
    expect(named(found, 'C2, 1 dB')?.strengths).toContain('smallest');
  });

  it('leave out what lies below the Q of the driver, and say so', () => {
    const { designs, absent } = alignments({ driver: withQts(0.6) });
    expect(designs.filter(({ kind }) => kind === 'closed').map(({ textbook }) => textbook)).toEqual([
      'C2, 1 dB',
      'C2, 0.5 dB',
      'B2',
    ]);
    expect(absent).toContainEqual({
      kind: 'closed',
      textbook: 'critically damped, Q 0.5',
      because: { code: 'driver-q-too-high', qts: expect.closeTo(0.6, 9), belowQ: 0.5 },
    });
  });
});

// Spot values of the published alignments (Thiele 1971, Small 1973), driver of fs 30 Hz and Vas 100 L.
describe('vented alignments', () => {
  it('have B4 for Qts 0.3827: alpha 1.4142, tuned to fs, -3 dB at fs', () => {
    const b4 = named(alignments({ driver: withQts(0.38268) }), 'B4');
    expect(b4).toMatchObject({ kind: 'vented', family: 'butterworth', peakDb: expect.closeTo(0, 3) });
    expect(b4?.netLitres).toBeCloseTo(100 / Math.SQRT2, 2);
    expect(b4?.kind === 'vented' ? b4.tuningHz : 0).toBeCloseTo(30, 3);
    expect(b4?.f3Hz).toBeCloseTo(30, 1);
  });

  it('have B4 for Qts 0.4048 with QL 7: alpha 1.0613', () => {
    expect(named(alignments({ driver: withQts(0.4048), ql: 7 }), 'B4')?.alpha).toBeCloseTo(1.0613, 3);
  });

  it('have BL4 for Qts 0.316: h 0.976, alpha 2.333', () => {
    const bl4 = named(alignments({ driver: withQts(0.3162) }), 'BL4');
    expect(bl4?.alpha).toBeCloseTo(2.333, 2);
    expect(bl4?.kind === 'vented' ? bl4.tuningHz / 30 : 0).toBeCloseTo(0.976, 3);
    expect(bl4?.peakDb).toBe(0);
  });

  it('have QB3, SC4 and SBB4 for Qts 0.30, the delay falling and the corner rising in that order', () => {
    const found = alignments({ driver: withQts(0.3) });
    const three = ['QB3', 'SC4', 'SBB4'].map((textbook) => named(found, textbook));
    expect(three.map((design) => Number((design?.f3Hz ?? 0) / 30).toFixed(2))).toEqual([
      '1.47',
      '1.58',
      '1.66',
    ]);
    const delays = three.map((design) => design?.delayAtF3Ms ?? 0);
    expect(delays).toEqual([...delays].sort((a, b) => b - a));
    expect(three[0]?.strengths).toContain('deepest');
    expect(found.absent).toContainEqual({
      kind: 'vented',
      textbook: 'B4',
      because: { code: 'needs-another-q', qts: expect.closeTo(0.3, 9), needsQ: expect.closeTo(0.3827, 4) },
    });
  });

  it('have the rippled C4 above the Q of B4, none of the softer ones', () => {
    const found = alignments({ driver: withQts(0.4148) });
    const c4 = named(found, 'C4');
    expect(c4?.f3Hz).toBeCloseTo(0.867 * 30, 1);
    const e = (1 - 0.8 ** 2) ** 2 / (4 * 0.8 * (1 + 0.8 ** 2));
    expect(c4?.peakDb).toBeCloseTo(10 * Math.log10(1 + e ** 2), 3);
    expect(named(found, 'QB3')).toBeUndefined();
    expect(named(found, 'SC4')).toBeUndefined();
  });

  it('are those of ventedAlignment', () => {
    const found = alignments({
      driver: medlar12,
      ql: 7,
      array: { count: 2, seriesPerString: 1, parallelStrings: 2 },
    });
    for (const design of found.designs) {
      if (design.kind !== 'vented' || design.family === 'butterworth' || design.family === 'bessel') continue;
      const setting = { ql: 7, array: { count: 2, seriesPerString: 1, parallelStrings: 2 } };
      const one = ventedAlignment(medlar12, design.family, setting);
      expect(one).toMatchObject({
        netLitres: expect.closeTo(design.netLitres, 9),
        tuningHz: expect.closeTo(design.tuningHz, 9),
        f3Hz: expect.closeTo(design.f3Hz, 9),
      });
    }
  });

  it('ring longer than the closed boxes of the same driver', () => {
    const { designs } = alignments({ driver: withQts(0.36), ql: 7 });
    const of = (kind: string) =>
      designs.filter((design) => design.kind === kind).map(({ settleMs }) => settleMs);
    expect(Math.min(...of('vented'))).toBeGreaterThan(Math.max(...of('closed')));
  });
});

describe('suggestAlignments', () => {
  it('refuses a driver without Q', () => {
    const found = suggestAlignments({ driver: { ...quince10, qms: 0 } });
    expect(isRefusal(found) && found.refusal.field).toBe('driver.qms');
  });

  it('gives each word to exactly one design of a kind, and finite figures for any driver', () => {
    const driver = fc.record({
      fsHz: fc.double({ min: 5, max: 2_000, noNaN: true }),
      qms: fc.double({ min: 0.1, max: 200, noNaN: true }),
      qes: fc.double({ min: 0.02, max: 100, noNaN: true }),
      vasLitres: fc.double({ min: 0.01, max: 5_000, noNaN: true }),
    });
    fc.assert(
      fc.property(driver, fc.option(fc.double({ min: 1, max: 1e5, noNaN: true })), (parts, ql) => {
        const { designs } = alignments({ driver: { ...quince10, ...parts }, ql });
        for (const kind of ['closed', 'vented']) {
          const words = designs
            .filter((design) => design.kind === kind)
            .flatMap(({ strengths }) => strengths);
          expect(new Set(words).size).toBe(words.length);
        }
        for (const design of designs) {
          for (const value of Object.values(design)) {
            if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
          }
        }
      }),
      { numRuns: 100, seed: 20261125 },
    );
  });
});

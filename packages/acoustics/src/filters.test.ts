import type { Filter } from '@gusset/contracts/acoustics';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { divide, magnitude, multiply, phaseRad } from './complex.ts';
import { butterworthQs, filterTransfer } from './filters.ts';

type Pass = Extract<Filter, { order: number }>;
const pass = (kind: Pass['kind'], alignment: Pass['alignment'], order: number, cornerHz = 80): Pass => ({
  kind,
  alignment,
  order,
  cornerHz,
});
const db = (filter: Filter, frequencyHz: number) =>
  20 * Math.log10(magnitude(filterTransfer(filter)(frequencyHz)));
const ORDERS = [1, 2, 3, 4, 5, 6, 7, 8];

describe('filterTransfer', () => {
  it('has the section Qs of the published Butterworth table', () => {
    expect(butterworthQs(2)).toEqual([expect.closeTo(Math.SQRT1_2, 12)]);
    expect(butterworthQs(4)).toEqual([expect.closeTo(0.5412, 4), expect.closeTo(1.3066, 4)]);
    expect(butterworthQs(5)).toEqual([expect.closeTo(1.618, 3), expect.closeTo(0.618, 3)].reverse());
    expect(butterworthQs(1)).toEqual([]);
  });

  it.each(ORDERS)('is 3.01 dB down at the corner of Butterworth and Bessel of order %i', (order) => {
    for (const kind of ['highpass', 'lowpass'] as const) {
      expect(db(pass(kind, 'butterworth', order), 80)).toBeCloseTo(-3.0103, 4);
      expect(db(pass(kind, 'bessel', order), 80)).toBeCloseTo(-3.0103, 4);
    }
  });

  it.each([2, 4, 6, 8])('is 6.02 dB down at the corner of Linkwitz-Riley of order %i', (order) => {
    expect(db(pass('highpass', 'linkwitz-riley', order), 80)).toBeCloseTo(-6.0206, 4);
    expect(db(pass('lowpass', 'linkwitz-riley', order), 80)).toBeCloseTo(-6.0206, 4);
  });

  it.each(ORDERS)('falls 6.02 dB an octave times its order: %i', (order) => {
    for (const alignment of ['butterworth', 'bessel'] as const) {
      const far =
        db(pass('lowpass', alignment, order), 8_000) - db(pass('lowpass', alignment, order), 16_000);
      expect(far).toBeCloseTo(6.0206 * order, 1);
    }
  });

  it('follows |H|² = 1/(1 + x^2n) for Butterworth at any frequency', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...ORDERS),
        fc.double({ min: 5, max: 800, noNaN: true }),
        (order, frequencyHz) => {
          const squared = magnitude(filterTransfer(pass('lowpass', 'butterworth', order))(frequencyHz)) ** 2;
          expect(squared).toBeCloseTo(1 / (1 + (frequencyHz / 80) ** (2 * order)), 9);
        },
      ),
    );
  });

  // -3 dB frequency of a Bessel low-pass whose delay at 0 Hz is one second, rad/s: the standard table.
  it.each([
    [1, 1],
    [2, 1.36165],
    [3, 1.75567],
    [4, 2.11392],
    [5, 2.42741],
    [6, 2.7034],
    [7, 2.95172],
    [8, 3.17962],
  ])('gives a Bessel low-pass of order %i the delay of the table', (order, corner) => {
    const transfer = filterTransfer(pass('lowpass', 'bessel', order, 1 / (2 * Math.PI)));
    const step = 0.001 / (2 * Math.PI); // 0.001 rad/s
    const delay = -phaseRad(divide(transfer(step), transfer(step / 2))) / 0.0005;
    expect(delay).toBeCloseTo(corner, 4);
  });

  it('adds up Linkwitz-Riley of order 4 to an all-pass without turning a wire', () => {
    for (const frequencyHz of [20, 70, 80, 200]) {
      const low = filterTransfer(pass('lowpass', 'linkwitz-riley', 4))(frequencyHz);
      const high = filterTransfer(pass('highpass', 'linkwitz-riley', 4))(frequencyHz);
      expect(magnitude({ re: low.re + high.re, im: low.im + high.im })).toBeCloseTo(1, 12);
    }
  });

  it('peaks by its gain at its centre, and a cut undoes a boost', () => {
    const bell = (gainDb: number): Filter => ({ kind: 'peaking', centreHz: 62, gainDb, q: 2.2 });
    expect(db(bell(-4), 62)).toBeCloseTo(-4, 10);
    for (const frequencyHz of [20, 55, 300]) {
      const both = multiply(filterTransfer(bell(6))(frequencyHz), filterTransfer(bell(-6))(frequencyHz));
      expect(both.re).toBeCloseTo(1, 12);
      expect(both.im).toBeCloseTo(0, 12);
    }
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bisect } from '../real-roots.ts';
import { cornerF3Hz, peakDb, peakHz } from '../second-order.ts';
import { chebyshevOrder, fourthOrderOf } from '../vented-box.ts';
import { highPassDb, highPassDelayMs, highPassPeak, secondOrderHighPass, settleMs } from './high-pass.ts';

const NATURAL_HZ = 1e3 / (2 * Math.PI); // so that a ms is one unit of normalised time

describe('a second-order high-pass', () => {
  it('has the corner and the peak of the closed forms', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 8, noNaN: true }), (q) => {
        const response = secondOrderHighPass(40, q);
        expect(highPassDb(response, cornerF3Hz(40, q))).toBeCloseTo(-3.0103, 3);
        const peak = highPassPeak(response);
        expect(peak.db).toBeCloseTo(peakDb(q), 5);
        if (peak.frequencyHz !== null) expect(peak.frequencyHz).toBeCloseTo(peakHz(40, q) ?? 0, 3);
      }),
    );
  });

  it('has a delay of 1/(Q w0) far below and 2 Q/w0 at its resonance', () => {
    for (const q of [0.5, 0.7, 2]) {
      const response = secondOrderHighPass(NATURAL_HZ, q);
      expect(highPassDelayMs(response, NATURAL_HZ / 1e5)).toBeCloseTo(1 / q, 6);
      expect(highPassDelayMs(response, NATURAL_HZ)).toBeCloseTo(2 * q, 9);
    }
  });

  it('turns its phase by 180° in all: the delay over all frequencies adds up to half a turn', () => {
    const response = secondOrderHighPass(50, 0.9);
    let turns = 0;
    const ratio = 1.002;
    for (let f = 1e-3; f < 1e7; f *= ratio) {
      turns += (highPassDelayMs(response, f * Math.sqrt(ratio)) / 1e3) * f * (ratio - 1);
    }
    expect(turns).toBeCloseTo(0.5, 3);
  });

  it('settles as (1 - t) e^-t does when critically damped', () => {
    const settled = bisect((t) => (t - 1) * Math.exp(-t) > 0.1, 2, 20);
    expect(settleMs(secondOrderHighPass(NATURAL_HZ, 0.5))).toBeCloseTo(settled, 3);
  });

  it('settles as its closed form when it rings', () => {
    const q = 3;
    const [decay, turn] = [1 / (2 * q), Math.sqrt(1 - 1 / (4 * q * q))];
    const step = (t: number) =>
      Math.exp(-decay * t) * (Math.cos(turn * t) - (decay / turn) * Math.sin(turn * t));
    let last = 0;
    for (let t = 0; t < 60; t += 1e-3) if (Math.abs(step(t)) > 0.1) last = t;
    expect(settleMs(secondOrderHighPass(NATURAL_HZ, q))).toBeCloseTo(last, 2);
  });
});

describe('a fourth-order high-pass', () => {
  it('ripples by 10 log10(1 + e²) in the Chebyshev family', () => {
    for (const k of [0.4, 0.6, 0.8]) {
      const { a1, a2, a3 } = chebyshevOrder(k);
      const e = (1 - k ** 2) ** 2 / (4 * k * (1 + k ** 2));
      const peak = highPassPeak({ naturalHz: 30, coefficients: [1, a3, a2, a1, 1] });
      expect(peak.db).toBeCloseTo(10 * Math.log10(1 + e ** 2), 4);
    }
  });

  it('has no peak when it is flattest or softer', () => {
    for (const k of [1, 1.2, 2]) {
      const { a1, a2, a3 } = chebyshevOrder(k);
      expect(highPassPeak({ naturalHz: 30, coefficients: [1, a3, a2, a1, 1] })).toEqual({
        db: 0,
        frequencyHz: null,
      });
    }
  });

  it('delays by the first coefficient far below, and by the slope of its phase anywhere', () => {
    const { a1, a2, a3 } = fourthOrderOf({ qts: 0.35, alpha: 2, h: 1.1, leak: 1 / 7 });
    const response = { naturalHz: NATURAL_HZ, coefficients: [1, a3, a2, a1, 1] };
    expect(highPassDelayMs(response, NATURAL_HZ / 1e5)).toBeCloseTo(a3, 6);
    const phase = (x: number) => Math.atan2(a3 * x - a1 * x ** 3, x ** 4 - a2 * x ** 2 + 1);
    for (const x of [0.5, 1.4, 3]) {
      const slope = (phase(x + 1e-6) - phase(x - 1e-6)) / 2e-6;
      expect(highPassDelayMs(response, NATURAL_HZ * x)).toBeCloseTo(slope, 5);
    }
  });

  it('settles whatever its damping, in finite time', () => {
    const k = fc.double({ min: 0.2, max: 4, noNaN: true });
    fc.assert(
      fc.property(k, (damping) => {
        const { a1, a2, a3 } = chebyshevOrder(damping);
        const ms = settleMs({ naturalHz: NATURAL_HZ, coefficients: [1, a3, a2, a1, 1] });
        expect(ms).toBeGreaterThan(0.1);
        expect(ms).toBeLessThan(200);
      }),
      { numRuns: 40 },
    );
  });
});

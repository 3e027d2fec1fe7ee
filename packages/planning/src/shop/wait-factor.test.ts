import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { waitFactorAt } from './wait-factor.ts';

describe('waitFactorAt', () => {
  it.each([
    [10, 2],
    [12, 2],
    [15, 1.5],
    [17.5, 1.25],
    [20, 1],
    [30, 1],
  ])('at %d °C is %d', (temperatureC, factor) => {
    expect(waitFactorAt(temperatureC)).toBeCloseTo(factor, 9);
  });

  it('never falls as the shop gets colder, and refuses to glue below 10 °C', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 44, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (t, d) => {
          const cold = waitFactorAt(t);
          const warm = waitFactorAt(t + d);
          return !isRefusal(cold) && !isRefusal(warm) && cold >= warm;
        },
      ),
    );
    expect(isRefusal(waitFactorAt(9.9))).toBe(true);
    expect(isRefusal(waitFactorAt(Number.NaN))).toBe(true);
  });
});

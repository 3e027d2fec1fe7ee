import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bisect, evaluate, realRoots } from './real-roots.ts';

/** Coefficients of the product of (x - root), constant first. */
function polynomialOf(roots: readonly number[]): number[] {
  let coefficients = [1];
  for (const root of roots) {
    const shifted = [0, ...coefficients];
    coefficients = shifted.map((coefficient, k) => coefficient - root * (coefficients[k] ?? 0));
  }
  return coefficients;
}

describe('realRoots', () => {
  it('finds those of x² - 3x + 2 and none of x² + 1', () => {
    expect(realRoots([2, -3, 1])).toEqual([expect.closeTo(1, 12), expect.closeTo(2, 12)]);
    expect(realRoots([1, 0, 1])).toEqual([]);
    expect(realRoots([5])).toEqual([]);
  });

  it('finds all roots that a quartic was made of, rising', () => {
    const apart = fc
      .uniqueArray(fc.integer({ min: -40, max: 40 }), { minLength: 4, maxLength: 4 })
      .map((roots) => roots.map((root) => root / 4).sort((a, b) => a - b));
    fc.assert(
      fc.property(apart, (roots) => {
        expect(realRoots(polynomialOf(roots))).toEqual(roots.map((root) => expect.closeTo(root, 6)));
      }),
    );
  });

  it('evaluates with the constant first', () => {
    expect(evaluate([7, 0, 2], 3)).toBe(25);
  });
});

describe('bisect', () => {
  it('finds the edge to the last digit', () => {
    expect(bisect((x) => x * x < 2, 0, 2)).toBeCloseTo(Math.SQRT2, 15);
  });
});

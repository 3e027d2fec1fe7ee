import { describe, expect, it } from 'vitest';
import { percentile, shareInterval, varianceShare } from './draw-statistics.ts';
import { seededDraws } from './seeded-draws.ts';

describe('percentile', () => {
  it('goes straight between neighbours, and to both ends', () => {
    expect(percentile([10, 20, 30], 0.5)).toBe(20);
    expect(percentile([10, 20, 30], 0.25)).toBe(15);
    expect([percentile([10, 20, 30], 0), percentile([10, 20, 30], 1), percentile([7], 0.95)]).toEqual([
      10, 30, 7,
    ]);
  });
});

describe('shareInterval', () => {
  // Wilson's interval for 8 of 10 and for none of 10, by his formula.
  it('is 0.490 to 0.943 for 8 of 10, and 0 to 0.278 for none', () => {
    expect(shareInterval(8, 10).least).toBeCloseTo(0.49, 3);
    expect(shareInterval(8, 10).most).toBeCloseTo(0.943, 3);
    expect(shareInterval(0, 10)).toMatchObject({ least: 0, most: expect.closeTo(0.2775, 3) });
    expect(shareInterval(10, 10).most).toBeCloseTo(1, 12);
  });
});

describe('varianceShare', () => {
  it('is 1 for a straight line, whichever way it slopes, and 0 for what stands still', () => {
    expect(varianceShare([1, 2, 3, 4], [8, 6, 4, 2])).toBeCloseTo(1, 12);
    expect(varianceShare([1, 2, 3, 4], [5, 5, 5, 5])).toBe(0);
    expect(varianceShare([3, 3, 3, 3], [1, 2, 3, 4])).toBe(0);
  });
});

describe('seededDraws', () => {
  it('repeats itself for a seed and differs for another', () => {
    const take = (seed: number) => {
      const { normal, even } = seededDraws(seed);
      return [normal(), even(), normal()];
    };
    expect(take(5)).toEqual(take(5));
    expect(take(5)).not.toEqual(take(6));
  });

  it('draws a normal distribution with its ends cut off', () => {
    const { normal } = seededDraws(1);
    const drawn = Array.from({ length: 20_000 }, normal);
    const mean = drawn.reduce((sum, x) => sum + x, 0) / drawn.length;
    const deviation = Math.sqrt(drawn.reduce((sum, x) => sum + (x - mean) ** 2, 0) / drawn.length);
    expect(mean).toBeCloseTo(0, 1);
    expect(deviation).toBeCloseTo(0.9866, 1); // of a normal distribution cut at three deviations
    expect(Math.max(...drawn.map(Math.abs))).toBeLessThanOrEqual(3);
  });
});

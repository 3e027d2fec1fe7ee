import { describe, expect, it } from 'vitest';
import { descend } from './downhill-simplex.ts';

const settings = { step: 0.2, tolerance: 1e-7, mostScores: 2_000 };

describe('descend', () => {
  it('finds the bottom of a bowl', () => {
    const { place } = descend(([x = 0, y = 0]) => (x - 0.3) ** 2 + 4 * (y - 0.8) ** 2, {
      ...settings,
      start: [0.9, 0.1],
    });
    expect(place[0]).toBeCloseTo(0.3, 5);
    expect(place[1]).toBeCloseTo(0.8, 5);
  });

  // H. H. Rosenbrock's valley, Computer Journal 3, 1960, moved so that its bottom lies at (0.5, 0.5).
  it('follows a bent valley', () => {
    const valley = ([x = 0, y = 0]: readonly number[]) => {
      const [u, v] = [4 * x - 1, 4 * y - 1];
      return 100 * (v - u * u) ** 2 + (1 - u) ** 2;
    };
    const { place } = descend(valley, { ...settings, start: [0.1, 0.4] });
    expect(place[0]).toBeCloseTo(0.5, 4);
    expect(place[1]).toBeCloseTo(0.5, 4);
  });

  it('goes to the edge where the bottom lies beyond it', () => {
    expect(descend(([x = 0]) => -x, { ...settings, start: [0.2] }).place[0]).toBe(1);
  });

  it('keeps to where a place can be, and never ends worse than it began', () => {
    const walled = ([x = 0]: readonly number[]) => (x < 0.45 ? Number.POSITIVE_INFINITY : x);
    const { place, score } = descend(walled, { ...settings, start: [0.7] });
    expect(place[0]).toBeGreaterThanOrEqual(0.45);
    expect(score).toBeCloseTo(0.45, 3);
    expect(descend(() => Number.POSITIVE_INFINITY, { ...settings, start: [0.5] }).place).toEqual([0.5]);
  });
});

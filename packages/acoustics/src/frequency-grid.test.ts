import { describe, expect, it } from 'vitest';
import { frequencyGrid } from './frequency-grid.ts';

describe('frequencyGrid', () => {
  it('steps by one ratio from the first frequency to the last', () => {
    expect(frequencyGrid({ lowHz: 10, highHz: 160, count: 5 })).toEqual(
      [10, 20, 40, 80, 160].map((frequencyHz) => expect.closeTo(frequencyHz, 9)),
    );
  });

  it('has both ends exactly, so that they stay inside a range', () => {
    const grid = frequencyGrid({ lowHz: 13.7, highHz: 499.3, count: 300 });
    expect(grid).toHaveLength(300);
    expect(grid[0]).toBe(13.7);
    expect(grid.at(-1)).toBe(499.3);
  });
});

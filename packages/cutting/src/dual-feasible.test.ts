import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { weightTables } from './dual-feasible.ts';

const everyLength = (size: number): number[] => Array.from({ length: size + 1 }, (_, length) => length);

describe('weightTables', () => {
  it('starts with plain length', () => {
    expect([...(weightTables(10, [0, 5, 10], 4)[0] ?? [])]).toEqual([0, 0.5, 1]);
  });

  it('counts a length over half as much as the whole', () => {
    // 6 in 10: no second 6 fits beside it
    expect(weightTables(10, [4, 6, 10], 50).some((table) => table[1] === 1 && table[0] === 0)).toBe(true);
  });

  it('never gives two lengths more together than their sum, and gives the whole side 1', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 24 }), (size) => {
        for (const table of weightTables(size, everyLength(size), 2_000)) {
          const value = (length: number): number => table[length] ?? Number.NaN;
          expect(value(size)).toBeCloseTo(1, 12);
          for (let one = 0; one <= size; one++) {
            for (let two = 0; one + two <= size; two++) {
              expect(value(one) + value(two)).toBeLessThanOrEqual(value(one + two) + 1e-12);
            }
          }
        }
      }),
      { numRuns: 12 },
    );
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { weightTables } from './dual-feasible.ts';

const everyLength = (size: number): number[] => Array.from({ length: size + 1 }, (_, length) => length);

describe('weightTables', () => {
  it('starts with plain length', () => {
    expect([...(weightTables(10, [0, 5, 10], 4, null)[0] ?? [])]).toEqual([0, 0.5, 1]);
  });

  it('counts a length over half as much as the whole', () => {
    // 6 in 10: no second 6 fits beside it
    expect(weightTables(10, [4, 6, 10], 50, null).some((table) => table[1] === 1 && table[0] === 0)).toBe(
      true,
    );
  });

  it('never gives two lengths more together than their sum, and gives the whole side 1', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 18 }), (size) => {
        for (const table of weightTables(size, everyLength(size), 2_000, null)) {
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

  it('gives pieces that fit side by side no more than 1 when it counts them', () => {
    const lengths = fc.array(fc.integer({ min: 1, max: 30 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(lengths, (pieces) => {
        const room = Math.max(30, ...pieces);
        const tables = weightTables(room, pieces, 2_000, pieces);
        for (let chosen = 1; chosen < 2 ** pieces.length; chosen++) {
          const isIn = (_: unknown, index: number): boolean => (chosen & (1 << index)) !== 0;
          if (pieces.filter(isIn).reduce((sum, length) => sum + length, 0) > room) continue;
          const heaviest = Math.max(
            ...tables.map((table) => [...table].filter(isIn).reduce((sum, weight) => sum + weight, 0)),
          );
          expect(heaviest).toBeLessThanOrEqual(1 + 1e-9);
        }
      }),
      { numRuns: 25 },
    );
  });
});

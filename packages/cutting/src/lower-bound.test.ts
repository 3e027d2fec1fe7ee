import type { LayoutInput } from '@gusset/contracts/cutting';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layoutProblem } from './layout-problem.ts';
import { lowerBound } from './lower-bound.ts';
import { seededRandom } from './seeded-random.ts';

type Size = readonly [lengthMm: number, widthMm: number];
const BOARD = { materialId: 'mdf', thicknessMm: 18, grain: 'none' } as const;

function input(
  sheet: Size,
  sizes: readonly Size[],
  change: Partial<LayoutInput['settings']> = {},
): LayoutInput {
  const [lengthMm, widthMm] = sheet;
  return {
    parts: sizes.map(([length, width], index) => ({
      ...BOARD,
      id: `p${index}`,
      lengthMm: length,
      widthMm: width,
      mayTurn: false,
    })),
    sheets: [
      { ...BOARD, id: 's', name: 's', lengthMm, widthMm, count: null, costMinor: 50, isOffcut: false },
    ],
    settings: { kerfMm: 0, trimMm: 0, keepLengthMm: 0, keepWidthMm: 0, ...change },
    aim: 'fewest-sheets',
  };
}

const boundOf = (one: LayoutInput) => lowerBound(layoutProblem(one), Number.POSITIVE_INFINITY);
const turning = (one: LayoutInput): LayoutInput => ({
  ...one,
  parts: one.parts.map((part) => ({ ...part, mayTurn: true })),
});

/** Cuts `sheets` sheets at random into parts: a packing of that many sheets exists by construction. */
function shatteredSheets(seed: number, sheets: number, side: Size): readonly Size[] {
  const random = seededRandom(seed);
  const shatter = ([length, width]: Size, depth: number): readonly Size[] => {
    const alongX = random.next() < 0.5;
    const whole = alongX ? length : width;
    if (depth === 0 || whole < 2 || random.next() < 0.1) return [[length, width]];
    const first = 1 + random.below(whole - 1);
    const halves: readonly Size[] = alongX
      ? [
          [first, width],
          [length - first, width],
        ]
      : [
          [length, first],
          [length, width - first],
        ];
    return halves.flatMap((half) => shatter(half, depth - 1));
  };
  return Array.from({ length: sheets }, () => shatter(side, 4)).flat();
}

describe('lowerBound', () => {
  it('is the area where parts tile', () => {
    expect(
      boundOf(
        input(
          [10, 10],
          [...Array(7)].map(() => [5, 5] as const),
        ),
      ).fullSheets,
    ).toBe(2);
  });

  it('sees that parts over half a side cannot share it, where area does not', () => {
    // 3 x 36 = 108 of 100: area asks for 2
    const parts = [...Array(3)].map(() => [6, 6] as const);
    expect(boundOf(input([10, 10], parts)).fullSheets).toBe(3);
    expect(boundOf(turning(input([10, 10], parts))).fullSheets).toBe(3);
  });

  it('counts the kerf between parts, and none at the edge', () => {
    const parts = [...Array(2)].map(() => [500, 1000] as const);
    expect(boundOf(input([1000, 1000], parts)).fullSheets).toBe(1);
    expect(boundOf(input([1003, 1000], parts, { kerfMm: 3 })).fullSheets).toBe(1);
    expect(boundOf(input([1002, 1000], parts, { kerfMm: 3 })).fullSheets).toBe(2);
  });

  it('takes off what offcuts from the rack can carry', () => {
    const one = input(
      [10, 10],
      [...Array(8)].map(() => [5, 5] as const),
    );
    const [sheet] = one.sheets;
    if (sheet === undefined) throw new Error('no sheet');
    const offcut = {
      ...sheet,
      id: 'rack',
      lengthMm: 10,
      widthMm: 5,
      count: 1,
      isOffcut: true,
      costMinor: null,
    };
    expect(boundOf(one)).toEqual({ fullSheets: 2, costMinor: 100 });
    expect(boundOf({ ...one, sheets: [sheet, offcut] }).fullSheets).toBe(2);
    expect(boundOf({ ...one, sheets: [sheet, { ...offcut, count: 2 }] }).fullSheets).toBe(1);
  });

  it('never asks for more sheets than parts were cut from', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        fc.integer({ min: 1, max: 3 }),
        fc.integer({ min: 5, max: 60 }),
        fc.integer({ min: 5, max: 60 }),
        (seed, sheets, length, width) => {
          const one = input([length, width], shatteredSheets(seed, sheets, [length, width]));
          expect(boundOf(one).fullSheets).toBeLessThanOrEqual(sheets);
          expect(boundOf(turning(one)).fullSheets).toBeLessThanOrEqual(sheets);
        },
      ),
      { numRuns: 25 },
    );
  });

  it('never asks for more when turned parts come from square sheets', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 5, max: 60 }), (seed, side) => {
        const random = seededRandom(seed);
        const parts = shatteredSheets(seed, 2, [side, side]).map(
          ([length, width]): Size => (random.next() < 0.5 ? [length, width] : [width, length]),
        );
        expect(boundOf(turning(input([side, side], parts))).fullSheets).toBeLessThanOrEqual(2);
      }),
      { numRuns: 25 },
    );
  });
});

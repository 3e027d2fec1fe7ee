import type { LayoutInput, LayoutResult, Placement, SheetLayout } from '@gusset/contracts/cutting';
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { checkLayout } from './check-layout.ts';
import { layoutSheets } from './sheet-layout.ts';

const BOARD = { materialId: 'ply', thicknessMm: 18 } as const;

function input(sizes: readonly (readonly [number, number])[]): LayoutInput {
  return {
    parts: sizes.map(([lengthMm, widthMm], index) => ({
      ...BOARD,
      id: `p${index}`,
      lengthMm,
      widthMm,
      mayTurn: index > 0,
      grain: index === 0 ? 'length' : 'none',
    })),
    sheets: [
      {
        ...BOARD,
        id: 'full',
        name: 'full',
        lengthMm: 1000,
        widthMm: 1000,
        count: 2,
        costMinor: null,
        grain: 'length',
        isOffcut: false,
      },
    ],
    settings: { kerfMm: 3, trimMm: 10, keepLengthMm: 300, keepWidthMm: 200 },
    aim: 'fewest-sheets',
  };
}

const JOB = input([
  [400, 300],
  [300, 200],
]);

function soundLayout(job: LayoutInput): LayoutResult {
  const result = layoutSheets(job, { seed: 1, maxIterations: 50 });
  if (isRefusal(result)) throw new Error(JSON.stringify(result));
  return result;
}

/** The layout of JOB with its one sheet changed. */
function codesWhere(change: (sheet: SheetLayout) => Partial<SheetLayout>, job = JOB): string[] {
  const result = soundLayout(job);
  const sheets = result.sheets.map((sheet) => ({ ...sheet, ...change(sheet) }));
  return checkLayout(job, { ...result, sheets }).map((problem) => problem.code);
}

const onPart =
  (partId: string, change: (placement: Placement) => Partial<Placement>) =>
  (sheet: SheetLayout): Partial<SheetLayout> => ({
    placements: sheet.placements.map((placement) =>
      placement.partId === partId ? { ...placement, ...change(placement) } : placement,
    ),
  });

describe('checkLayout', () => {
  it('finds nothing in a sound layout', () => {
    expect(codesWhere(() => ({}))).toEqual([]);
  });

  it('finds a part that is missing, twice there, or nobody asked for', () => {
    expect(codesWhere((sheet) => ({ placements: sheet.placements.slice(1) }))).toEqual(['part-missing']);
    const [first] = soundLayout(JOB).sheets[0]?.placements ?? [];
    if (first === undefined) throw new Error('no placement');
    const elsewhere = { ...first, xMm: 500, yMm: 500 };
    expect(codesWhere((sheet) => ({ placements: [...sheet.placements, elsewhere] }))).toEqual(['part-twice']);
    expect(
      codesWhere((sheet) => ({ placements: [...sheet.placements, { ...elsewhere, partId: 'stray' }] })),
    ).toEqual(['part-unknown']);
  });

  it('finds a part in the trim', () => {
    expect(codesWhere(onPart('p0', () => ({ xMm: 5, yMm: 600 })))).toEqual(['outside']);
  });

  it('finds a part at another size', () => {
    expect(codesWhere(onPart('p0', () => ({ lengthMm: 390, xMm: 500, yMm: 600 })))).toEqual(['wrong-size']);
  });

  it('finds parts closer than the kerf', () => {
    const near = { sheet: 'full', left: { xMm: 10, yMm: 10 }, right: { xMm: 412, yMm: 10 } };
    expect(
      codesWhere((sheet) => ({
        placements: sheet.placements.map((placement) => ({
          ...placement,
          ...(placement.partId === 'p0' ? near.left : near.right),
        })),
      })),
    ).toEqual(['too-close', 'no-through-cut']);
  });

  it('finds a grained part across the grain and a turn nobody allowed', () => {
    const across = { turned: true, lengthMm: 300, widthMm: 400, xMm: 500, yMm: 500 };
    expect(codesWhere(onPart('p0', () => across))).toEqual(['turned-unasked', 'grain-crossed']);
  });

  it('finds sheets that are not at hand', () => {
    const result = soundLayout(JOB);
    const [sheet] = result.sheets;
    if (sheet === undefined) throw new Error('no sheet');
    const empty = { ...sheet, placements: [] };
    expect(checkLayout(JOB, { ...result, sheets: [sheet, empty, empty] })).toEqual([
      { code: 'sheets-short', stockId: 'full', used: 3, count: 2 },
    ]);
    expect(checkLayout(JOB, { ...result, sheets: [sheet, { ...empty, stockId: 'gone' }] })).toEqual([
      { code: 'sheet-unknown', stockId: 'gone' },
    ]);
  });

  it('finds areas that do not add up', () => {
    expect(codesWhere((sheet) => ({ wasteMm2: sheet.wasteMm2 + 50 }))).toEqual(['areas-off']);
  });

  it('finds four parts round a fifth that no through cut frees', () => {
    //  +--+----+
    //  |  | 2  |      each of the four runs past the next, so every straight cut meets one of them
    //  |3 +--+-+
    //  |  |4 | |
    //  +--+--+1|
    //  |  0  | |
    //  +-----+-+
    const sizes = [
      [300, 200],
      [200, 300],
      [300, 200],
      [200, 300],
      [97, 97],
    ] as const;
    const corners = [
      [10, 10],
      [313, 10],
      [213, 313],
      [10, 213],
      [213, 213],
    ] as const;
    const pinwheel = sizes.map(([lengthMm, widthMm], index) => {
      const [xMm, yMm] = corners[index] ?? [0, 0];
      return { partId: `p${index}`, lengthMm, widthMm, xMm, yMm, turned: false };
    });
    expect(codesWhere(() => ({ placements: pinwheel }), input(sizes))).toEqual(['no-through-cut']);
    expect(codesWhere(() => ({ placements: pinwheel.slice(1) }), input(sizes))).toEqual(['part-missing']);
  });
});

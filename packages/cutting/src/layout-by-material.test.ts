import type { CutPart, StockSheet } from '@gusset/contracts/cutting';
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { layoutByMaterial, type MaterialsInput } from './layout-by-material.ts';

const sheet = (
  id: string,
  materialId: string,
  thicknessMm: number,
  costMinor: number | null,
): StockSheet => ({
  id,
  name: id,
  materialId,
  thicknessMm,
  lengthMm: 2440,
  widthMm: 1220,
  count: null,
  costMinor,
  grain: 'none',
  isOffcut: false,
});

const part = (id: string, materialId: string, thicknessMm: number): CutPart => ({
  id,
  materialId,
  thicknessMm,
  lengthMm: 800,
  widthMm: 400,
  mayTurn: true,
  grain: 'none',
});

const job: MaterialsInput = {
  parts: [part('a', 'mdf', 18), part('b', 'mdf', 25), part('c', 'birch', 18), part('d', 'mdf', 18)],
  sheets: [sheet('m18', 'mdf', 18, 6_000), sheet('m25', 'mdf', 25, 8_500), sheet('b18', 'birch', 18, 11_000)],
  settings: { kerfMm: 3.2, trimMm: 6, keepLengthMm: 300, keepWidthMm: 200 },
  aim: 'fewest-sheets',
};

describe('layoutByMaterial', () => {
  it('cuts each board from its own sheets and adds them up', () => {
    const result = layoutByMaterial(job, { seed: 1, maxIterations: 90 });
    if (isRefusal(result)) throw new Error(JSON.stringify(result));
    const used = result.layouts.map(({ layout }) =>
      layout.sheets.map((one) => [one.stockId, one.placements.length]),
    );
    expect(used).toEqual([[['b18', 1]], [['m18', 2]], [['m25', 1]]]);
    expect(result.totals).toMatchObject({ fullSheets: 3, costMinor: 25_500, partsMm2: 4 * 800 * 400 });
  });

  it('does not know the cost where a sheet has no price', () => {
    const sheets = [...job.sheets.slice(0, 2), sheet('b18', 'birch', 18, null)];
    const result = layoutByMaterial({ ...job, sheets }, { seed: 1, maxIterations: 90 });
    expect(isRefusal(result) ? null : result.totals.costMinor).toBeNull();
  });

  it('refuses a part whose thickness no sheet has, naming those at hand', () => {
    const parts = [part('lid', 'mdf', 19.05)];
    expect(layoutByMaterial({ ...job, parts }, { seed: 1 })).toEqual({
      refusal: {
        field: 'sheets',
        allowed: 'a sheet of mdf, 19.05 mm',
        got: '18 mm, 25 mm',
        why: 'part lid is 19.05 mm thick and no sheet at hand is',
      },
    });
  });

  it('refuses an empty job', () => {
    expect(isRefusal(layoutByMaterial({ ...job, parts: [] }, { seed: 1 }))).toBe(true);
  });
});

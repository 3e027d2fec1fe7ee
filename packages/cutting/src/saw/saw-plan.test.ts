import type { CutPart, SawPlan, SheetLayout, StockSheet } from '@gusset/contracts/cutting';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layoutSheets } from '../sheet-layout.ts';
import { replayPlan } from './replay-plan.ts';
import { sawPlan } from './saw-plan.ts';

const BOARD = { materialId: 'mdf', thicknessMm: 18 };
const FULL: StockSheet = {
  ...BOARD,
  id: 'full',
  name: 'full',
  lengthMm: 2440,
  widthMm: 1220,
  count: null,
  costMinor: null,
  grain: 'none',
  isOffcut: false,
};

function part(id: string, lengthMm: number, widthMm: number): CutPart {
  return { ...BOARD, id, lengthMm, widthMm, mayTurn: true, grain: 'none' };
}

function laidOut(parts: readonly CutPart[], trimMm = 6, kerfMm = 3.2): readonly SheetLayout[] {
  const result = layoutSheets(
    {
      parts: [...parts],
      sheets: [FULL],
      settings: { kerfMm, trimMm, keepLengthMm: 300, keepWidthMm: 200 },
      aim: 'fewest-sheets',
    },
    { seed: 1, maxIterations: 60 },
  );
  if (isRefusal(result)) throw new Error(JSON.stringify(result));
  return result.sheets;
}

/** A box of two sizes twice over and a few odd ones: what one enclosure asks of the saw. */
const BOX = [
  part('bottom', 800, 400),
  part('top', 800, 400),
  part('front', 764, 364),
  part('back', 764, 364),
  part('left', 436, 400),
  part('right', 436, 400),
  part('brace-1', 364, 364),
  part('brace-2', 364, 364),
];

describe('saw plan', () => {
  it('replays from whole sheets, blank by blank', () => {
    const sheets = laidOut(BOX);
    const plan = sawPlan(sheets);
    expect(replayPlan(sheets, plan, { trimMm: 6 })).toEqual([]);
    const freed = plan.setUps.flatMap(({ steps }) => steps.flatMap(({ freesPartIds }) => freesPartIds));
    expect(freed.toSorted()).toEqual(BOX.map(({ id }) => id).toSorted());
  });

  it('sets the fence once a width, whatever the number of sheets', () => {
    // Strips over the whole length, three widths on three sheets: nothing but three settings is ever needed.
    const widths = [500, 300, 250, 500, 300, 250, 500, 300, 250];
    const sheets = laidOut(
      widths.map((width, index) => part(`p${index}`, 2_428, width)),
      6,
      2,
    );
    expect(sheets.length).toBeGreaterThan(1);
    const plan = sawPlan(sheets);
    expect(plan.fenceSettings).toBe(3);
    expect(plan.leastSettings).toBe(3);
  });

  it('holds for any parts, never sets the fence more often than map by map, nor less than the bound', () => {
    const side = fc.integer({ min: 40, max: 1_150 });
    const any = fc.array(fc.tuple(side, fc.integer({ min: 40, max: 700 })), { minLength: 1, maxLength: 24 });
    fc.assert(
      fc.property(any, fc.constantFrom(0, 6), fc.constantFrom(0, 2.2, 3.2), (sizes, trimMm, kerfMm) => {
        const parts = sizes.map(([length, width], index) => part(`p${index}`, length, width));
        const sheets = laidOut(parts, trimMm, kerfMm);
        const plan = sawPlan(sheets);
        expect(replayPlan(sheets, plan, { trimMm })).toEqual([]);
        expect(plan.fenceSettings).toBeLessThanOrEqual(plan.settingsMapByMap);
        expect(plan.fenceSettings).toBeGreaterThanOrEqual(plan.leastSettings);
      }),
      { numRuns: 60, seed: 7 },
    );
  });
});

describe('replay', () => {
  const sheets = laidOut(BOX);
  const plan = sawPlan(sheets);
  const altered = (change: (one: SawPlan) => SawPlan) => replayPlan(sheets, change(plan), { trimMm: 6 });

  it('finds a cut that was left out', () => {
    const faults = altered((one) => ({ ...one, setUps: one.setUps.slice(0, -1) }));
    expect(faults.some(({ code }) => code === 'blank-not-freed')).toBe(true);
  });

  it('finds settings made in an order that has no piece yet', () => {
    const faults = altered((one) => ({ ...one, setUps: one.setUps.toReversed() }));
    expect(faults.some(({ code }) => code === 'piece-not-in-hand')).toBe(true);
  });

  it('finds a fence that stands wrong', () => {
    const faults = altered((one) => ({
      ...one,
      setUps: one.setUps.map((setUp) =>
        setUp.fenceMm === null ? setUp : { ...setUp, fenceMm: setUp.fenceMm + 1 },
      ),
    }));
    expect(faults.some(({ code }) => code === 'wrong-setting')).toBe(true);
  });

  it('asks for a trimmed edge', () => {
    const faults = altered((one) => ({
      ...one,
      setUps: one.setUps.filter(({ fenceMm }) => fenceMm !== null),
    }));
    expect(faults.length).toBeGreaterThan(0);
  });
});

import {
  type CutPart,
  type LayoutInput,
  type LayoutResult,
  layoutResultSchema,
  type SawCut,
  type SheetLayout,
  type SheetRectangle,
  type StockSheet,
} from '@gusset/contracts/cutting';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkLayout } from './check-layout.ts';
import { type LayoutOptions, layoutSheets } from './sheet-layout.ts';

const QUICK: LayoutOptions = { seed: 1, maxIterations: 300 };

function part(id: string, lengthMm: number, widthMm: number, change: Partial<CutPart> = {}): CutPart {
  const board = { materialId: 'mdf', thicknessMm: 18 };
  return { ...board, id, lengthMm, widthMm, mayTurn: true, grain: 'none', ...change };
}

function sheet(id: string, lengthMm: number, widthMm: number, change: Partial<StockSheet> = {}): StockSheet {
  const board = { materialId: 'mdf', thicknessMm: 18, grain: 'none' } as const;
  return {
    ...board,
    id,
    name: id,
    lengthMm,
    widthMm,
    count: null,
    costMinor: 6_200,
    isOffcut: false,
    ...change,
  };
}

const FULL = sheet('full', 2440, 1220);

function input(parts: readonly CutPart[], change: Partial<LayoutInput> = {}): LayoutInput {
  return {
    parts: [...parts],
    sheets: [FULL],
    settings: { kerfMm: 4, trimMm: 10, keepLengthMm: 300, keepWidthMm: 200 },
    aim: 'fewest-sheets',
    ...change,
  };
}

function sound(one: LayoutInput, options: LayoutOptions = QUICK): LayoutResult {
  const result = layoutSheets(one, options);
  if (isRefusal(result)) throw new Error(JSON.stringify(result));
  expect(checkLayout(one, result)).toEqual([]);
  return result;
}

const four = (lengthMm: number, widthMm: number): CutPart[] =>
  ['a', 'b', 'c', 'd'].map((id) => part(id, lengthMm, widthMm, { mayTurn: false }));

describe('layoutSheets, worked by hand', () => {
  it('fills a sheet exactly, and accounts for every square millimetre', () => {
    // usable 2420 x 1200 = (1208 + 4 + 1208) x (598 + 4 + 598)
    const result = sound(input(four(1208, 598)));
    const [only] = result.sheets;
    expect(result.sheets).toHaveLength(1);
    expect(only?.partsMm2).toBe(4 * 1208 * 598);
    expect(only?.trimMm2).toBe(2440 * 1220 - 2420 * 1200);
    expect(only?.kerfMm2).toBe(2420 * 1200 - 4 * 1208 * 598);
    expect([only?.offcutsMm2, only?.wasteMm2]).toEqual([0, 0]);
    expect(result).toMatchObject({ lowerBoundSheets: 1, provenFewest: true });
  });

  it('needs a second sheet for a millimetre more', () => {
    expect(sound(input(four(1208, 599))).totals).toMatchObject({ fullSheets: 2, costMinor: 12_400 });
  });

  it('gives the blade its kerf between parts, none at the trimmed edge', () => {
    const result = sound(input([part('a', 1208, 1200, { mayTurn: false }), part('b', 1208, 1200)]));
    const placements = result.sheets[0]?.placements.toSorted((one, two) => one.xMm - two.xMm);
    expect(placements?.map(({ xMm, yMm }) => [xMm, yMm])).toEqual([
      [10, 10],
      [1222, 10],
    ]);
  });

  it('leaves one offcut beside one part', () => {
    const [only] = sound(input([part('a', 1000, 1200, { mayTurn: false })])).sheets;
    expect(only?.offcuts).toEqual([{ xMm: 1014, yMm: 10, lengthMm: 1416, widthMm: 1200 }]);
    expect(only?.cuts.map((cut) => [cut.order, cut.kind, cut.along, cut.fenceMm])).toEqual([
      [1, 'trim', 'width', 6],
      [2, 'trim', 'width', 2420],
      [3, 'trim', 'length', 6],
      [4, 'trim', 'length', 1200],
      [5, 'part', 'width', 1000],
    ]);
    expect(only?.wasteMm2).toBe(0);
  });

  it('counts what is narrower than the blade as kerf', () => {
    const [only] = sound(input([part('a', 2417, 1200)])).sheets;
    expect([only?.kerfMm2, only?.wasteMm2, only?.offcutsMm2]).toEqual([3 * 1200, 0, 0]);
  });

  it('adds up tenths of a millimetre', () => {
    const settings = { kerfMm: 0, trimMm: 0, keepLengthMm: 0, keepWidthMm: 0 };
    const sheets = [sheet('strip', 0.3, 1)];
    const parts = ['a', 'b', 'c'].map((id) => part(id, 0.1, 1, { mayTurn: false }));
    expect(sound(input(parts, { settings, sheets })).totals.fullSheets).toBe(1);
  });
});

describe('layoutSheets, grain and stock', () => {
  const grained = sheet('ply', 2440, 1220, { grain: 'length' });

  it('turns a part so that its grain runs with the sheet', () => {
    const one = input([part('a', 400, 900, { grain: 'width' })], { sheets: [grained] });
    expect(sound(one).sheets[0]?.placements[0]).toMatchObject({ turned: true, lengthMm: 900, widthMm: 400 });
  });

  it('lets a grained part turn on a board without grain', () => {
    const one = input([part('a', 1100, 2300, { grain: 'width' })]);
    expect(sound(one).sheets[0]?.placements[0]?.turned).toBe(true);
  });

  it('uses an offcut from the rack before it cuts a sheet', () => {
    const rack = sheet('rack', 700, 500, { count: 1, costMinor: null, isOffcut: true });
    const parts = [part('a', 600, 400), part('b', 600, 400)];
    const result = sound(input(parts, { sheets: [FULL, rack] }));
    expect(result.totals).toMatchObject({ fullSheets: 1, offcutsUsed: 1 });
    expect(result.sheets.map((one) => one.stockId)).toEqual(['rack', 'full']);
    expect(sound(input(parts.slice(0, 1), { sheets: [FULL, rack] })).totals).toMatchObject({
      fullSheets: 0,
      offcutsUsed: 1,
      costMinor: 0,
    });
  });

  it('takes the cheaper of two boards that hold the same', () => {
    const cheap = sheet('cheap', 1240, 1220, { costMinor: 3_500 });
    const result = sound(input([part('a', 1100, 900)], { sheets: [FULL, cheap] }));
    expect(result.sheets.map((one) => one.stockId)).toEqual(['cheap']);
  });

  it('buys one large sheet or two small ones, as asked', () => {
    const small = sheet('small', 1240, 1220, { costMinor: 2_000 });
    const parts = [part('a', 1200, 1200), part('b', 1200, 1200)];
    const sheets = [FULL, small];
    expect(sound(input(parts, { sheets })).totals).toMatchObject({ fullSheets: 1, costMinor: 6_200 });
    expect(sound(input(parts, { sheets, aim: 'least-cost' })).totals).toMatchObject({
      fullSheets: 2,
      costMinor: 4_000,
    });
  });

  it('answers with what has no room when sheets run out', () => {
    const sheets = [sheet('last', 2440, 1220, { count: 1 })];
    const result = sound(input([...four(1208, 598), part('e', 300, 300)], { sheets }));
    expect(result.unplacedPartIds).toEqual(['e']);
    expect(result.provenFewest).toBe(false);
  });

  it('keeps the largest leftover in one piece', () => {
    const result = sound(input([part('a', 700, 500), part('b', 700, 500), part('c', 500, 300)]));
    const [offcut] = result.sheets[0]?.offcuts ?? [];
    // 700 x 1004 and 500 x 300 fit in the first 1004 mm or less; what is beyond is one piece of full width
    expect((offcut?.lengthMm ?? 0) * (offcut?.widthMm ?? 0)).toBeGreaterThanOrEqual(1_400 * 1_200);
  });
});

describe('layoutSheets refuses', () => {
  const refusal = (one: LayoutInput) => {
    const result = layoutSheets(one, QUICK);
    return isRefusal(result) ? result.refusal : null;
  };

  it('a part longer than every sheet, and says by how much', () => {
    expect(refusal(input([part('a', 100, 100), part('shelf', 2500, 300)]))).toEqual({
      field: 'parts[1].lengthMm',
      allowed: 'within 2420 × 1200, trimmed',
      got: 2500,
      why: 'part shelf (2500 × 300) is larger than every sheet by 80',
    });
  });

  it('a part that fits only across the grain', () => {
    const sheets = [sheet('ply', 2440, 1220, { grain: 'length' })];
    expect(refusal(input([part('a', 600, 1400, { grain: 'length' })], { sheets }))).toMatchObject({
      field: 'parts[0].grain',
      got: 'length',
    });
  });

  it('a part that would have to turn and may not', () => {
    expect(refusal(input([part('a', 600, 1400, { mayTurn: false })]))).toMatchObject({
      field: 'parts[0].mayTurn',
    });
  });

  it('no parts, more than 400 parts, a kerf over 50 mm, one id twice', () => {
    const many = Array.from({ length: 401 }, (_, index) => part(`p${index}`, 100, 100));
    const settings = { kerfMm: 51, trimMm: 0, keepLengthMm: 0, keepWidthMm: 0 };
    expect(refusal(input([]))).toMatchObject({ field: 'parts', got: 0 });
    expect(refusal(input(many))).toMatchObject({ field: 'parts', got: 401 });
    expect(refusal(input([part('a', 9, 9)], { settings }))).toMatchObject({
      field: 'settings.kerfMm',
      got: 51,
    });
    expect(refusal(input([part('a', 9, 9), part('a', 8, 8)]))).toMatchObject({ field: 'parts[1].id' });
  });
});

/** Jobs of every kind: boards and offcuts, with and without grain, whole and broken millimetres. */
const jobs: fc.Arbitrary<LayoutInput> = fc
  .record({
    sizes: fc.array(fc.tuple(fc.integer({ min: 40, max: 1180 }), fc.integer({ min: 40, max: 1180 })), {
      minLength: 1,
      maxLength: 14,
    }),
    grains: fc.array(fc.constantFrom('length', 'width', 'none'), { minLength: 14, maxLength: 14 }),
    turns: fc.array(fc.boolean(), { minLength: 14, maxLength: 14 }),
    sheetGrain: fc.constantFrom('length', 'none'),
    kerfMm: fc.constantFrom(0, 2.4, 3.2, 12.7),
    trimMm: fc.constantFrom(0, 6, 10),
    tenths: fc.integer({ min: 0, max: 9 }),
    rack: fc.integer({ min: 0, max: 3 }),
    aim: fc.constantFrom('fewest-sheets', 'least-cost'),
  })
  .map((job) => ({
    parts: job.sizes.map(([lengthMm, widthMm], index) => {
      const grain = job.grains[index] ?? 'none';
      const mayTurn = grain !== 'none' || (job.turns[index] ?? true);
      return part(`p${index}`, lengthMm + job.tenths / 10, widthMm, { mayTurn, grain });
    }),
    sheets: [
      { ...FULL, grain: job.sheetGrain },
      sheet('square', 1525, 1525, { grain: job.sheetGrain, costMinor: 5_000, count: 2 }),
      sheet('rack', 900, 500, { count: job.rack, costMinor: null, isOffcut: true }),
    ],
    settings: { kerfMm: job.kerfMm, trimMm: job.trimMm, keepLengthMm: 300, keepWidthMm: 200 },
    aim: job.aim,
  }));

describe('layoutSheets, for any job', () => {
  it('is sound, fits its contract and stays above its bound', () => {
    fc.assert(
      fc.property(jobs, (job) => {
        const result = sound(job, { seed: 7, maxIterations: 60 });
        expect(layoutResultSchema.parse(result)).toEqual(result);
        expect(result.unplacedPartIds).toEqual([]);
        expect(result.totals.fullSheets).toBeGreaterThanOrEqual(result.lowerBoundSheets);
      }),
      { numRuns: 30 },
    );
  });

  it('can be cut in the order given', () => {
    fc.assert(
      fc.property(jobs, (job) => {
        for (const one of sound(job, { seed: 3, maxIterations: 40 }).sheets)
          expect(cutFaults(one)).toEqual([]);
      }),
      { numRuns: 20 },
    );
  });

  it('repeats for a seed and a number of layouts tried', () => {
    fc.assert(
      fc.property(jobs, fc.integer({ min: 1, max: 1e6 }), (job, seed) => {
        const options = { seed, maxIterations: 50 };
        expect(layoutSheets(job, options)).toEqual(layoutSheets(job, options));
      }),
      { numRuns: 8 },
    );
  });
});

describe('layoutSheets, stopping', () => {
  const job = input(
    Array.from({ length: 40 }, (_, index) => part(`p${index}`, 300 + index * 9, 200 + index * 7)),
  );

  it('stops by the clock it is given', () => {
    let readings = 0;
    const now = (): number => readings++ * 100; // each look at the clock is a tenth of a second
    const result = layoutSheets(job, { seed: 1, seconds: 1, now });
    expect(readings).toBeLessThanOrEqual(12);
    expect(isRefusal(result)).toBe(false);
  });

  it('stops when told, with the sound layout it has', () => {
    expect(sound(job, { seed: 1, shouldStop: () => true }).iterations).toBe(0);
  });

  it('reports each improvement, never a worse one', () => {
    const seen: number[] = [];
    const result = sound(job, {
      seed: 1,
      maxIterations: 3_000,
      onProgress: (at) => seen.push(at.fullSheets),
    });
    expect(seen).toEqual(seen.toSorted((one, two) => two - one));
    expect(seen.at(-1)).toBe(result.totals.fullSheets);
  });
});

/** Follows the cuts on a sheet in hand and names what does not come out. */
function cutFaults(layout: SheetLayout): string[] {
  const key = (one: SheetRectangle): string =>
    [one.xMm, one.yMm, one.lengthMm, one.widthMm].map((mm) => mm.toFixed(3)).join(' ');
  const whole = { xMm: 0, yMm: 0, lengthMm: layout.lengthMm, widthMm: layout.widthMm };
  const inHand = new Map<string, SheetRectangle>([[key(whole), whole]]);
  const faults: string[] = [];
  for (const cut of layout.cuts) {
    if (!inHand.delete(key(cut.piece))) faults.push(`cut ${cut.order} has no piece ${key(cut.piece)}`);
    for (const freed of bothSides(cut)) inHand.set(key(freed), freed);
  }
  for (const placement of layout.placements) {
    if (!inHand.has(key(placement))) faults.push(`${placement.partId} does not come out`);
  }
  for (const offcut of layout.offcuts) {
    if (!inHand.has(key(offcut))) faults.push(`offcut ${key(offcut)} does not come out`);
  }
  return faults;
}

function bothSides({ piece, kerf, along }: SawCut): readonly SheetRectangle[] {
  if (along === 'width') {
    const beyond = kerf.xMm + kerf.lengthMm;
    return [
      { ...piece, lengthMm: kerf.xMm - piece.xMm },
      { ...piece, xMm: beyond, lengthMm: piece.xMm + piece.lengthMm - beyond },
    ];
  }
  const beyond = kerf.yMm + kerf.widthMm;
  return [
    { ...piece, widthMm: kerf.yMm - piece.yMm },
    { ...piece, yMm: beyond, widthMm: piece.yMm + piece.widthMm - beyond },
  ];
}

import type { BoardFact, CuttingInput } from '@gusset/contracts/cutting-sheet';
import { checkLayout, cutParts } from '@gusset/cutting';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxResult, length, MDF, MDF_ID } from '../box/box-fixture.ts';
import { betterOf, boardScores, withSeed } from './better-layout.ts';
import { CUTTING_FACTS, CUTTING_UPSTREAM, cuttingOutcome, cuttingResult } from './cutting-fixture.ts';
import { cutMaterials, partingCuts, sheetMaps } from './cutting-papers.ts';
import { cuttingSheet } from './cutting-sheet.ts';

const HALF_ID = '00000000-0000-7000-8000-000000000019';
const HALF: BoardFact = {
  id: HALF_ID,
  name: 'MDF 18, half sheet',
  figures: { ...MDF.figures, lengthMm: 1220, widthMm: 1220 },
};
const withHalf = { ...CUTTING_FACTS, boards: [MDF, HALF] };
const nominal = {
  ...CUTTING_FACTS,
  boards: [{ ...MDF, figures: { ...MDF.figures, measuredThicknessMm: null } }],
};
const handPart = (lengthMm: number, widthMm: number, quantity = 1, key = 'shelf') => ({
  key,
  name: 'Amplifier board',
  boardId: MDF_ID,
  length: length(lengthMm),
  width: length(widthMm),
  quantity,
  grain: 'none' as const,
});
const offcut = (lengthMm: number, widthMm: number) => ({
  key: 'rack',
  boardId: MDF_ID,
  length: length(lengthMm),
  width: length(widthMm),
  count: 1,
  offcutId: null,
});

describe('cuttingSheet', () => {
  it('lays the six panels of a plain box on one sheet, the fewest there can be', () => {
    const result = cuttingResult();
    expect(result.sheetsUsed).toEqual([{ partId: MDF_ID, name: 'MDF 18', count: 1 }]);
    expect(result.pieces).toBe(6);
    expect(result.boards[0]?.layout).toMatchObject({ lowerBoundSheets: 1, provenFewest: true });
    // 2 × 564 × 320 + 2 × 564 × 344 + 2 × 320 × 380 mm²
    expect(result.totals.partsMm2).toBeCloseTo(992_192, 3);
  });

  it('weighs a whole sheet: 2.44 m × 1.22 m × 18 mm at 720 kg/m³ take two people', () => {
    const result = cuttingResult();
    expect(result.boards[0]?.sheets[0]?.massKg).toBeCloseTo(38.58, 2);
    expect(result.notes).toContainEqual({
      code: 'heavy-sheet',
      name: 'MDF 18',
      massKg: expect.closeTo(38.58, 2),
    });
  });

  it('stays a draft until the real thickness has been measured, and after it has changed', () => {
    expect(cuttingResult().isDraft).toBe(false);
    const asSold = cuttingResult({}, nominal);
    expect(asSold.isDraft).toBe(true);
    expect(asSold.notes[0]).toEqual({
      code: 'thickness-nominal',
      boardId: MDF_ID,
      name: 'MDF 18',
      thicknessMm: 18,
    });
    const thinner = { ...MDF, figures: { ...MDF.figures, measuredThicknessMm: 17.7 } };
    const moved = cuttingResult({}, { ...CUTTING_FACTS, boards: [thinner] });
    expect(moved.isDraft).toBe(true);
    expect(moved.notes[0]).toMatchObject({ code: 'thickness-moved', drawnMm: 18, measuredMm: 17.7 });
  });

  it('takes kerf, trim and tilt from the shop where nothing is typed', () => {
    expect(cuttingResult()).toMatchObject({ kerfMm: 3.2, trimMm: 6 });
    expect(cuttingResult({ kerf: length(2.2), trim: length(0) })).toMatchObject({ kerfMm: 2.2, trimMm: 0 });
  });

  it('adds parts by hand under marks of their own and spares to their row', () => {
    const result = cuttingResult({
      handParts: [handPart(500, 300, 2)],
      spares: [{ panelId: 'wall-front', count: 1 }],
    });
    const rows = result.boards[0]?.rows ?? [];
    expect(rows.find(({ mark }) => mark === 'X1')).toMatchObject({
      name: 'Amplifier board',
      quantity: 2,
      isByHand: true,
      finishedLengthMm: 500,
      massKg: expect.closeTo(0.5 * 0.3 * 0.018 * 720, 9),
    });
    expect(rows.find(({ name }) => name === 'Baffle')).toMatchObject({ quantity: 2, spares: 1 });
    expect(result.pieces).toBe(9);
  });

  it('says when a spare names a panel that the box no longer has', () => {
    const { notes } = cuttingResult({ spares: [{ panelId: 'gone', count: 1 }] });
    expect(notes).toContainEqual({ code: 'spare-gone', panelId: 'gone' });
  });

  it('cuts from the rack first and does not count that as a sheet', () => {
    const result = cuttingResult({ offcuts: [offcut(1_400, 1_200)] });
    expect(result.sheetsUsed).toEqual([]);
    expect(result.totals).toMatchObject({ fullSheets: 0, offcutsUsed: 1 });
    expect(result.boards[0]?.sheets).toMatchObject([{ partId: null, name: 'Offcut', count: 1 }]);
  });

  it('takes the smaller of two sizes where one sheet of either will do', () => {
    const result = cuttingResult(
      { sheetChoices: [{ boardId: MDF_ID, sheetIds: [MDF_ID, HALF_ID] }] },
      withHalf,
    );
    expect(result.sheetsUsed).toEqual([{ partId: HALF_ID, name: 'MDF 18, half sheet', count: 1 }]);
  });

  it('names parts that the rack alone has no room for', () => {
    const result = cuttingResult({
      sheetChoices: [{ boardId: MDF_ID, sheetIds: [] }],
      offcuts: [offcut(700, 500)],
    });
    const note = result.notes.find(({ code }) => code === 'unplaced');
    expect(note?.code === 'unplaced' ? note.marks.length : 0).toBeGreaterThan(0);
    expect(result.boards[0]?.layout.unplacedPartIds).toHaveLength(
      note?.code === 'unplaced' ? note.marks.length : -1,
    );
  });

  it('refuses in the marks and names that a person knows', () => {
    const outcome = cuttingOutcome({ handParts: [handPart(3_000, 300)] });
    expect(outcome).toMatchObject({
      state: 'refused',
      refusals: [{ field: 'handParts.0.length', got: 3_000 }],
    });
    expect(outcome.state === 'refused' ? outcome.refusals[0]?.why : '').toContain('X1 Amplifier board');
    expect(cuttingOutcome({ sheetChoices: [{ boardId: MDF_ID, sheetIds: [] }] })).toMatchObject({
      state: 'refused',
      refusals: [{ field: 'sheetChoices' }],
    });
  });

  it('asks for what is half typed', () => {
    expect(cuttingOutcome({}, CUTTING_FACTS, {})).toMatchObject({
      state: 'incomplete',
      missing: [{ field: 'box' }],
    });
    const half = { ...offcut(700, 500), width: null };
    expect(cuttingOutcome({ offcuts: [half] })).toEqual({
      state: 'incomplete',
      missing: [{ field: 'offcuts.0.width', what: 'the width of offcut 1' }],
    });
  });

  it('marks bevels that the blade cannot reach', () => {
    const wedge = boxResult({
      shape: 'wedge',
      outside: {
        width: length(600),
        height: length(380),
        depth: length(320),
        depthTop: length(200),
        kneeHeight: null,
      },
    });
    const { notes } = cuttingResult(
      {},
      { ...CUTTING_FACTS, saw: { ...CUTTING_FACTS.saw, bladeMaxTiltDeg: 10 } },
      { box: wedge },
    );
    // The back leans 120 over 380: atan(120 / 380) = 17.53°.
    expect(notes).toContainEqual({
      code: 'beyond-tilt',
      mark: expect.any(String),
      bevelDeg: expect.closeTo(17.53, 2),
      limitDeg: 10,
    });
  });

  it('lists sheets, thickness and saw for the list of changes', () => {
    const figures = cuttingSheet.keyFigures(cuttingResult({}, nominal));
    expect(figures).toContainEqual({ key: `sheets.${MDF_ID}`, label: 'MDF 18', value: '1 sheet' });
    expect(figures).toContainEqual({
      key: `thickness.${MDF_ID}`,
      label: 'MDF 18, thickness',
      value: '18 mm, nominal',
    });
    expect(cuttingSheet.factFigures(nominal)).toContainEqual({
      key: `board.${MDF_ID}.thickness`,
      label: 'MDF 18, thickness',
      value: '18 mm, nominal',
    });
  });

  it('holds no price, so that whoever reads it sees no money', () => {
    const result = cuttingResult();
    expect(result.totals.costMinor).toBeNull();
    expect(
      result.boards.flatMap(({ layout }) => layout.sheets).every(({ costMinor }) => costMinor === null),
    ).toBe(true);
  });

  it('survives being stored: the result is what a JSON column gives back', () => {
    const result = cuttingResult();
    expect(JSON.parse(JSON.stringify(result))).toEqual(result);
  });
});

const sideMm = fc.integer({ min: 40, max: 1_150 });
const extraParts = fc.array(
  fc.record({ lengthMm: sideMm, widthMm: sideMm, quantity: fc.integer({ min: 1, max: 4 }) }),
  {
    maxLength: 8,
  },
);

describe('laws of the layout', () => {
  it('is sound, and every area adds up to the sheets taken, whatever is added', () => {
    fc.assert(
      fc.property(extraParts, fc.integer({ min: 1, max: 50 }), (extra, seed) => {
        const result = cuttingResult({
          handParts: extra.map(({ lengthMm, widthMm, quantity }, index) =>
            handPart(lengthMm, widthMm, quantity, `part ${index}`),
          ),
          searches: [{ boardId: MDF_ID, seed, iterations: 50 }],
        });
        const [board] = result.boards;
        if (board === undefined) throw new Error('no board was laid out');
        const { totals } = result;
        const spentMm2 =
          totals.partsMm2 + totals.kerfMm2 + totals.trimMm2 + totals.offcutsMm2 + totals.wasteMm2;
        expect(spentMm2).toBeCloseTo(totals.sheetMm2, 0);
        expect(totals.sheetMm2).toBeCloseTo(
          result.sheetsUsed.reduce((sum, { count }) => sum + count, 0) * 2_440 * 1_220,
          3,
        );
        expect(board.layout.sheets.flatMap(({ placements }) => placements)).toHaveLength(result.pieces);
        expect(board.layout.lowerBoundSheets).toBeLessThanOrEqual(totals.fullSheets);
        const stock = {
          id: MDF_ID,
          name: 'MDF 18',
          materialId: MDF_ID,
          thicknessMm: 18,
          lengthMm: 2_440,
          widthMm: 1_220,
          count: null,
          costMinor: null,
          grain: 'none' as const,
          isOffcut: false,
        };
        const settings = { kerfMm: 3.2, trimMm: 6, keepLengthMm: 300, keepWidthMm: 200 };
        const parts = [...cutParts(board.rows)];
        expect(checkLayout({ parts, sheets: [stock], settings, aim: 'fewest-sheets' }, board.layout)).toEqual(
          [],
        );
      }),
      { numRuns: 25 },
    );
  });

  it('gives the same layout for the same seed', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_000 }), (seed) => {
        const searches = [{ boardId: MDF_ID, seed, iterations: 60 }];
        const handParts = [handPart(1_100, 700, 3)];
        expect(cuttingResult({ handParts, searches })).toEqual(cuttingResult({ handParts, searches }));
      }),
      { numRuns: 10 },
    );
  });
});

describe('betterOf', () => {
  it('never ends worse than it began, and its seed leads to the layout that it scored', () => {
    const input = { ...cuttingSheet.emptyInput(), handParts: [handPart(700, 520, 7)] };
    const compute = (tried: CuttingInput) => {
      const outcome = cuttingSheet.compute(tried, CUTTING_FACTS, CUTTING_UPSTREAM);
      if (outcome.state !== 'ready') throw new Error(JSON.stringify(outcome));
      return outcome.result;
    };
    const start = boardScores(compute(input), input.aim);
    let best = start;
    for (const seed of [2, 3, 4, 5]) {
      best = betterOf(best, boardScores(compute(withSeed(input, [MDF_ID], seed)), input.aim));
    }
    const repeated = compute({ ...input, searches: best.map(({ search }) => search) });
    expect(boardScores(repeated, input.aim)).toEqual(best);
    const [before] = start;
    const [after] = best;
    expect(after?.figures[1]).toBeLessThanOrEqual(before?.figures[1] ?? 0);
  });

  it('prefers fewer sheets to a larger offcut', () => {
    const search = { boardId: MDF_ID, seed: 1, iterations: 10 };
    const one = { search, figures: [0, 2, 6, -900] };
    const two = { search: { ...search, seed: 2 }, figures: [0, 1, 3, -10] };
    expect(betterOf([one], [two])).toEqual([two]);
    expect(betterOf([two], [one])).toEqual([two]);
  });
});

describe('one large offcut', () => {
  const more = [handPart(620, 310, 4, 'a'), handPart(540, 420, 3, 'b'), handPart(910, 180, 2, 'c')];
  const board = (changes: Partial<CuttingInput>) => {
    const [one] = cuttingResult({ handParts: more, ...changes }).boards;
    if (one === undefined) throw new Error('no board');
    return one;
  };
  const largest = ({ layout }: ReturnType<typeof board>) =>
    Math.max(
      0,
      ...layout.sheets.flatMap(({ offcuts }) => offcuts.map(({ lengthMm, widthMm }) => lengthMm * widthMm)),
    );

  it('is at least as large as the usual one, and never takes another sheet', () => {
    const usual = board({});
    const picked = board({ aim: 'largest-offcut' });
    expect(picked.layout.totals.fullSheets).toBe(usual.layout.totals.fullSheets);
    expect(largest(picked)).toBeGreaterThanOrEqual(largest(usual));
  });

  it('is kept as the seed that served best, so that the server lands on the same layout', () => {
    const found = board({ aim: 'largest-offcut' });
    const kept = board({ aim: 'largest-offcut', searches: [{ boardId: found.boardId, ...found.search }] });
    expect(kept.layout.sheets).toEqual(found.layout.sheets);
  });
});

describe('what is drawn and printed', () => {
  const result = cuttingResult({ handParts: [handPart(500, 300)] });

  it('draws every part of every sheet by its mark, and each cut inside the sheet', () => {
    const [board] = result.boards;
    if (board === undefined) throw new Error('no board was laid out');
    const maps = sheetMaps(board, result.trimMm);
    expect(maps.flatMap(({ placements }) => placements.map(({ mark }) => mark)).toSorted()).toEqual(
      board.rows.flatMap(({ mark, quantity }) => Array.from({ length: quantity }, () => mark)).toSorted(),
    );
    maps.forEach((map, index) => {
      const layout = board.layout.sheets[index];
      expect(map.cuts).toHaveLength(layout === undefined ? -1 : partingCuts(layout).length);
      for (const cut of map.cuts) {
        expect(Math.min(cut.fromXMm, cut.fromYMm)).toBeGreaterThanOrEqual(0);
        expect(cut.toXMm).toBeLessThanOrEqual(map.widthMm);
        expect(cut.toYMm).toBeLessThanOrEqual(map.heightMm);
      }
    });
  });

  it('prints finished sizes, and the larger blank where an edge is trimmed flush', () => {
    const larger = cuttingResult({ oversize: length(1.5) });
    const [material] = cutMaterials(larger, (mm) => `${mm}`);
    expect(material?.rows.find(({ name }) => name === 'Left side')).toMatchObject({
      lengthMm: 320,
      widthMm: 380,
      note: expect.stringMatching(/^cut .* trim flush after glue-up/),
    });
  });
});

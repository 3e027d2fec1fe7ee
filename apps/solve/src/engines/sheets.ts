// Parts on sheets, in whatever unit of length the document uses. The names are the door's public ones.

import type { CutPart, LayoutInput, StockSheet } from '@gusset/contracts/cutting';
import { layoutRectangles } from '@gusset/cutting';
import { isRefusal, type Refusal } from '@gusset/units';
import { z } from 'zod';
import type { SolveEngine } from '../engine.ts';

/** Largest length in the document's unit that the engine holds exactly. */
const LONGEST = 100_000_000;
/** The engine compares whole amounts; a document's cost may have this many parts of one. */
const COST_PARTS = 10_000;

const idSchema = z.string().min(1).max(80);
const side = z.number().positive().max(LONGEST);

const sheetSchema = z.strictObject({
  id: idSchema,
  w: side,
  h: side,
  /** null = unlimited. */
  count: z.number().int().min(0).max(100_000).nullable().default(null),
  cost: z.number().min(0).max(1_000_000).default(0),
  grain: z.enum(['x', 'y']).nullable().default(null),
});

const partSchema = z.strictObject({
  id: idSchema,
  w: side,
  h: side,
  canRotate: z.boolean().default(true),
  /** The side that must run along the sheet's grain axis; binds only where both are set. */
  grain: z.enum(['w', 'h']).nullable().default(null),
});

const requestSchema = z.strictObject({
  id: idSchema,
  kerf: z.number().min(0).max(LONGEST).default(0),
  trim: z.number().min(0).max(LONGEST).default(0),
  /** Layouts are always cuttable edge to edge, which is sound where it is not asked for too. */
  guillotine: z.boolean().default(true),
  /** Beyond the plain contract: what counts first. */
  aim: z.enum(['fewest-sheets', 'least-cost']).default('fewest-sheets'),
  sheets: z.array(sheetSchema).min(1).max(60),
  parts: z.array(partSchema).max(1_000),
});

const answerSchema = z.strictObject({
  id: idSchema,
  sheets: z.array(
    z.strictObject({
      sheet: idSchema,
      placements: z.array(
        z.strictObject({ part: idSchema, x: z.number(), y: z.number(), rotated: z.boolean() }),
      ),
    }),
  ),
  /** Parts that the sheets at hand have no room for; absent where all are placed. */
  unplaced: z.array(idSchema).optional(),
  lowerBound: z.number().int(),
  cost: z.number(),
  seconds: z.number(),
});

type Request = z.infer<typeof requestSchema>;

export const engine: SolveEngine<Request, z.infer<typeof answerSchema>> = {
  name: 'sheets',
  inputSchema: requestSchema,
  outputSchema: answerSchema,
  solve(request, { seconds, seed }) {
    const startedAt = performance.now();
    const result = layoutRectangles(toLayoutInput(request), { seed, seconds, now: () => performance.now() });
    if (isRefusal(result)) return inDoorNames(result);
    const costs = new Map(request.sheets.map((sheet) => [sheet.id, sheet.cost]));
    return {
      id: request.id,
      sheets: result.sheets.map((sheet) => ({
        sheet: sheet.stockId,
        placements: sheet.placements.map(({ partId, xMm, yMm, turned }) => ({
          part: partId,
          x: xMm,
          y: yMm,
          rotated: turned,
        })),
      })),
      ...(result.unplacedPartIds.length === 0 ? {} : { unplaced: result.unplacedPartIds }),
      lowerBound: result.lowerBoundSheets,
      cost: result.sheets.reduce((sum, sheet) => sum + (costs.get(sheet.stockId) ?? 0), 0),
      seconds: (performance.now() - startedAt) / 1_000,
    };
  },
};

/** The engine is blind to the unit: what it calls mm is the document's own. Nothing is kept as an offcut. */
function toLayoutInput(request: Request): LayoutInput {
  const board = { materialId: 'board', thicknessMm: 1 };
  const parts = request.parts.map(
    ({ id, w, h, canRotate, grain }): CutPart => ({
      ...board,
      id,
      lengthMm: w,
      widthMm: h,
      mayTurn: canRotate,
      grain: grain === null ? 'none' : grain === 'w' ? 'length' : 'width',
    }),
  );
  const sheets = request.sheets.map(
    ({ id, w, h, count, cost, grain }): StockSheet => ({
      ...board,
      id,
      name: id,
      lengthMm: w,
      widthMm: h,
      count,
      costMinor: Math.round(cost * COST_PARTS),
      grain: grain === null ? 'none' : grain === 'x' ? 'length' : 'width',
      isOffcut: false,
    }),
  );
  return {
    parts,
    sheets,
    settings: { kerfMm: request.kerf, trimMm: request.trim, keepLengthMm: 0, keepWidthMm: 0 },
    aim: request.aim,
  };
}

const DOOR_NAMES: readonly (readonly [engineName: string, doorName: string])[] = [
  ['.lengthMm', '.w'],
  ['.widthMm', '.h'],
  ['.mayTurn', '.canRotate'],
];

function inDoorNames({ refusal }: Refusal): Refusal {
  const field = DOOR_NAMES.reduce((name, [from, to]) => name.replace(from, to), refusal.field);
  return { refusal: { ...refusal, field } };
}

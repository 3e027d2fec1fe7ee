// What a layout answers. Coordinates are those of the full sheet, before trim.
import { z } from 'zod';

export const sheetRectangleSchema = z.strictObject({
  /** Lower left corner. */
  xMm: z.number().nonnegative(),
  yMm: z.number().nonnegative(),
  /** Extent along x and y. */
  lengthMm: z.number().nonnegative(),
  widthMm: z.number().nonnegative(),
});
export type SheetRectangle = Readonly<z.infer<typeof sheetRectangleSchema>>;

/** A blank as it lies: `lengthMm` is its extent along x, also where it is turned. */
export const placementSchema = sheetRectangleSchema.extend({
  partId: z.string(),
  /** True where the blank's own length lies along y. */
  turned: z.boolean(),
});
export type Placement = Readonly<z.infer<typeof placementSchema>>;

/** One straight cut from edge to edge of the piece in hand. In order, each cuts a piece that earlier ones freed. */
export const sawCutSchema = z.strictObject({
  order: z.number().int().positive(),
  /** `trim` squares an edge of the whole sheet; `part` separates. */
  kind: z.enum(['trim', 'part']),
  /** Side of the sheet that the blade travels along: `length` = parallel to x. */
  along: z.enum(['length', 'width']),
  /** 0 = through the whole sheet, 1 = through a strip of it, and so on. */
  depth: z.number().int().nonnegative(),
  /** The piece in hand before the cut. */
  piece: sheetRectangleSchema,
  /** Fence setting: from the piece's lower or left edge to the kerf. */
  fenceMm: z.number().nonnegative(),
  /** What the blade turns to dust, as it lies; thinner than the kerf where the blade runs off the edge. */
  kerf: sheetRectangleSchema,
});
export type SawCut = Readonly<z.infer<typeof sawCutSchema>>;

/** Square millimetres; parts + kerf + trim + offcuts + waste = sheet. */
const areaFields = {
  sheetMm2: z.number().nonnegative(),
  partsMm2: z.number().nonnegative(),
  kerfMm2: z.number().nonnegative(),
  trimMm2: z.number().nonnegative(),
  offcutsMm2: z.number().nonnegative(),
  wasteMm2: z.number().nonnegative(),
};

export const sheetLayoutSchema = z.strictObject({
  stockId: z.string(),
  /** 1, 2, 3: which sheet of that stock. */
  copy: z.number().int().positive(),
  isOffcut: z.boolean(),
  lengthMm: z.number().positive(),
  widthMm: z.number().positive(),
  costMinor: z.number().int().nonnegative().nullable(),
  placements: z.array(placementSchema),
  cuts: z.array(sawCutSchema),
  /** Leftovers worth racking, largest first. */
  offcuts: z.array(sheetRectangleSchema),
  ...areaFields,
});
export type SheetLayout = Readonly<z.infer<typeof sheetLayoutSchema>>;

export const layoutTotalsSchema = z.strictObject({
  /** Sheets bought or taken whole from stock, and offcuts taken from the rack. */
  fullSheets: z.number().int().nonnegative(),
  offcutsUsed: z.number().int().nonnegative(),
  /** Null where a full sheet in use has no price; an offcut without one was paid for by an earlier job. */
  costMinor: z.number().int().nonnegative().nullable(),
  ...areaFields,
});
export type LayoutTotals = Readonly<z.infer<typeof layoutTotalsSchema>>;

export const layoutResultSchema = z.strictObject({
  sheets: z.array(sheetLayoutSchema),
  /** Parts that the sheets at hand have no room for; empty when everything is placed. */
  unplacedPartIds: z.array(z.string()),
  totals: layoutTotalsSchema,
  /** No layout can do with fewer full sheets than this, whatever its offcuts. */
  lowerBoundSheets: z.number().int().nonnegative(),
  /** True where no layout can use fewer full sheets. */
  provenFewest: z.boolean(),
  iterations: z.number().int().nonnegative(),
});
export type LayoutResult = Readonly<z.infer<typeof layoutResultSchema>>;

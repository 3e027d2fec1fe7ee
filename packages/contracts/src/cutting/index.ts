// Cut list and sheet layout: what crosses between panels, saw, stock and the drawing. Millimetres, square
// millimetres and minor units of money; degrees only where a person reads them off the saw's scale.
// A sheet's length lies along x, its width along y, its lower left corner at (0, 0).
import { z } from 'zod';
import { polygonMmSchema } from '../geometry/index.ts';
import { panelHoleSchema } from '../panel/index.ts';

export { ADHESIVE_KINDS, type Adhesive, type AdhesiveKind, USUAL_ADHESIVES } from './adhesives.ts';
export * from './assembly.ts';
export * from './bench-work.ts';
export { type CutAim, cutAimSchema, type LayoutInput, layoutInputSchema } from './layout-input.ts';
export {
  type LayoutResult,
  type LayoutTotals,
  layoutResultSchema,
  type Placement,
  type SawCut,
  type SheetLayout,
  type SheetRectangle,
  sheetLayoutSchema,
} from './layout-result.ts';
export { DEFAULT_ROUTER_TOOLS, type RouterTools } from './router-tools.ts';
export * from './saw-plan.ts';
export {
  type CutPart,
  type CutSettings,
  cutPartSchema,
  cutSettingsSchema,
  DEFAULT_CUT_SETTINGS,
  type LayoutSettings,
  layoutSettingsSchema,
  type StockSheet,
  stockSheetSchema,
} from './stock.ts';

/** One edge of a row's larger face, in outline order, as the saw must be set for it. */
export const cutEdgeSchema = z.strictObject({
  /** Length of the edge on the larger face. */
  lengthMm: z.number().nonnegative(),
  /** As dialled on the blade: degrees from square, 0 = square cut. */
  bevelDeg: z.number().min(0).max(90),
  /** True where the saw cannot tilt that far: cut it on edge, or on another machine. */
  exceedsTilt: z.boolean(),
  /** Added to the blank beyond this edge, to be trimmed flush after glue-up. */
  oversizeMm: z.number().nonnegative(),
  /** Step cut into the inner face along this edge; left out where there is none. */
  rebate: z.strictObject({ widthMm: z.number().positive(), depthMm: z.number().positive() }).optional(),
});
export type CutEdge = Readonly<z.infer<typeof cutEdgeSchema>>;

export const mirrorNoteSchema = z.strictObject({
  /** Mark of the row that this one is the mirror image of. */
  mark: z.string().min(1).max(8),
  /** True where turning the finished piece over gives the other one: no bevel and no blind hole. */
  sameWhenTurnedOver: z.boolean(),
});
export type MirrorNote = Readonly<z.infer<typeof mirrorNoteSchema>>;

/** One line of the cut list: what one panel needs from sheet and saw. */
export const cutListRowSchema = z.strictObject({
  panelId: z.string(),
  mark: z.string(),
  name: z.string(),
  materialId: z.string(),
  thicknessMm: z.number().positive(),
  quantity: z.number().int().positive(),
  /** Rectangle round the larger face, finished. */
  finishedLengthMm: z.number().positive(),
  finishedWidthMm: z.number().positive(),
  /** Rectangle round the smaller face; null where every edge is square. */
  smallerFace: z
    .strictObject({ lengthMm: z.number().nonnegative(), widthMm: z.number().nonnegative() })
    .nullable(),
  /** The rectangle that the layout must place: larger face plus oversize. */
  blankLengthMm: z.number().positive(),
  blankWidthMm: z.number().positive(),
  /** False where the blank has to be cut to `outline` after it left the sheet. */
  isRectangle: z.boolean(),
  outline: polygonMmSchema,
  edges: z.array(cutEdgeSchema).min(3),
  holes: z.array(panelHoleSchema),
  grain: z.enum(['length', 'width', 'none']),
  mirror: mirrorNoteSchema.nullable(),
  /** Mass of one finished piece, and of all pieces of the row. */
  massKg: z.number().nonnegative(),
  totalMassKg: z.number().nonnegative(),
});
export type CutListRow = Readonly<z.infer<typeof cutListRowSchema>>;

// What goes into a layout: blanks to place, sheets to place them on, and how the saw cuts.
import { z } from 'zod';

/** Largest side of a blank or a sheet that a shop handles, mm. */
const SIDE_LIMIT_MM = 5_000;
const sideMm = z.number().positive().max(SIDE_LIMIT_MM);
const idSchema = z.string().min(1).max(80);

/** One blank, one entry per piece. Its length lies along x unless it is turned. */
export const cutPartSchema = z.strictObject({
  id: idSchema,
  materialId: z.string().min(1).max(60),
  thicknessMm: z.number().positive().max(100),
  lengthMm: sideMm,
  widthMm: sideMm,
  /** False: always as given, whatever the sheet. */
  mayTurn: z.boolean(),
  /** The side that must lie along the sheet's grain. Binds only on sheets that have a grain. */
  grain: z.enum(['length', 'width', 'none']),
});
export type CutPart = Readonly<z.infer<typeof cutPartSchema>>;

/** A kind of sheet in stock, or one offcut from the rack. */
export const stockSheetSchema = z.strictObject({
  id: idSchema,
  name: z.string().max(80),
  materialId: z.string().min(1).max(60),
  /** As measured, not as sold. */
  thicknessMm: z.number().positive().max(100),
  /** Full size along x and y, before trim. */
  lengthMm: sideMm,
  widthMm: sideMm,
  /** Sheets at hand; null = as many as needed can be bought. */
  count: z.number().int().min(0).max(1_000).nullable(),
  /** Price of one, minor units of money; null = not known. */
  costMinor: z.number().int().min(0).max(1_000_000_000).nullable(),
  /** Side along which the grain runs. */
  grain: z.enum(['length', 'width', 'none']),
  /** True for a leftover from the rack: used before a full sheet is cut. */
  isOffcut: z.boolean(),
});
export type StockSheet = Readonly<z.infer<typeof stockSheetSchema>>;

export const layoutSettingsSchema = z.strictObject({
  /** Width of the cut. */
  kerfMm: z.number().min(0).max(50),
  /** Taken off every edge of every sheet first, its own kerf included. */
  trimMm: z.number().min(0).max(200),
  /** Smallest leftover worth racking: longer and shorter side. */
  keepLengthMm: z.number().min(0).max(SIDE_LIMIT_MM),
  keepWidthMm: z.number().min(0).max(SIDE_LIMIT_MM),
});
export type LayoutSettings = Readonly<z.infer<typeof layoutSettingsSchema>>;

export const cutSettingsSchema = layoutSettingsSchema.extend({
  /** How far the saw's blade tilts from square. */
  bladeMaxTiltDeg: z.number().min(0).max(60),
  /** Added to edges that run past their neighbour, to be trimmed flush after glue-up; 0 = cut to size. */
  oversizeMm: z.number().min(0).max(10),
});
export type CutSettings = Readonly<z.infer<typeof cutSettingsSchema>>;

/** Full-kerf table-saw blade, clean sheet edges, cut to size; every figure is the shop's to change. */
export const DEFAULT_CUT_SETTINGS: CutSettings = {
  kerfMm: 3.2,
  trimMm: 6,
  keepLengthMm: 300,
  keepWidthMm: 200,
  bladeMaxTiltDeg: 45,
  oversizeMm: 0,
};

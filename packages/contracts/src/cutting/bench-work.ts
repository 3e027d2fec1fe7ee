// What router and drill do to the panels, from one datum corner each. Millimetres.
import { z } from 'zod';

/** One circle of a centre, in the order in which it is cut. */
export const routedCircleSchema = z.strictObject({
  purpose: z.string(),
  diameterMm: z.number().positive(),
  /** Null = right through. */
  depthMm: z.number().positive().nullable(),
  passes: z.number().int().positive(),
  /** Pivot to the middle of the bit, where the wood outside the circle stays. */
  pivotMm: z.number().nonnegative(),
  /** Hole of a template for the guide bush; null without one. */
  templateDiaMm: z.number().positive().nullable(),
});
export type RoutedCircle = Readonly<z.infer<typeof routedCircleSchema>>;

/** Circles about one centre: marked and bored once, never measured twice. */
export const routedCentreSchema = z.strictObject({
  panelId: z.string(),
  mark: z.string(),
  pieces: z.number().int().positive(),
  /** From the panel's datum corner: along its length and across. */
  xMm: z.number(),
  yMm: z.number(),
  circles: z.array(routedCircleSchema).min(1),
});
export type RoutedCentre = Readonly<z.infer<typeof routedCentreSchema>>;

/** An opening with straight sides: inside a template, or along guides. */
export const routedOpeningSchema = z.strictObject({
  panelId: z.string(),
  mark: z.string(),
  pieces: z.number().int().positive(),
  purpose: z.string(),
  xMm: z.number(),
  yMm: z.number(),
  lengthMm: z.number().positive(),
  widthMm: z.number().positive(),
  /** As drawn; the bit leaves at least its own radius. */
  cornerRadiusMm: z.number().nonnegative(),
  isCornerBelowBit: z.boolean(),
  depthMm: z.number().positive().nullable(),
  passes: z.number().int().positive(),
  templateMm: z.strictObject({ lengthMm: z.number().positive(), widthMm: z.number().positive() }).nullable(),
});
export type RoutedOpening = Readonly<z.infer<typeof routedOpeningSchema>>;

/** A step along an edge of the inner face. */
export const routedRebateSchema = z.strictObject({
  panelId: z.string(),
  mark: z.string(),
  pieces: z.number().int().positive(),
  edge: z.number().int().nonnegative(),
  lengthMm: z.number().positive(),
  widthMm: z.number().positive(),
  depthMm: z.number().positive(),
  passes: z.number().int().positive(),
});
export type RoutedRebate = Readonly<z.infer<typeof routedRebateSchema>>;

/** Holes of one size in a panel; those of a ring keep their circle. */
export const drilledHolesSchema = z.strictObject({
  panelId: z.string(),
  mark: z.string(),
  pieces: z.number().int().positive(),
  purpose: z.string(),
  diameterMm: z.number().positive(),
  depthMm: z.number().positive().nullable(),
  /** Centre and diameter of the circle that they lie on; null = not on one. */
  ring: z.strictObject({ xMm: z.number(), yMm: z.number(), diameterMm: z.number().positive() }).nullable(),
  centres: z.array(z.strictObject({ xMm: z.number(), yMm: z.number() })).min(1),
});
export type DrilledHoles = Readonly<z.infer<typeof drilledHolesSchema>>;

/** An edge that is trimmed flush with a bearing bit after glue-up. */
export const flushTrimSchema = z.strictObject({
  panelId: z.string(),
  mark: z.string(),
  pieces: z.number().int().positive(),
  edge: z.number().int().nonnegative(),
  lengthMm: z.number().positive(),
  oversizeMm: z.number().positive(),
});
export type FlushTrim = Readonly<z.infer<typeof flushTrimSchema>>;

export const benchWorkSchema = z.strictObject({
  circles: z.array(routedCentreSchema),
  openings: z.array(routedOpeningSchema),
  rebates: z.array(routedRebateSchema),
  holes: z.array(drilledHolesSchema),
  flushTrims: z.array(flushTrimSchema),
});
export type BenchWork = Readonly<z.infer<typeof benchWorkSchema>>;

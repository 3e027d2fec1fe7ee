// What the saw does, setting by setting: through cuts of whole sheets, bevels of blanks, cuts that run askew.
// Millimetres; degrees where a person reads them off the saw's scale.
import { z } from 'zod';
import { sheetRectangleSchema } from './layout-result.ts';

/** Which sheet of the layout: the `copy`-th of that stock. */
const sheetNameSchema = z.strictObject({ stockId: z.string(), copy: z.number().int().positive() });

/** One through cut, as it is made. */
export const sawStepSchema = z.strictObject({
  order: z.number().int().positive(),
  sheet: sheetNameSchema,
  /** Side of the sheet that the blade travels along: `length` = parallel to x. */
  along: z.enum(['length', 'width']),
  /** The piece in hand before the cut, where it lies on the sheet. */
  piece: sheetRectangleSchema,
  /** Edge of the piece that runs on the fence: its lower or left one (`low`), or the one across (`high`). */
  against: z.enum(['low', 'high']),
  fenceMm: z.number().nonnegative(),
  kerf: sheetRectangleSchema,
  /** Blanks that this cut frees. */
  freesPartIds: z.array(z.string()),
});
export type SawStep = Readonly<z.infer<typeof sawStepSchema>>;

/** Everything that is cut before the fence is moved again. Trimming has no setting: the strip is what the shop trims. */
export const sawSetUpSchema = z.strictObject({
  order: z.number().int().positive(),
  fenceMm: z.number().nonnegative().nullable(),
  steps: z.array(sawStepSchema).min(1),
});
export type SawSetUp = Readonly<z.infer<typeof sawSetUpSchema>>;

export const sawPlanSchema = z.strictObject({
  setUps: z.array(sawSetUpSchema),
  /** How often the fence is set; trimming not counted. */
  fenceSettings: z.number().int().nonnegative(),
  /** The same where each sheet is cut up as its map is numbered. */
  settingsMapByMap: z.number().int().nonnegative(),
  /** No order of these cuts takes fewer. */
  leastSettings: z.number().int().nonnegative(),
});
export type SawPlan = Readonly<z.infer<typeof sawPlanSchema>>;

/** One bevelled edge of a row's blanks. */
export const bevelCutSchema = z.strictObject({
  panelId: z.string(),
  mark: z.string(),
  pieces: z.number().int().positive(),
  /** Edge of the outline, from corner i to corner i + 1. */
  edge: z.number().int().nonnegative(),
  lengthMm: z.number().nonnegative(),
});
export type BevelCut = Readonly<z.infer<typeof bevelCutSchema>>;

/**
 * Bevels that one tilt and one fence setting serve. `flat`: the face that reaches the edge lies on the table. `on-edge`:
 * the saw does not tilt that far, so the panel stands upright against a tall fence and the blade tilts by the rest to 90°.
 * `other-way`: neither is within the saw's tilt.
 */
export const bevelSetUpSchema = z.strictObject({
  how: z.enum(['flat', 'on-edge', 'other-way']),
  bevelDeg: z.number().positive(),
  /** To dial in; null where this saw cannot. */
  tiltDeg: z.number().nonnegative().nullable(),
  /** Fence to blade at the table; null for edges without a parallel one, which need a sled or a guide rail. */
  fenceMm: z.number().positive().nullable(),
  cuts: z.array(bevelCutSchema).min(1),
});
export type BevelSetUp = Readonly<z.infer<typeof bevelSetUpSchema>>;

const pointOnBlankSchema = z.strictObject({ xMm: z.number(), yMm: z.number() });

/** A cut that runs along no edge of the blank: sled, guide rail or straightedge. Measured from the blank's corner. */
export const askewCutSchema = z.strictObject({
  panelId: z.string(),
  mark: z.string(),
  pieces: z.number().int().positive(),
  edge: z.number().int().nonnegative(),
  from: pointOnBlankSchema,
  to: pointOnBlankSchema,
  lengthMm: z.number().positive(),
  /** To the blank's length, 0 to 180. */
  angleDeg: z.number(),
  bevelDeg: z.number().nonnegative(),
  /** Where the straightedge lies: the cut's line moved onto the wood that stays, by base edge to blade. */
  guideFrom: pointOnBlankSchema,
  guideTo: pointOnBlankSchema,
  /** The blade must stop before a hollow corner; the rest is finished by hand saw. */
  stopsAtStart: z.boolean(),
  stopsAtEnd: z.boolean(),
});
export type AskewCut = Readonly<z.infer<typeof askewCutSchema>>;

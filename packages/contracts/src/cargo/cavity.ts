// The cavity that a survey makes, and the best-effort drawing of one that is still being measured.
import { z } from 'zod';
import { pointMmSchema, polygonMmSchema } from '../geometry/index.ts';
import { beyondOpeningSchema } from './beyond-opening.ts';
import { dimensionKeySchema, measuringMethodSchema } from './measuring.ts';
import {
  drawingViewSchema,
  sectionFormKindSchema,
  wallRoleSchema,
  wallSurfaceSchema,
} from './section-form.ts';
import { keepFreeZoneSchema, obstructionSchema } from './surroundings.ts';

/** What a reading's ± does to one wall, mm square to it. */
export const plusMinusShareSchema = z.strictObject({
  key: dimensionKeySchema,
  plusMinusMm: z.number().min(0),
});
export type PlusMinusShare = Readonly<z.infer<typeof plusMinusShareSchema>>;

/** Wall i runs from corner i of the cavity polygon to corner i + 1. */
export const cavityWallSchema = z.strictObject({
  id: z.string().min(1).max(40),
  name: z.string().min(1).max(60),
  role: wallRoleSchema,
  surface: wallSurfaceSchema,
  /** Worst case: the shares added up. */
  plusMinusMm: z.number().min(0),
  /** Likely: root of the sum of squares. */
  likelyPlusMinusMm: z.number().min(0),
  /** Largest first. */
  shares: z.array(plusMinusShareSchema).readonly(),
  /** How far a box in its place may press it in, mm; left out = not at all. */
  crushMm: z.number().min(0).optional(),
});
export type CavityWall = Readonly<z.infer<typeof cavityWallSchema>>;

/** Where in the section the space is how wide. Where slabs overlap, the narrower one holds. */
export const widthSlabSchema = z.strictObject({
  id: z.string().min(1).max(40),
  name: z.string().min(1).max(60),
  polygon: polygonMmSchema.readonly(),
  zMinMm: z.number(),
  zMaxMm: z.number(),
  /** ± of one side from the centre line: half that of the width. */
  sidePlusMinusMm: z.number().min(0),
  /** ± of the slab's own outline in the section (height and ends of a wheel arch). */
  sectionPlusMinusMm: z.number().min(0),
  /** The same two as root of the sum of squares; left out = as at worst. */
  sideLikelyMm: z.number().min(0).optional(),
  sectionLikelyMm: z.number().min(0).optional(),
});
export type WidthSlab = Readonly<z.infer<typeof widthSlabSchema>>;

export const openingSchema = z.strictObject({
  /** Index of the opening among the walls. */
  wallIndex: z.number().int().min(0),
  from: pointMmSchema,
  to: pointMmSchema,
  heightMm: z.number().positive(),
  heightPlusMinusMm: z.number().min(0),
  /** How far either end may lie along the opening from where it is drawn, at worst; left out in older surveys. */
  fromPlusMinusMm: z.number().min(0).optional(),
  toPlusMinusMm: z.number().min(0).optional(),
  widthMm: z.number().positive(),
  widthPlusMinusMm: z.number().min(0),
});
export type Opening = Readonly<z.infer<typeof openingSchema>>;

/** A redundant dimension against what the others make of it. Lengths in mm. */
export const checkDimensionSchema = z.strictObject({
  key: dimensionKeySchema,
  measuredMm: z.number(),
  derivedMm: z.number(),
  /** Measured less derived. */
  residualMm: z.number(),
  /** Worst case of both. */
  allowedMm: z.number().min(0),
  agrees: z.boolean(),
});
export type CheckDimension = Readonly<z.infer<typeof checkDimensionSchema>>;

/** What least squares would change in a reading so that the checks agree. Advice: it is not applied. */
export const readingCorrectionSchema = z.strictObject({
  key: dimensionKeySchema,
  /** Add this to the reading: mm for a length, radians for an angle. */
  by: z.number(),
  unit: z.enum(['length', 'angle']),
  /** The correction in multiples of the reading's own ±: above 1 is suspect. */
  timesPlusMinus: z.number(),
});
export type ReadingCorrection = Readonly<z.infer<typeof readingCorrectionSchema>>;

/** One dimension before and after least squares over all of them: mm for a length, radians for an angle. */
export const adjustedReadingSchema = z.strictObject({
  key: dimensionKeySchema,
  unit: z.enum(['length', 'angle']),
  /** A redundant dimension: what it adjusts to is what the others make of it. */
  isCheck: z.boolean(),
  measured: z.number(),
  adjusted: z.number(),
  /** Measured less adjusted. */
  residual: z.number(),
  /** The residual in multiples of the reading's own ±: above 1 is suspect. */
  timesPlusMinus: z.number().min(0),
  plusMinus: z.number().min(0),
  /** Likely ± once all dimensions are taken together: never above its own. */
  adjustedPlusMinus: z.number().min(0),
});
export type AdjustedReading = Readonly<z.infer<typeof adjustedReadingSchema>>;

const comparedValueSchema = z.strictObject({ value: z.number(), plusMinus: z.number().min(0) });

/** One dimension in two surveys of one form: mm for a length, radians for an angle. */
export const dimensionComparisonSchema = z.strictObject({
  key: dimensionKeySchema,
  letter: z.string(),
  label: z.string(),
  unit: z.enum(['length', 'angle']),
  first: comparedValueSchema.nullable(),
  second: comparedValueSchema.nullable(),
  /** Second less first; null where one has none. */
  difference: z.number().nullable(),
  /** Both ± together. */
  allowed: z.number().min(0).nullable(),
  verdict: z.enum(['agrees', 'differs', 'only-first', 'only-second']),
});
export type DimensionComparison = Readonly<z.infer<typeof dimensionComparisonSchema>>;

/** ± of one corner of the section: half axes and all, as a covariance in the scale of the ±. */
export const cornerSpreadSchema = z.strictObject({
  cornerId: z.string(),
  at: pointMmSchema,
  xxMm2: z.number().min(0),
  xyMm2: z.number(),
  yyMm2: z.number().min(0),
  /** Half the long axis of the likely ellipse, mm. */
  likelyMm: z.number().min(0),
  /** Every reading against it, mm. */
  worstMm: z.number().min(0),
});
export type CornerSpread = Readonly<z.infer<typeof cornerSpreadSchema>>;

export const cavityFindingSchema = z.discriminatedUnion('code', [
  z.strictObject({
    code: z.literal('opening-taller-than-cavity'),
    key: dimensionKeySchema,
    openingMm: z.number(),
    cavityMm: z.number(),
    byMm: z.number(),
  }),
  z.strictObject({
    code: z.literal('opening-wider-than-cavity'),
    key: dimensionKeySchema,
    openingMm: z.number(),
    cavityMm: z.number(),
    byMm: z.number(),
  }),
  z.strictObject({
    code: z.literal('check-disagrees'),
    key: dimensionKeySchema,
    measuredMm: z.number(),
    derivedMm: z.number(),
    byMm: z.number(),
    allowedMm: z.number(),
  }),
  /** Two readings of one dimension lie further apart than their ± explain. */
  z.strictObject({
    code: z.literal('readings-differ'),
    key: dimensionKeySchema,
    unit: z.enum(['length', 'angle']),
    smallest: z.number(),
    largest: z.number(),
    allowed: z.number(),
  }),
  /** A laser does not read carpet, foam or glass. */
  z.strictObject({
    code: z.literal('method-unsuited'),
    key: dimensionKeySchema,
    method: measuringMethodSchema,
  }),
  /** A depth was taken higher up than the space goes: it is not used. */
  z.strictObject({
    code: z.literal('taken-above-space'),
    key: dimensionKeySchema,
    atMm: z.number(),
    spaceMm: z.number(),
  }),
  /** An optional reading is not used because its partner is missing. */
  z.strictObject({
    code: z.literal('partner-missing'),
    key: dimensionKeySchema,
    missing: z.array(dimensionKeySchema).readonly(),
  }),
  /** Nobody took it, so a value is assumed: mm for a length, radians for an angle. */
  z.strictObject({
    code: z.literal('assumed'),
    key: dimensionKeySchema,
    unit: z.enum(['length', 'angle']),
    value: z.number(),
    why: z.string(),
  }),
]);
export type CavityFinding = Readonly<z.infer<typeof cavityFindingSchema>>;

/** What is taken to be free beyond the opening until somebody measures it. */
export const outsideAssumptionSchema = z.strictObject({
  /** Free straight out from the opening: no bumper, lid, strut, ground or seat in the way. */
  assumes: z.literal('free-straight-out-from-the-opening'),
  region: polygonMmSchema.readonly(),
});
export type OutsideAssumption = Readonly<z.infer<typeof outsideAssumptionSchema>>;

export const cavitySchema = z.strictObject({
  kind: sectionFormKindSchema,
  /** Simple, counter-clockwise; origin at the foot of the back wall. */
  polygon: polygonMmSchema.readonly(),
  walls: z.array(cavityWallSchema).readonly(),
  opening: openingSchema,
  widthSlabs: z.array(widthSlabSchema).min(1).readonly(),
  obstructions: z.array(obstructionSchema).readonly(),
  keepFree: z.array(keepFreeZoneSchema).readonly(),
  outside: outsideAssumptionSchema,
  checks: z.array(checkDimensionSchema).readonly(),
  corrections: z.array(readingCorrectionSchema).readonly(),
  /** The adjusted values that the walls stand on; left out = they stand on the readings as taken. */
  adjusted: z.array(adjustedReadingSchema).readonly().optional(),
  /** Left out = nobody looked beyond the opening. */
  beyond: beyondOpeningSchema.optional(),
  findings: z.array(cavityFindingSchema).readonly(),
});
export type CavityResult = Readonly<z.infer<typeof cavitySchema>>;

/** Where a lettered dimension is drawn. An angle has its vertex; a length has none. */
export const labelAnchorSchema = z.strictObject({
  key: dimensionKeySchema,
  letter: z.string(),
  view: drawingViewSchema,
  from: pointMmSchema,
  to: pointMmSchema,
  vertex: pointMmSchema.nullable(),
  /** Measured, assumed by rule, or only drawn at a typical value. */
  standing: z.enum(['measured', 'assumed', 'typical']),
});
export type LabelAnchor = Readonly<z.infer<typeof labelAnchorSchema>>;

export const missingDimensionSchema = z.strictObject({
  key: dimensionKeySchema,
  letter: z.string(),
  label: z.string(),
});
export type MissingDimension = Readonly<z.infer<typeof missingDimensionSchema>>;

export const sketchWallSchema = z.strictObject({
  id: z.string(),
  name: z.string(),
  role: wallRoleSchema,
  surface: wallSurfaceSchema,
  from: pointMmSchema,
  to: pointMmSchema,
  /** Required dimensions still missing that place this wall; empty = drawn as measured. */
  waitsFor: z.array(dimensionKeySchema).readonly(),
});
export type SketchWall = Readonly<z.infer<typeof sketchWallSchema>>;

export const cavitySketchSchema = z.strictObject({
  walls: z.array(sketchWallSchema).readonly(),
  /** Plan outlines of the width slabs, widest first. */
  plan: z
    .array(z.strictObject({ id: z.string(), name: z.string(), polygon: polygonMmSchema.readonly() }))
    .readonly(),
  labels: z.array(labelAnchorSchema).readonly(),
  missing: z.array(missingDimensionSchema).readonly(),
  /** Readings left out of the drawing because they cannot be, with the reason. */
  rejected: z.array(z.strictObject({ key: z.string(), allowed: z.string(), why: z.string() })).readonly(),
  findings: z.array(cavityFindingSchema).readonly(),
  /** Every required dimension is there and the outline does not cross itself. */
  complete: z.boolean(),
});
export type CavitySketch = Readonly<z.infer<typeof cavitySketchSchema>>;

// A section form: which dimensions of a cargo space to take, with a letter each, as data. The form draws itself
// (sketchCavity) and the engine builds the cavity from it (buildCavity).
import { z } from 'zod';
import { dimensionKeySchema } from './measuring.ts';

export const sectionFormKindSchema = z.enum([
  'saloon-boot',
  'hatch-estate',
  'behind-seat',
  'under-seat',
  'spare-wheel-well',
  'footwell',
  'free-section',
]);
export type SectionFormKind = z.infer<typeof sectionFormKindSchema>;

/** What a wall of the section is, in the shop's words. Clearances are wanted by role. */
export const wallRoleSchema = z.enum([
  'floor',
  'seat-back',
  'cab-wall',
  'sill',
  'shelf',
  'roof',
  'header',
  'seat-underside',
  'opening',
  'other',
]);
export type WallRole = z.infer<typeof wallRoleSchema>;

/** Hard = metal or board, never crossed. Soft = carpet, foam, a seat face. Open = the plane of the opening. */
export const wallSurfaceSchema = z.enum(['hard', 'soft', 'open']);
export type WallSurface = z.infer<typeof wallSurfaceSchema>;

/** Section = side view (x, y). Plan = seen from above: x along the car, y of the point = sideways z. */
export const drawingViewSchema = z.enum(['section', 'plan']);
export type DrawingView = z.infer<typeof drawingViewSchema>;

const dimensionBase = {
  key: dimensionKeySchema,
  /** Mark in a circle on the drawing: A, B ... (I and O left out), or 1x, 1y for the corners of a free section. */
  letter: z.string().min(1).max(4),
  /** In the shop's words: `Floor, seat back to sill`. */
  label: z.string().min(1).max(80),
  /** How to hold the tape. */
  hint: z.string().max(200),
  /** Required builds the cavity; optional refines it; check is redundant and tests the others. */
  need: z.enum(['required', 'optional', 'check']),
  /** Which of several readings leaves less room for a box, and so is used. */
  tighter: z.enum(['smaller', 'larger']),
  /** The tape ends on carpet, foam or a seat face: the default ± grows. */
  onSoftTrim: z.boolean(),
  /** What to highlight while this dimension is asked for: wall ids of that view. */
  drawing: z.strictObject({ view: drawingViewSchema, highlights: z.array(z.string().max(40)).readonly() }),
};

export const lengthDimensionSchema = z.strictObject({
  ...dimensionBase,
  unit: z.literal('length'),
  minMm: z.number(),
  maxMm: z.number(),
  /** Only to draw the form before it is measured. */
  typicalMm: z.number(),
  /** Value of an optional dimension that nobody took; null = the construction does without it. */
  assumed: z
    .strictObject({ valueMm: z.number(), plusMinusMm: z.number().min(0), why: z.string().max(120) })
    .nullable(),
});

export const angleDimensionSchema = z.strictObject({
  ...dimensionBase,
  unit: z.literal('angle'),
  minRad: z.number(),
  maxRad: z.number(),
  typicalRad: z.number(),
  assumed: z
    .strictObject({ valueRad: z.number(), plusMinusRad: z.number().min(0), why: z.string().max(120) })
    .nullable(),
});

export const dimensionSchema = z.discriminatedUnion('unit', [lengthDimensionSchema, angleDimensionSchema]);
export type LengthDimension = Readonly<z.infer<typeof lengthDimensionSchema>>;
export type AngleDimension = Readonly<z.infer<typeof angleDimensionSchema>>;
export type Dimension = LengthDimension | AngleDimension;

/** A corner of a free section and the wall that begins there. Keys: `<id>-x`, `<id>-y`. */
export const freeCornerSchema = z.strictObject({
  id: dimensionKeySchema.max(30),
  wallName: z.string().min(1).max(60),
  role: wallRoleSchema,
  surface: wallSurfaceSchema,
});
export type FreeCorner = Readonly<z.infer<typeof freeCornerSchema>>;

/** How the dimensions make the section. Fixed forms need no more than their name. */
export const constructionSchema = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('saloon-boot') }),
  z.strictObject({ by: z.literal('hatch-estate') }),
  z.strictObject({ by: z.literal('behind-seat') }),
  z.strictObject({ by: z.literal('under-seat') }),
  z.strictObject({ by: z.literal('spare-wheel-well') }),
  z.strictObject({ by: z.literal('footwell') }),
  z.strictObject({ by: z.literal('points'), corners: z.array(freeCornerSchema).min(3).max(60).readonly() }),
  /** Offsets up and down, square to a straightedge: on the floor from the back wall, or wherever its start and tilt say. */
  z.strictObject({
    by: z.literal('stations'),
    stationsMm: z.array(z.number().min(0).max(10_000)).min(2).max(80).readonly(),
  }),
]);
export type FormConstruction = Readonly<z.infer<typeof constructionSchema>>;

export const sectionFormSchema = z.strictObject({
  id: z.string().min(1).max(60),
  kind: sectionFormKindSchema,
  name: z.string().min(1).max(80),
  dimensions: z.array(dimensionSchema).min(1).max(200).readonly(),
  construction: constructionSchema,
});
export type SectionForm = Readonly<z.infer<typeof sectionFormSchema>>;

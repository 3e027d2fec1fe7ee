// A box in its place, through the opening square-on, and the largest straight-sided one.
import { z } from 'zod';
import { pointMmSchema, polygonMmSchema, poseSchema } from '../geometry/index.ts';
import { wallRoleSchema } from './section-form.ts';

const clearanceMm = z.number().min(0).max(500);

/** Wanted clearances, mm, after finish. Trade practice; the wide end of each range is the default. */
export const clearanceSettingsSchema = z.strictObject({
  /** Each side, 6 to 10. */
  sidesMm: clearanceMm,
  /** Seat backs and cab walls, 10 to 15. */
  seatBackMm: clearanceMm,
  /** Roof, shelf, header, seat underside, shut lid. */
  aboveMm: clearanceMm,
  /** Hinges, struts, seat frames: at least 15. */
  movingMetalMm: clearanceMm,
  /** Sill and anything else that stands still. */
  otherMm: clearanceMm,
  /** Beyond the edge of a keep-free zone. */
  keepFreeMm: clearanceMm,
  /** All round on the way through the opening: at least 10. */
  openingMm: clearanceMm,
});
export type ClearanceSettings = Readonly<z.infer<typeof clearanceSettingsSchema>>;

export const surfaceReferenceSchema = z.strictObject({
  type: z.enum(['wall', 'side', 'obstruction', 'keep-free']),
  id: z.string(),
  name: z.string(),
  /** Role of a wall; null for anything else. */
  role: wallRoleSchema.nullable(),
  /** Which side of the car, seen from behind looking forward; null unless a side wall. */
  side: z.enum(['left', 'right']).nullable(),
});
export type SurfaceReference = Readonly<z.infer<typeof surfaceReferenceSchema>>;

/** A point of the section with its place across the width. */
export const spacePointSchema = pointMmSchema.extend({ zMm: z.number() });
export type SpacePoint = Readonly<z.infer<typeof spacePointSchema>>;

export const surfaceClearanceSchema = z.strictObject({
  surface: surfaceReferenceSchema,
  /** Nominal; negative = how deep the box stands in it. */
  clearanceMm: z.number(),
  /** Every ± against us. */
  worstCaseMm: z.number(),
  /** Root-sum-square of the ±. */
  likelyMm: z.number(),
  wantedMm: z.number(),
  /** Clear = wanted even at worst. Touches = nothing left, or less. Tight = between. */
  verdict: z.enum(['clear', 'tight', 'touches']),
  /** The box stands on this floor: contact is meant and its ± moves both. */
  rests: z.boolean(),
  /** Closest pair: on the box, on the surface. */
  at: z.tuple([spacePointSchema, spacePointSchema]),
});
export type SurfaceClearance = Readonly<z.infer<typeof surfaceClearanceSchema>>;

export const overlapSchema = z.strictObject({
  surface: surfaceReferenceSchema,
  byMm: z.number().positive(),
});
export type Overlap = Readonly<z.infer<typeof overlapSchema>>;

export const placementSchema = z.strictObject({
  /** Stands in its place as measured, nothing overlapping. Says nothing about the way in. */
  fits: z.boolean(),
  /** Still true with every ± against us. */
  fitsAtWorst: z.boolean(),
  /** Tightest first, by clearance less what is wanted. */
  clearances: z.array(surfaceClearanceSchema).readonly(),
  overlapping: z.array(overlapSchema).readonly(),
  /** No corner of the box lies within the section at all. */
  outsideSection: z.boolean(),
});
export type Placement = Readonly<z.infer<typeof placementSchema>>;

export const openingTrialSchema = z.strictObject({
  orientation: z.enum(['upright', 'least-caliper']),
  /** How far the box is turned from upright for this trial. */
  tiltRad: z.number(),
  extentMm: z.number().positive(),
  heightSpareMm: z.number(),
});
export type OpeningTrial = Readonly<z.infer<typeof openingTrialSchema>>;

export const openingCheckSchema = z.strictObject({
  /** Too close = it may pass, but not with the wanted clearance after the ±: try a card panel. */
  verdict: z.enum(['passes', 'does-not-pass', 'too-close']),
  /** Opening less box, both sides together, before clearance and ±; of the better trial. */
  heightSpareMm: z.number(),
  widthSpareMm: z.number(),
  worstHeightSpareMm: z.number(),
  worstWidthSpareMm: z.number(),
  /** Wanted in each direction: twice the opening clearance. */
  wantedSpareMm: z.number(),
  minCaliperWidthMm: z.number().positive(),
  trials: z.array(openingTrialSchema).readonly(),
  /** The sentence is made in the view. Every one says that turning on the way was not looked at. */
  sentenceCode: z.enum([
    'square-on-passes-turning-not-considered',
    'square-on-does-not-pass-turning-not-considered',
    'square-on-too-close-turning-not-considered',
  ]),
});
export type OpeningCheck = Readonly<z.infer<typeof openingCheckSchema>>;

export const straightBoxSchema = z.strictObject({
  depthBottomMm: z.number().positive(),
  depthTopMm: z.number().positive(),
  heightMm: z.number().positive(),
  widthMm: z.number().positive(),
  /** Counter-clockwise in the box's own frame: back bottom corner at the origin, bottom along x. */
  profile: polygonMmSchema.readonly(),
  pose: poseSchema,
  areaMm2: z.number().positive(),
  /** Outside volume: walls, finish and everything in it still to come off. */
  outsideLitres: z.number().positive(),
  /** What width it could not grow past. */
  widthLimit: z.enum(['asked', 'opening', 'sides', 'obstruction']),
});
export type StraightBox = Readonly<z.infer<typeof straightBoxSchema>>;

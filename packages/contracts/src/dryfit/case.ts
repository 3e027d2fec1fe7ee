// One question of the planner and its answer.
import { z } from 'zod';
import {
  coordinateMmSchema,
  type Pose,
  pointMmSchema,
  polygonMmSchema,
  poseSchema,
} from '../geometry/index.ts';

const clearanceMm = z.number().min(0).max(500);

export const dryFitObstacleSchema = z.strictObject({
  name: z.string().max(120),
  polygon: polygonMmSchema,
  /** Where it stands across the vehicle; null = over the whole width. */
  z: z.strictObject({ minMm: coordinateMmSchema, maxMm: coordinateMmSchema }).nullable().default(null),
});
export type DryFitObstacle = Readonly<z.infer<typeof dryFitObstacleSchema>>;

export const dryFitCaseSchema = z.strictObject({
  /** Cargo space and free region beyond it as one outline: the body stays in it. Counter-clockwise. */
  space: polygonMmSchema,
  /** The free region beyond the opening. Counter-clockwise. */
  outside: polygonMmSchema,
  /** The edge that cargo space and outside share. */
  opening: z.strictObject({ from: pointMmSchema, to: pointMmSchema }),
  obstacles: z.array(dryFitObstacleSchema).max(60).default([]),
  /** Left and right walls; null = the width plays no part. */
  zRange: z.strictObject({ minMm: coordinateMmSchema, maxMm: coordinateMmSchema }).nullable().default(null),
  body: z.strictObject({
    profile: polygonMmSchema,
    /** Along z from the pose's z; null = the width plays no part. */
    widthMm: z.number().min(1).max(20_000).nullable().default(null),
  }),
  /** Least distance to anything solid, mm; 0 = may touch. On the way, and where it stays. */
  clearance: z.strictObject({ movingMm: clearanceMm, finalMm: clearanceMm }),
  /** A pose wholly outside. */
  start: poseSchema,
  /** Where it stays. */
  final: poseSchema,
  /** How far it may be tipped; null = it may go right round. */
  thetaRange: z
    .strictObject({ minRad: z.number().min(-100).max(100), maxRad: z.number().min(-100).max(100) })
    .nullable()
    .default(null),
});
export type DryFitCase = Readonly<z.infer<typeof dryFitCaseSchema>>;
export type DryFitCaseInput = z.input<typeof dryFitCaseSchema>;

export const dryFitVerdictSchema = z.enum(['loads', 'does-not-load', 'too-close']);
export type DryFitVerdict = z.infer<typeof dryFitVerdictSchema>;

export type DryFitResult = {
  /** Stands in its final place with the clearance asked for there. */
  readonly fits: boolean;
  /** Distance to the nearest solid in the final place, mm; null where it overlaps something. */
  readonly finalClearanceMm: number | null;
  readonly verdict: DryFitVerdict;
  /** From the final place to wholly outside; straight between poses, in x, y, theta and z alike. Empty unless it loads. */
  readonly path: readonly Pose[];
  /** Least distance to anything solid along `path`: proved, and what it can't exceed. Null unless it loads. */
  readonly clearance: { readonly atLeastMm: number; readonly atMostMm: number } | null;
  /** Finest movement of a body point that the search told apart, mm. */
  readonly provedToMm: number;
  /** What decided: for the record and for benches. */
  readonly decidedBy: 'place' | 'opening' | 'straight-way' | 'search';
  readonly cells: number;
};

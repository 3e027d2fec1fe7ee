// The largest profile of a family that goes in and comes out: by section area, and by the shop's own net litres.
import { z } from 'zod';
import type { CavityResult, ClearanceSettings } from '../cargo/index.ts';
import { type PolygonMm, type Pose, poseSchema } from '../geometry/index.ts';
import { dryFitCaseSchema } from './case.ts';

/** Box; wedge (top shorter than floor); clipped wedge (front upright up to m, then sloping). */
export const profileFamilySchema = z.enum(['box', 'wedge', 'clipped']);
export type ProfileFamily = z.infer<typeof profileFamilySchema>;

/** Depth at the floor b, depth at the top t, height h, height m of the upright part of the front, mm. */
export type ProfileMeasures = {
  readonly b: number;
  readonly t: number;
  readonly h: number;
  readonly m: number;
};

const measureRange = z.strictObject({
  minMm: z.number().min(1).max(20_000),
  maxMm: z.number().min(1).max(20_000),
});
export const largestProfileSchema = z.strictObject({
  /** `body` and `final` are set by the search. */
  scene: dryFitCaseSchema.omit({ body: true, final: true }),
  /** Pose of the lower back corner. */
  anchor: poseSchema,
  family: profileFamilySchema,
  ranges: z.strictObject({
    b: measureRange,
    h: measureRange,
    t: measureRange.nullable().default(null),
    m: measureRange.nullable().default(null),
  }),
  /** The top is at least this much shorter than the floor, mm; of families that have a top of their own. */
  taperMm: z.number().min(0).max(2_000).default(0),
});
export type LargestProfileInput = z.input<typeof largestProfileSchema>;
export type LargestProfileWish = Readonly<z.infer<typeof largestProfileSchema>>;

export type LargestProfileResult = {
  /** Null where not even the smallest of the family is shown to load. */
  readonly best: {
    readonly measures: ProfileMeasures;
    readonly areaMm2: number;
    readonly path: readonly Pose[];
  } | null;
  /** No profile of the family that loads is larger than this, mm². */
  readonly upperBoundMm2: number;
  readonly runs: number;
};

/** Those of the door, and the L: depth b at the floor up to height m, depth t above it up to h. */
export type SheetFamily = ProfileFamily | 'stepped';

export type MeasureLimits = { readonly minMm: number; readonly maxMm: number };

/** What the Box sheet asks for. Lengths mm, finished outside. */
export type LargestForSheetWish = {
  /** As it stands in the chosen state. */
  readonly cavity: CavityResult;
  readonly clearances: ClearanceSettings;
  readonly widthMm: number;
  /** Where the lower back corner of a box stands today: its height, tilt and place across are kept. */
  readonly anchor: Pose;
  /** How far the back corner may be moved along x from the anchor; both 0 = it stays. */
  readonly slide: MeasureLimits;
  readonly thetaRange: { readonly minRad: number; readonly maxRad: number } | null;
  readonly families: readonly SheetFamily[];
  readonly ranges: {
    readonly b: MeasureLimits;
    readonly t: MeasureLimits;
    readonly h: MeasureLimits;
    readonly m: MeasureLimits;
  };
  /** Sides of the finished section may be no longer than this (what a sheet gives); null = no limit. */
  readonly longestPanelMm: number | null;
  /** Least depth at `atHeightMm` above the floor of the box, for the magnet; null = no driver chosen. */
  readonly driverDepth: { readonly depthMm: number; readonly atHeightMm: number } | null;
  /** Least height of the upright or sloping face that carries the driver; null = none. */
  readonly leastBaffleHeightMm: number | null;
  readonly leastBaffleAreaMm2: number | null;
  /** Floor depths to keep free in front of the box, mm; an answer for each. */
  readonly floorKeptFreeMm: readonly number[];
};

export type SheetProfile = {
  readonly family: SheetFamily;
  readonly measures: ProfileMeasures;
  readonly profile: PolygonMm;
  readonly final: Pose;
  readonly netLitres: number;
  readonly areaMm2: number;
  readonly path: readonly Pose[];
};

export type LargestForSheetResult = {
  /** Null where none of the families was shown to go in. */
  readonly best: SheetProfile | null;
  /** Best for each floor depth kept free, in the order asked; null where none was found. */
  readonly tradeOff: readonly { readonly keptFreeMm: number; readonly best: SheetProfile | null }[];
  readonly runs: number;
  /** Cancelled, or out of time: what stands is the best so far. */
  readonly endedEarly: boolean;
};

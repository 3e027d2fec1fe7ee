// What the shop is told of a dry fit: does the finished box go in and come out, by how much, where it is nearest or jams,
// and what would help. Poses put the profile's own origin at (x, y); z is the middle of the width, as for a box in place.
import type { CavityResult, ClearanceSettings, SceneAssumption, SurfaceClearance } from '../cargo/index.ts';
import type { PointMm, PolygonMm, Pose } from '../geometry/index.ts';

/** Another way to load: a state of seat and floor, or another opening, with the cavity as it is then. */
export type DryFitAlternative = {
  readonly id: string;
  readonly kind: 'state' | 'opening';
  readonly name: string;
  readonly cavity: CavityResult;
  /** Null = in the same place. */
  readonly final: Pose | null;
};

export type DryFitQuestion = {
  /** As it stands in the chosen state: prisms that are gone are out of it already. */
  readonly cavity: CavityResult;
  /** In place by surface; on the way all round by `openingMm`. */
  readonly clearances: ClearanceSettings;
  /** Finished outside, finish counted, in its own frame; either turning sense. */
  readonly profile: PolygonMm;
  readonly widthMm: number;
  readonly final: Pose;
  /** How far it may be tipped on the way; null = it may turn right over. */
  readonly thetaRange: { readonly minRad: number; readonly maxRad: number } | null;
  readonly alternatives: readonly DryFitAlternative[];
  /** Ids of obstructions that can be taken off for loading. */
  readonly removable: readonly string[];
};

/** Least distance along the best way, mm; below 0 = so much overlap at best. Null = not bounded by the search. */
export type WayMargin = { readonly atLeastMm: number | null; readonly atMostMm: number | null };

/** Part of the vehicle that the box is near or jams on. */
export type ContactSurface = {
  readonly type: 'wall' | 'opening-end' | 'side' | 'obstruction' | 'lid' | 'bumper' | 'beyond';
  /** Id of the wall or obstruction; null for anything else. */
  readonly id: string | null;
  readonly name: string;
};

export type BodyPart = {
  readonly kind: 'corner' | 'edge';
  /** Corner i of the profile, or the edge from corner i to the next. */
  readonly index: number;
  /** Where it is on the box as it stands in its place. */
  readonly place:
    | 'lower-back'
    | 'lower-front'
    | 'upper-back'
    | 'upper-front'
    | 'bottom'
    | 'top'
    | 'back'
    | 'front';
};

export type DryFitContact = {
  readonly surface: ContactSurface;
  readonly part: BodyPart;
  /** Below 0 = how deep they overlap, mm. */
  readonly gapMm: number;
  readonly onBodyAt: PointMm;
  readonly onSurfaceAt: PointMm;
};

/** A pose on the way with what it is near, nearest first. */
export type TightPlace = {
  readonly pose: Pose;
  /** Tilt from how it stands in its place, radians, counter-clockwise. */
  readonly tiltRad: number;
  readonly contacts: readonly DryFitContact[];
};

/** The survey dimension whose ± moves the tightest place most. */
export type DecidingDimension = {
  readonly key: string;
  /** What its ± does at the contact, mm. */
  readonly plusMinusMm: number;
  readonly surface: ContactSurface;
  /** With this dimension known exactly (at its present value) the answer is a yes or a no. */
  readonly settles: boolean;
};

export type DryFitRemedy = {
  readonly kind: 'lower' | 'shallower' | 'clip-corner' | 'take-off' | 'state' | 'opening' | 'split';
  /** Stable within one report. */
  readonly id: string;
  /** Whole mm off the height, the depth, or along both edges of the clipped corner; null where nothing is cut. */
  readonly byMm: number | null;
  /** The corner that is clipped, of the profile as asked; null for any other kind. */
  readonly cornerIndex: number | null;
  readonly cornerPlace: BodyPart['place'] | null;
  /** Obstruction, state or opening; null where nothing but the box changes. */
  readonly subject: { readonly id: string; readonly name: string } | null;
  /** Outside of what then goes in: one, or both parts of a split one, in the frame of the profile asked. */
  readonly profiles: readonly PolygonMm[];
  /** Across the car, mm: of each part of a split one. */
  readonly widthMm: number;
  /** Outer section area given up times width, litres: before panels. What the air loses is the box sheet's to say. */
  readonly outsideLitresLost: number;
  /** Goes in with every ± against it (true) or as measured (false). */
  readonly atWorst: boolean;
  readonly path: readonly Pose[];
};

export type DryFitAssumption =
  | SceneAssumption
  | 'upright-only-within-the-tilts-allowed'
  | 'turning-over-allowed'
  | 'place-follows-the-wall-behind';

export type DryFitNotConsidered = 'yaw-and-roll' | 'soft-walls' | 'lifting-by-hand' | 'several-people';

export type DryFitReport = {
  /**
   * Goes in = a motion is proved with every ± against it. Does not = none exists with every ± in its favour and bare
   * touching allowed. Too close = the tape's ± decides, or the search ended before it did (`undecided`).
   */
  readonly verdict: 'goes-in' | 'too-close' | 'does-not-go-in';
  /** Why it is too close; null for any other verdict. */
  readonly tooClose: 'plus-minus' | 'place' | 'undecided' | null;
  /** As measured, with every ± against it, and in its favour. */
  readonly margin: WayMargin;
  readonly marginAtWorst: WayMargin;
  readonly marginAtBest: WayMargin;
  /** What is wanted all round on the way, mm, and whether it is kept as measured. */
  readonly wantedMm: number;
  readonly keepsWanted: boolean;
  /** In its place: worst case of each surface, tightest first. */
  readonly fits: {
    readonly asMeasured: boolean;
    readonly atWorst: boolean;
    readonly clearances: readonly SurfaceClearance[];
  };
  /** From the final place to wholly outside, straight between poses. As measured, else at best; empty where none is known. */
  readonly path: readonly Pose[];
  /** Walls that `path` is proved for; null where there is none. */
  readonly pathWalls: 'worst' | 'nominal' | 'best' | null;
  /** Nearest pose of `path`; null where there is none. */
  readonly tightest: TightPlace | null;
  /** As measured; null where it goes in as measured. */
  readonly shortBy: { readonly atLeastMm: number; readonly atMostMm: number | null } | null;
  /** Where the best way that is not free is stuck; null where a way is known as measured. */
  readonly jam: TightPlace | null;
  readonly decidingDimension: DecidingDimension | null;
  /** Each verified by a run of its own; cheapest in section area first. */
  readonly remedies: readonly DryFitRemedy[];
  readonly assumptions: readonly DryFitAssumption[];
  readonly notConsidered: readonly DryFitNotConsidered[];
  /** A no re-checked from its stored cut by other predicates; null where that was not done. */
  readonly cutChecked: boolean | null;
  /** Section as measured that everything is drawn in: walls of the cavity, free ground, obstacles. */
  readonly drawn: {
    readonly space: PolygonMm;
    readonly outside: PolygonMm;
    readonly opening: { readonly from: PointMm; readonly to: PointMm };
    readonly obstacles: readonly { readonly name: string; readonly polygon: PolygonMm }[];
  };
  readonly provedToMm: number;
  readonly cells: number;
  readonly ms: number;
};

export type DryFitProgress = {
  readonly step: 'place' | 'verdict' | 'margin' | 'deciding-dimension' | 'remedies' | 'done';
  /** 0 to 1. */
  readonly share: number;
  /** The answer so far; its verdict is final from `margin` on. Null before. */
  readonly soFar: DryFitReport | null;
};

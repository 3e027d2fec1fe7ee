// Sheet 04, in and out: what is asked about a box in its car, and the shop's answer. Lengths in mm, angles in radians.
import { z } from 'zod';
import type { SceneAssumption } from '../cargo/index.ts';
import type { DryFitResult } from '../dryfit/index.ts';
import type { PointMm, Pose } from '../geometry/index.ts';

export const loadingChoicesSchema = z.strictObject({
  /** False = tipped by a quarter turn at most, either way. */
  mayTurnOver: z.boolean(),
});
export type LoadingChoices = Readonly<z.infer<typeof loadingChoicesSchema>>;

/** Too close = whether it goes in hangs on where within their ± the walls really are, or on more time than was given. */
export const loadingVerdictSchema = z.enum(['goes-in', 'too-close', 'does-not-go-in']);
export type LoadingVerdict = z.infer<typeof loadingVerdictSchema>;

/** A distance that is known to lie between two, mm; null = nothing is known on that side. */
export type MmBracket = { readonly atLeastMm: number; readonly atMostMm: number | null };

/** Where the way is tightest: a corner of the box or of the car, and what it is nearest to. */
export type TightPlace = {
  readonly pose: Pose;
  /** Of the box, of the car. */
  readonly at: readonly [PointMm, PointMm];
  /** Below 0 = how deep the box would stand in it. Walls as measured. */
  readonly gapMm: number;
  /** As the survey names it. */
  readonly wall: string;
  readonly corner: { readonly height: 'upper' | 'lower'; readonly end: 'front' | 'back' };
  /** From how it stands in its place. */
  readonly tippedRad: number;
};

export type LoadingAnswer = {
  readonly verdict: LoadingVerdict;
  /** As measured, every ± left out. */
  readonly asMeasured: DryFitResult['verdict'];
  /** Room all round on the way, every ± against it; null unless it goes in. */
  readonly spare: MmBracket | null;
  /** By how much everything round it but the floor would have to give way, every ± in its favour; null unless it doesn't go in. */
  readonly short: MmBracket | null;
  readonly decidedBy: DryFitResult['decidedBy'];
  /**
   * From its place to wholly outside, straight between poses. The box's own origin at (x, y), its left side at z. A no
   * shows the way it would take if everything gave way by `short`; empty where there is none.
   */
  readonly path: readonly Pose[];
  readonly tightest: TightPlace | null;
  readonly assumptions: readonly SceneAssumption[];
  /** Movements finer than this were not told apart. */
  readonly provedToMm: number;
  readonly cells: number;
};

/** Sizes of the box that a remedy changes, or what else it asks for. */
export type RemedyKind = 'height' | 'depth' | 'width' | 'clip' | 'lean' | 'turn-over' | 'take-out';

/** What would make it go in: tried, every ± against it. `Input` is that of the Box sheet. */
export type LoadingRemedy<Input> = {
  readonly kind: RemedyKind;
  /** Taken off the height, depth, width, the upper front corner both ways, or the depth at the top; null = nothing is cut. */
  readonly byMm: number | null;
  /** Of what is taken out of the car meanwhile. */
  readonly part: string | null;
  /** Net air lost, litres; below 0 = gained. */
  readonly costLitres: number;
  readonly netLitres: number;
  /** The sheet as it then is; null where the sheet stays as it is. */
  readonly input: Input | null;
};

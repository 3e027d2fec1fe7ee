// A box of sheet 04 in its car -> the planner's case. Walls at worst, as measured or at best; everything may be brought
// nearer (or let give way) by one distance all round.
import { type DryFitScene, dryFitScene, poseOutside, type SceneWalls } from '@gusset/cargo';
import type { BoxSheetResult } from '@gusset/contracts/box';
import type { CavityResult, ClearanceSettings } from '@gusset/contracts/cargo';
import type { LoadingChoices } from '@gusset/contracts/dry-fit-sheet';
import type { DryFitCaseInput } from '@gusset/contracts/dryfit';
import type { PolygonMm, Pose } from '@gusset/contracts/geometry';
import { isRefusal, type Refusal, refuse } from '@gusset/units';

export type LoadingQuestion = {
  readonly cavity: CavityResult;
  /** Finished, in the box's own frame. */
  readonly profile: PolygonMm;
  readonly widthMm: number;
  /** Where it stays; z at its left side. */
  readonly final: Pose;
  readonly choices: LoadingChoices;
};

const QUARTER_TURN_RAD = Math.PI / 2;

/** Refused where nobody has measured the car, or the box cannot be stood in it. */
export function loadingQuestion(
  { box, place }: Pick<BoxSheetResult, 'box' | 'place'>,
  cavity: CavityResult | null,
  choices: LoadingChoices,
): LoadingQuestion | Refusal {
  if (cavity === null) {
    return refuse('survey', {
      allowed: 'a section on sheet 02',
      got: null,
      why: 'nobody has measured the car yet',
    });
  }
  if (place === null) {
    return refuse('place', {
      allowed: 'a place in the section',
      got: null,
      why: 'the box has no place in the section yet',
    });
  }
  const { widthMm } = box.sizes.finished;
  const final = { ...place.pose, zMm: place.pose.zMm - widthMm / 2 };
  return { cavity, profile: box.section.finished, widthMm, final, choices };
}

export type LoadingCase = { readonly input: DryFitCaseInput; readonly scene: DryFitScene };

/** `nearerMm` below 0 lets walls, jambs and parts give way by that much; floors stay. */
export function loadingCase(
  { cavity, profile, widthMm, final, choices }: LoadingQuestion,
  walls: SceneWalls,
  nearerMm = 0,
): LoadingCase | Refusal {
  const scene = dryFitScene(cavity, {
    walls,
    clearances: nearerMm === 0 ? null : allRound(nearerMm),
    bodyMm: acrossMm(profile),
  });
  if (isRefusal(scene)) return scene;
  const { thetaRad, zMm } = final;
  return {
    scene,
    input: {
      ...scene.scene,
      body: { profile: [...profile], widthMm },
      clearance: { movingMm: 0, finalMm: 0 },
      start: poseOutside(scene, profile, thetaRad, zMm),
      final,
      thetaRange: choices.mayTurnOver
        ? null
        : { minRad: thetaRad - QUARTER_TURN_RAD, maxRad: thetaRad + QUARTER_TURN_RAD },
    },
  };
}

/** Farthest two corners, mm: free ground reaches three times as far. */
function acrossMm(profile: PolygonMm): number {
  return Math.max(...profile.flatMap((a) => profile.map((b) => Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm))));
}

function allRound(mm: number): ClearanceSettings {
  return {
    sidesMm: mm,
    seatBackMm: mm,
    aboveMm: mm,
    movingMetalMm: mm,
    otherMm: mm,
    keepFreeMm: mm,
    openingMm: mm,
  };
}

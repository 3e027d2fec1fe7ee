// Where the finished box stands in the surveyed section, how near everything is, and the way straight out.
import { passesOpeningSquareOn, placeBox, restAgainst } from '@gusset/cargo';
import type { BoxFacts, BoxInput, BoxPlace } from '@gusset/contracts/box';
import type { CavityResult, WallRole } from '@gusset/contracts/cargo';
import type { BoxDesign, BoxResult } from '@gusset/contracts/enclosure';
import type { Pose } from '@gusset/contracts/geometry';
import { isRefusal, type Refusal } from '@gusset/units';

const RAD_PER_DEGREE = Math.PI / 180;
/** A usual gap is rounded up to what a person would type. */
const GAP_STEP_MM = 0.1;
/** Of a step: what division leaves behind. */
const HAIR = 1e-6;
/** So that a gap of 15 is never measured as 14.999999999999988 and called too tight. */
const GAP_HAIR_MM = 1e-6;
/** What a box is pushed up to, the likeliest first. */
const BACKS: readonly WallRole[] = ['cab-wall', 'seat-back', 'other', 'sill'];

export type PlacedIn = {
  readonly input: BoxInput;
  readonly facts: Pick<BoxFacts, 'clearances'>;
  readonly cavity: CavityResult;
  readonly design: BoxDesign;
  readonly box: BoxResult;
};

export function placeInSection({ input, facts, cavity, design, box }: PlacedIn): BoxPlace | Refusal {
  const { clearances } = facts;
  const profile = box.section.finished;
  const { widthMm } = box.sizes.finished;
  const pose = poseOf({ input, facts, cavity, design, box });
  if (isRefusal(pose)) return pose;
  const placement = placeBox({ cavity, profile, widthMm, pose, clearances });
  if (isRefusal(placement)) return placement;
  const { thetaRad } = pose;
  const opening = passesOpeningSquareOn({ cavity, profile, widthMm, finishMm: 0, thetaRad, clearances });
  return isRefusal(opening) ? opening : { pose, placement, opening };
}

function poseOf({ input, facts, cavity, design, box }: PlacedIn): Pose | Refusal {
  const { place } = input;
  // A thicker finish on one side moves the middle of the finished box off its centre line.
  const zMm = (design.finish.leftMm - design.finish.rightMm) / 2;
  if (place.by === 'pose') {
    return { xMm: place.x.mm, yMm: place.y.mm, thetaRad: place.tiltDeg * RAD_PER_DEGREE, zMm };
  }
  const back = place.back ?? usualBack(cavity);
  const gapMm = place.gap?.mm ?? usualGapMm(cavity, back, facts);
  const rest = restAgainst(cavity, box.section.finished, { back, gapMm: gapMm + GAP_HAIR_MM });
  return isRefusal(rest) ? rest : { ...rest, zMm };
}

/** What the shop wants behind a box and the ± of the wall there, so that it is still left at worst. */
function usualGapMm(cavity: CavityResult, back: WallRole, { clearances }: PlacedIn['facts']): number {
  const behind = cavity.walls.filter((wall) => wall.role === back);
  const exactMm = clearances.seatBackMm + Math.max(0, ...behind.map((wall) => wall.plusMinusMm));
  return Math.ceil(exactMm / GAP_STEP_MM - HAIR) * GAP_STEP_MM;
}

export function usualBack(cavity: CavityResult): WallRole {
  return BACKS.find((role) => cavity.walls.some((wall) => wall.role === role)) ?? 'seat-back';
}

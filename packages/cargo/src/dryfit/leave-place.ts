// First moves out of the final place, where the body usually touches something and no cell round it can be free: short
// straight legs that are decided exactly, and straight ways all the way out, which is how most boxes come out.
import type { DryFitCase } from '@gusset/contracts/dryfit';
import type { PolygonMm, Pose } from '@gusset/contracts/geometry';
import { edgesOf } from '../plane/edges.ts';
import { minus, unit } from '../plane/vector.ts';
import { placeOf } from './body-place.ts';
import { CENTRE_OUTSIDE, outsideState } from './cell-state.ts';
import type { FlatBody } from './flat-body.ts';
import type { FlatScene } from './flat-scene.ts';
import { distanceToWalls, isStraightLegFree } from './straight-leg.ts';

export type Start = {
  /** From the final place to where the search begins; one pose where it begins in the place itself. */
  readonly legs: readonly Pose[];
  readonly distanceMm: number;
};

export type LeavingSetting = {
  readonly input: DryFitCase;
  readonly scene: FlatScene;
  readonly body: FlatBody;
  readonly pieces: readonly PolygonMm[];
  readonly layer: number;
  /** Wanted on the first leg, and after it. */
  readonly atPlaceMm: number;
  readonly movingMm: number;
};

const EVEN_DIRECTIONS = 24;
const FIRST_LEGS_MM = [2, 5, 12, 30, 75] as const;
/** Straight ways are looked along at so many places. */
const LOOKS = 64;
const STARTS_TRIED = 4;
const LIFT_STEP_MM = 10;
const HIGHEST_LIFT_MM = 500;
/** Of all directions the first are square to the opening. */
const SQUARE_WAYS = 2;

/** The place itself and where short legs lead to, roomiest first. */
export function startsFrom(setting: LeavingSetting, finalDistanceMm: number): readonly Start[] {
  const { input, scene, layer, pieces, atPlaceMm } = setting;
  const { final } = input;
  const moved = directionsOf(input).flatMap((direction) =>
    FIRST_LEGS_MM.flatMap((lengthMm): Start[] => {
      const to = shifted(final, direction, lengthMm);
      if (!isStraightLegFree(scene, layer, pieces, final, to, atPlaceMm)) return [];
      return [{ legs: [final, to], distanceMm: distanceToWalls(scene, layer, pieces, to) }];
    }),
  );
  const roomier = moved.filter(({ distanceMm }) => distanceMm > finalDistanceMm + 0.5);
  const place: Start = { legs: [final], distanceMm: finalDistanceMm };
  return [...roomier.sort((a, b) => b.distanceMm - a.distanceMm).slice(0, STARTS_TRIED), place];
}

/** A straight way out of one of the starts; null where none of those tried is free. */
export function straightWayOut(setting: LeavingSetting, starts: readonly Start[]): readonly Pose[] | null {
  const everyWay = directionsOf(setting.input);
  return (
    straightFrom(setting, starts, everyWay) ??
    straightFrom(setting, liftedStarts(setting), everyWay.slice(0, SQUARE_WAYS))
  );
}

/** Lifted over a sill, or lowered under a lip, as one would do by hand. */
function liftedStarts({
  input,
  scene,
  layer,
  pieces,
  atPlaceMm,
  movingMm,
}: LeavingSetting): readonly Start[] {
  const { opening, final } = input;
  const across = unit(minus(opening.to, opening.from));
  const starts: Start[] = [];
  for (const sense of [1, -1]) {
    for (let mm = LIFT_STEP_MM; mm <= HIGHEST_LIFT_MM; mm += LIFT_STEP_MM) {
      const to = shifted(final, across, sense * mm);
      if (!isStraightLegFree(scene, layer, pieces, final, to, atPlaceMm)) break;
      const distanceMm = distanceToWalls(scene, layer, pieces, to);
      if (distanceMm >= movingMm) starts.push({ legs: [final, to], distanceMm });
    }
  }
  return starts;
}

function straightFrom(
  setting: LeavingSetting,
  starts: readonly Start[],
  ways: readonly { xMm: number; yMm: number }[],
): readonly Pose[] | null {
  const { input, scene, layer, pieces, body, movingMm, atPlaceMm } = setting;
  const longest = 2 * lengthAcross(input);
  for (const { legs } of starts) {
    const from = legs.at(-1) ?? input.final;
    const clearanceMm = legs.length === 1 ? atPlaceMm : movingMm;
    if (legs.length === 1 && atPlaceMm < movingMm) continue; // the whole way has to keep the moving clearance
    for (const direction of ways) {
      const length = firstOutside(scene, body, from, direction, longest);
      if (length === null) continue;
      const to = shifted(from, direction, length);
      if (isStraightLegFree(scene, layer, pieces, from, to, clearanceMm)) return [...legs, to];
    }
  }
  return null;
}

function firstOutside(
  scene: FlatScene,
  body: FlatBody,
  from: Pose,
  direction: { xMm: number; yMm: number },
  longestMm: number,
): number | null {
  for (let look = 1; look <= LOOKS; look++) {
    const length = (longestMm * look) / LOOKS;
    const state = outsideState(scene, body, placeOf(body, shifted(from, direction, length), 0));
    if (state === CENTRE_OUTSIDE) return length;
  }
  return null;
}

/** Square to the opening first, then along walls, then all round. */
function directionsOf({ opening, space }: DryFitCase): readonly { xMm: number; yMm: number }[] {
  const jaws = unit(minus(opening.to, opening.from));
  const square = [
    { xMm: jaws.yMm, yMm: -jaws.xMm },
    { xMm: -jaws.yMm, yMm: jaws.xMm },
  ];
  const along = edgesOf(space).map(({ from, to }) => unit(minus(to, from)));
  const even = Array.from({ length: EVEN_DIRECTIONS }, (_, i) => {
    const angle = (2 * Math.PI * i) / EVEN_DIRECTIONS;
    return { xMm: Math.cos(angle), yMm: Math.sin(angle) };
  });
  return [...square, ...along, ...along.map(({ xMm, yMm }) => ({ xMm: -xMm, yMm: -yMm })), ...even];
}

function shifted(pose: Pose, direction: { xMm: number; yMm: number }, mm: number): Pose {
  return { ...pose, xMm: pose.xMm + direction.xMm * mm, yMm: pose.yMm + direction.yMm * mm };
}

function lengthAcross({ space }: DryFitCase): number {
  const [xs, ys] = [space.map(({ xMm }) => xMm), space.map(({ yMm }) => yMm)];
  return Math.hypot(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
}

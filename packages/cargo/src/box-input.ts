// The door for a box: a profile with an inside, a width, a definite pose.
import type { PolygonMm, Pose } from '@gusset/contracts/geometry';
import { type Refusal, refuse } from '@gusset/units';
import { signedAreaMm2 } from './plane/polygon.ts';
import { crossingEdges } from './plane/simple.ts';

/** Largest size of anything that is carried into a car, mm. */
const LARGEST_MM = 20_000;
/** Less than this is no box, mm². */
const LEAST_AREA_MM2 = 1;

/** Null when profile and width can be a box; else what is wrong with them. */
export function boxRefusal(profile: PolygonMm, widthMm: number): Refusal | null {
  const coordinates = profile.flatMap((corner) => [corner.xMm, corner.yMm]);
  const wild = coordinates.find((it) => !(Math.abs(it) <= LARGEST_MM));
  if (wild !== undefined) {
    return refuse('profile', {
      allowed: `within ±${LARGEST_MM} mm`,
      got: wild,
      why: 'a corner of the box has no place',
    });
  }
  if (profile.length < 3 || Math.abs(signedAreaMm2(profile)) < LEAST_AREA_MM2) {
    return refuse('profile', {
      allowed: 'corners going round an inside',
      got: profile.length,
      why: 'the box has no inside',
    });
  }
  if (crossingEdges(profile) !== null) {
    return refuse('profile', {
      allowed: 'edges that do not cross',
      got: profile.length,
      why: 'the outline of the box crosses itself',
    });
  }
  if (!(widthMm > 0 && widthMm <= LARGEST_MM)) {
    return refuse('widthMm', {
      allowed: `above 0 to ${LARGEST_MM} mm`,
      got: widthMm,
      why: 'the box has no width',
    });
  }
  return null;
}

export function poseRefusal(pose: Pose): Refusal | null {
  for (const [field, value] of Object.entries(pose)) {
    if (!(Math.abs(value) <= LARGEST_MM)) {
      return refuse(`pose.${field}`, {
        allowed: 'a definite place',
        got: value,
        why: 'the box stands nowhere',
      });
    }
  }
  return null;
}

/** Wanted clearances and gaps: 0 or more, and definite. */
export function distanceRefusal(distances: Readonly<Record<string, number>>): Refusal | null {
  for (const [field, value] of Object.entries(distances)) {
    if (!(value >= 0 && value <= LARGEST_MM)) {
      return refuse(field, { allowed: `0 to ${LARGEST_MM} mm`, got: value, why: 'a distance is 0 or more' });
    }
  }
  return null;
}

// Whether a motion keeps its clearance, checked by other means than it was found with: conservative advancement with
// plain distances between outlines. Between two poses x, y, theta and z run evenly and together.
import type { DryFitCase } from '@gusset/contracts/dryfit';
import type { PolygonMm, Pose } from '@gusset/contracts/geometry';
import { closestBetweenOutlines } from '../plane/distance.ts';
import { edgesOf } from '../plane/edges.ts';
import { convexHull } from '../plane/hull.ts';
import { CONTACT_SLACK_MM, insidesOverlap, meetsInside } from '../plane/overlap.ts';
import { holds, insidePoint, posed } from '../plane/polygon.ts';

export type CheckedMotion = {
  readonly holds: boolean;
  /** Least distance that is sure along the motion, mm, up to where the check gave up; touching counts as 0. */
  readonly leastMm: number;
  /** The leg on which the distance was least, or on which the check gave up. */
  readonly leg: number;
};

export type CheckedLeg = Omit<CheckedMotion, 'leg'>;

/** Nearer than this to the clearance nothing is advanced: the motion is then not shown to hold. */
const FLOOR_MM = 1e-3;
/** Share of the spare distance that is advanced at once. */
const STEP_SHARE = 0.9;

type Solids = { readonly space: PolygonMm; readonly obstacles: readonly PolygonMm[] };

/**
 * `clearanceMm` holds for every leg but the first, on which a body leaves its place: that may be closer than the way
 * out, so what was asked for there is enough.
 */
export function checkMotion(input: DryFitCase, path: readonly Pose[], clearanceMm: number): CheckedMotion {
  const atPlace = Math.min(clearanceMm, input.clearance.finalMm);
  let worst: CheckedMotion = { holds: path.length > 0, leastMm: Number.POSITIVE_INFINITY, leg: 0 };
  for (const [leg, from] of path.entries()) {
    const to = path[leg + 1];
    if (to === undefined) break;
    const { holds: leaves, leastMm } = checkLeg(input, from, to, leg === 0 ? atPlace : clearanceMm);
    if (!leaves) return { holds: false, leastMm, leg };
    if (leastMm < worst.leastMm) worst = { holds: true, leastMm, leg };
  }
  return worst;
}

export function checkLeg(input: DryFitCase, from: Pose, to: Pose, clearanceMm: number): CheckedLeg {
  const solids = solidsAbreast(input, from, to, clearanceMm);
  if (solids === null) return { holds: false, leastMm: 0 };
  const { profile } = input.body;
  return from.thetaRad === to.thetaRad
    ? checkSlide(profile, solids, from, to, clearanceMm)
    : checkTurn(profile, solids, from, to, clearanceMm);
}

function checkTurn(
  profile: PolygonMm,
  solids: Solids,
  from: Pose,
  to: Pose,
  clearanceMm: number,
): CheckedLeg {
  const radius = Math.max(...profile.map(({ xMm, yMm }) => Math.hypot(xMm, yMm)));
  const travel =
    Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm) + radius * Math.abs(to.thetaRad - from.thetaRad);
  let share = 0;
  let distance = distanceFrom(posed(profile, from), solids);
  let leastMm = distance;
  while (distance - clearanceMm >= FLOOR_MM) {
    if (share >= 1) return { holds: true, leastMm };
    const next = Math.min(1, share + (STEP_SHARE * (distance - clearanceMm)) / travel);
    const after = distanceFrom(posed(profile, between(from, to, next)), solids);
    // Nowhere between the two can it be less than half of both less the way between them.
    leastMm = Math.min(leastMm, after, (distance + after - (next - share) * travel) / 2);
    [share, distance] = [next, after];
  }
  return { holds: false, leastMm: Math.min(leastMm, distance) };
}

/** Without turning: what each edge sweeps is looked at as a whole, so that touching may last. */
function checkSlide(
  profile: PolygonMm,
  solids: Solids,
  from: Pose,
  to: Pose,
  clearanceMm: number,
): CheckedLeg {
  const [first, last] = [posed(profile, from), posed(profile, to)];
  let leastMm = Math.min(distanceFrom(first, solids), distanceFrom(last, solids));
  const [ends, moved] = [edgesOf(first), edgesOf(last)];
  for (const [i, edge] of ends.entries()) {
    const after = moved[i] ?? edge;
    const swept = convexHull([edge.from, edge.to, after.from, after.to]);
    if (swept.length < 3) continue;
    for (const solid of [solids.space, ...solids.obstacles]) {
      if (edgesOf(solid).some((wall) => meetsInside(swept, wall))) return { holds: false, leastMm: 0 };
      leastMm = Math.min(leastMm, closestBetweenOutlines(swept, solid).distanceMm);
    }
  }
  return { holds: leastMm >= clearanceMm - CONTACT_SLACK_MM, leastMm: Math.max(leastMm, 0) };
}

/** Distance from a body in its place to anything solid, mm; below 0 (by no measure) where they overlap. */
export function distanceFrom(body: PolygonMm, { space, obstacles }: Solids): number {
  const within = insidePoint(body);
  if (within === null || !holds(space, within)) return -1;
  if (edgesOf(space).some((wall) => meetsInside(body, wall))) return -1;
  if (obstacles.some((solid) => insidesOverlap(body, solid))) return -1;
  return Math.min(...[space, ...obstacles].map((solid) => closestBetweenOutlines(body, solid).distanceMm));
}

/** What stands abreast of the body at any sideways place of the leg; null where a side wall is too near. */
export function solidsAbreast(
  { space, obstacles, zRange, body }: DryFitCase,
  from: Pose,
  to: Pose,
  clearanceMm: number,
): Solids | null {
  const width = body.widthMm;
  if (width === null) return { space, obstacles: obstacles.map(({ polygon }) => polygon) };
  const [low, high] = [Math.min(from.zMm, to.zMm), Math.max(from.zMm, to.zMm) + width];
  if (zRange !== null) {
    const spare = Math.min(low - zRange.minMm, zRange.maxMm - high);
    if (spare < clearanceMm - CONTACT_SLACK_MM) return null;
  }
  const near = obstacles.filter(
    ({ z }) =>
      z === null ||
      (high + clearanceMm > z.minMm + CONTACT_SLACK_MM && low - clearanceMm < z.maxMm - CONTACT_SLACK_MM),
  );
  return { space, obstacles: near.map(({ polygon }) => polygon) };
}

/** The pose a share of the way along a leg. */
export function between(from: Pose, to: Pose, share: number): Pose {
  const mix = (a: number, b: number) => a + (b - a) * share;
  return {
    xMm: mix(from.xMm, to.xMm),
    yMm: mix(from.yMm, to.yMm),
    thetaRad: mix(from.thetaRad, to.thetaRad),
    zMm: mix(from.zMm, to.zMm),
  };
}

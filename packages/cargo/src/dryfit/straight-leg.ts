// A leg without turning, decided exactly: what a convex piece sweeps on a straight way is the hull of its two ends, and
// the body is the union of its pieces. Touching is allowed, so a box may slide along a floor and out of a snug place.
import type { PolygonMm, Pose } from '@gusset/contracts/geometry';
import { convexHull } from '../plane/hull.ts';
import { posed } from '../plane/polygon.ts';
import { liesDeeper, outlineDistanceSquared } from './body-wall.ts';
import { convexCover } from './convex-cover.ts';
import { type FlatBody, halfPlanes } from './flat-body.ts';
import { type FlatScene, flatPolygon } from './flat-scene.ts';

/** What rounding may make of touching, mm. */
const TOUCH_MM = 1e-6;

/** Pieces of a profile, kept for many legs. */
export function legPieces(profile: PolygonMm): readonly PolygonMm[] {
  return convexCover(profile);
}

/** Whether the body keeps `clearanceMm` on the whole way, given that it does so at `from`. */
export function isStraightLegFree(
  scene: FlatScene,
  layer: number,
  pieces: readonly PolygonMm[],
  from: Pose,
  to: Pose,
  clearanceMm: number,
): boolean {
  const walls = scene.layers[layer]?.walls ?? new Int32Array(0);
  return pieces.every((piece) => {
    const swept = sweptBody([...posed(piece, from), ...posed(piece, to)]);
    return walls.every((wall) => keepsOff(scene, swept, wall, clearanceMm));
  });
}

/** Distance from the body to the nearest wall of the layer; 0 where one reaches into it. */
export function distanceToWalls(
  scene: FlatScene,
  layer: number,
  pieces: readonly PolygonMm[],
  pose: Pose,
): number {
  const walls = scene.layers[layer]?.walls ?? new Int32Array(0);
  let least = Number.POSITIVE_INFINITY;
  for (const piece of pieces) {
    const still = sweptBody(posed(piece, pose));
    for (const wall of walls) {
      const [ax, ay, bx, by] = endsOf(scene, wall);
      if (liesDeeper(still, TOUCH_MM, ax, ay, bx, by)) return 0;
      least = Math.min(least, outlineDistanceSquared(still, ax, ay, bx, by));
    }
  }
  return Math.sqrt(least);
}

function keepsOff(scene: FlatScene, swept: FlatBody, wall: number, clearanceMm: number): boolean {
  const [ax, ay, bx, by] = endsOf(scene, wall);
  if (liesDeeper(swept, TOUCH_MM, ax, ay, bx, by)) return false;
  return clearanceMm === 0 || outlineDistanceSquared(swept, ax, ay, bx, by) >= (clearanceMm - TOUCH_MM) ** 2;
}

function endsOf({ walls }: FlatScene, wall: number): readonly [number, number, number, number] {
  const at = wall * 4;
  return [walls[at] as number, walls[at + 1] as number, walls[at + 2] as number, walls[at + 3] as number];
}

/** The hull as a body of one piece, in place. */
function sweptBody(points: PolygonMm): FlatBody {
  const hull = convexHull(points);
  return {
    centre: { xMm: 0, yMm: 0 },
    radiusMm: 0,
    outline: flatPolygon(hull),
    planes: Float64Array.from(halfPlanes(hull)),
    pieceStarts: Int32Array.from([0, hull.length]),
    inner: hull[0] ?? { xMm: 0, yMm: 0 },
  };
}

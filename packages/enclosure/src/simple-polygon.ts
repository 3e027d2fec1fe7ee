// Polygons of the side view that may have hollow corners: how near things come to their sides.
import type { PointMm } from '@gusset/contracts/geometry';
import { cross, distanceAlong, moved } from './plane.ts';
import { ringAt } from './ring.ts';

/** Smallest distance from a point to the sides of any simple polygon counter-clockwise round; negative outside. */
export function roomInRing(polygon: readonly PointMm[], point: PointMm): number {
  let nearestMm = Number.POSITIVE_INFINITY;
  let isInside = false;
  for (const [index, corner] of polygon.entries()) {
    const next = ringAt(polygon, index + 1);
    nearestMm = Math.min(nearestMm, distanceToSide(corner, next, point));
    const straddles = corner.yMm > point.yMm !== next.yMm > point.yMm;
    if (!straddles) continue;
    const share = (point.yMm - corner.yMm) / (next.yMm - corner.yMm);
    if (point.xMm < corner.xMm + share * (next.xMm - corner.xMm)) isInside = !isInside;
  }
  return isInside ? nearestMm : -nearestMm;
}

function distanceToSide(from: PointMm, to: PointMm, point: PointMm): number {
  const side = { x: to.xMm - from.xMm, y: to.yMm - from.yMm };
  const squared = side.x ** 2 + side.y ** 2;
  const share = squared === 0 ? 0 : distanceAlong(from, point, side) / squared;
  const nearest = moved(from, side, Math.min(1, Math.max(0, share)));
  return Math.hypot(point.xMm - nearest.xMm, point.yMm - nearest.yMm);
}

const sideOf = (from: PointMm, to: PointMm, point: PointMm) =>
  cross({ x: to.xMm - from.xMm, y: to.yMm - from.yMm }, { x: point.xMm - from.xMm, y: point.yMm - from.yMm });

/** Distance between two stretches; 0 where they cross. */
function apartMm(a: PointMm, b: PointMm, c: PointMm, d: PointMm): number {
  const crosses = sideOf(a, b, c) * sideOf(a, b, d) < 0 && sideOf(c, d, a) * sideOf(c, d, b) < 0;
  return crosses
    ? 0
    : Math.min(
        distanceToSide(a, b, c),
        distanceToSide(a, b, d),
        distanceToSide(c, d, a),
        distanceToSide(c, d, b),
      );
}

/** The two sides of a polygon that come nearest to each other without sharing a corner; null for a triangle. */
export function narrowestPair(
  polygon: readonly PointMm[],
): { readonly first: number; readonly second: number; readonly roomMm: number } | null {
  const count = polygon.length;
  let narrowest: { first: number; second: number; roomMm: number } | null = null;
  for (let first = 0; first < count; first++) {
    for (let second = first + 2; second < count; second++) {
      if (first === 0 && second === count - 1) continue;
      const roomMm = apartMm(
        ringAt(polygon, first),
        ringAt(polygon, first + 1),
        ringAt(polygon, second),
        ringAt(polygon, second + 1),
      );
      if (narrowest === null || roomMm < narrowest.roomMm) narrowest = { first, second, roomMm };
    }
  }
  return narrowest;
}

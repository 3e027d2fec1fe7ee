// Whether shapes overlap, and how deep.
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';
import { closestOnSegment } from './distance.ts';
import { edgesOf, type Segment } from './edges.ts';
import { convexHull } from './hull.ts';
import { clippedTo, holds, insidePoint } from './polygon.ts';
import { cross, dot, lengthOf, minus, outwardNormal, plus, unit } from './vector.ts';

/** Contact less deep than this is touching, mm: rounding of coordinates, far under any reading. */
export const CONTACT_SLACK_MM = 1e-6;

/** Inside, and not merely on the outline. */
export function strictlyHolds(polygon: PolygonMm, at: PointMm): boolean {
  if (!holds(polygon, at)) return false;
  return edgesOf(polygon).every((edge) => lengthOf(minus(at, closestOnSegment(edge, at))) > CONTACT_SLACK_MM);
}

/** Inside or on the outline. */
export function looselyHolds(polygon: PolygonMm, at: PointMm): boolean {
  if (holds(polygon, at)) return true;
  return edgesOf(polygon).some((edge) => lengthOf(minus(at, closestOnSegment(edge, at))) <= CONTACT_SLACK_MM);
}

/** Shares along `segment` where it meets the edges of the polygon, ends included, ascending. */
function meetingShares(polygon: PolygonMm, segment: Segment): number[] {
  const along = minus(segment.to, segment.from);
  const lengthSquared = dot(along, along);
  const shares = [0, 1];
  for (const edge of edgesOf(polygon)) {
    const alongEdge = minus(edge.to, edge.from);
    const area = cross(along, alongEdge);
    const between = minus(edge.from, segment.from);
    if (area !== 0) shares.push(cross(between, alongEdge) / area);
    else if (lengthSquared > 0) shares.push(dot(between, along) / lengthSquared);
  }
  return shares.filter((share) => share >= 0 && share <= 1).sort((a, b) => a - b);
}

/** Some part of the segment runs through the inside of the polygon. */
export function meetsInside(polygon: PolygonMm, segment: Segment): boolean {
  const along = minus(segment.to, segment.from);
  const shares = meetingShares(polygon, segment);
  return shares.some((share, index) => {
    const next = shares[index + 1];
    return next !== undefined && strictlyHolds(polygon, plus(segment.from, along, (share + next) / 2));
  });
}

/**
 * The insides share a point. Where no edge of either runs through the other, they are apart or one and the same,
 * which one inside point decides.
 */
export function insidesOverlap(first: PolygonMm, second: PolygonMm): boolean {
  if (edgesOf(second).some((edge) => meetsInside(first, edge))) return true;
  if (edgesOf(first).some((edge) => meetsInside(second, edge))) return true;
  const within = insidePoint(first);
  return within !== null && strictlyHolds(second, within);
}

export type Depth = { readonly depthMm: number; readonly a: PointMm; readonly b: PointMm };

/**
 * How far the wall would have to move outward, square to itself, to let the body go: the deepest point of the body
 * beyond the wall's line, looked for only abreast of the wall. `a` is that point, `b` its foot on the wall.
 */
export function depthBeyondWall(body: PolygonMm, wall: Segment): Depth {
  const outward = outwardNormal(wall.from, wall.to);
  const along = unit(minus(wall.to, wall.from));
  const back = { xMm: -along.xMm, yMm: -along.yMm };
  const abreast = clippedTo(clippedTo(body, wall.from, back), wall.to, along);
  let best: Depth = { depthMm: 0, a: wall.from, b: wall.from };
  for (const at of abreast) {
    const depthMm = dot(minus(at, wall.from), outward);
    if (depthMm > best.depthMm) best = { depthMm, a: at, b: plus(at, outward, -depthMm) };
  }
  return best;
}

/**
 * Least shift that takes two overlapping shapes apart: exact for convex shapes (separating directions are edge
 * normals); of notched shapes the hulls are taken apart, so the depth is then an upper bound.
 */
export function overlapDepth(body: PolygonMm, solid: PolygonMm): Depth {
  const bodyHull = convexHull(body);
  const solidHull = convexHull(solid);
  const normals = [
    ...edgesOf(solidHull).map(({ from, to }) => outwardNormal(from, to)),
    ...edgesOf(bodyHull).map(({ from, to }) => outwardNormal(to, from)),
  ];
  let best: Depth = { depthMm: Number.POSITIVE_INFINITY, a: body[0] ?? ORIGIN, b: body[0] ?? ORIGIN };
  for (const normal of normals) {
    const solidReach = Math.max(...solidHull.map((it) => dot(it, normal)));
    const at = lowestAlong(bodyHull, normal);
    const depthMm = solidReach - dot(at, normal);
    if (depthMm < best.depthMm) best = { depthMm, a: at, b: plus(at, normal, depthMm) };
  }
  return best;
}

const ORIGIN: PointMm = { xMm: 0, yMm: 0 };

function lowestAlong(points: readonly PointMm[], direction: PointMm): PointMm {
  return points.reduce((best, next) => (dot(next, direction) < dot(best, direction) ? next : best));
}

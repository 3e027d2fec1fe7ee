// Convex pieces that together are a polygon, overlapping on purpose: each hollow corner is cut along one of its edges
// and once more along the other. With a plain partition a thin tip hides along the cut between two pieces, both of
// which vanish when they are eroded, and "does not go in" can't be proved.
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';
import { signedAreaMm2 } from '../plane/polygon.ts';
import { cross, minus } from '../plane/vector.ts';

/** Both cuts of so many hollow corners are tried; profiles with more are cut along one edge from there on. */
const CORNERS_CUT_BOTH_WAYS = 4;
const LEAST_PIECE_MM2 = 1e-6;

/** `polygon`: simple, counter-clockwise. Every point of it is in a piece and every piece is in it. */
export function convexCover(polygon: PolygonMm): readonly PolygonMm[] {
  const found: PolygonMm[] = [];
  collect(withoutStraightCorners(polygon), 0, found);
  return found.filter((piece, i) => !found.some((other, j) => hides(other, piece, j < i)));
}

function collect(polygon: PolygonMm, depth: number, found: PolygonMm[]): void {
  if (polygon.length < 3 || signedAreaMm2(polygon) < LEAST_PIECE_MM2) return;
  const hollow = polygon.findIndex((_, i) => turnAt(polygon, i) < 0);
  if (hollow < 0) {
    found.push(polygon);
    return;
  }
  const cuts = depth < CORNERS_CUT_BOTH_WAYS ? [true, false] : [true];
  for (const alongIncoming of cuts)
    for (const part of cut(polygon, hollow, alongIncoming))
      collect(withoutStraightCorners(part), depth + 1, found);
}

/** Splits at corner `at` along the line of its incoming (or outgoing) edge, to the first wall that the line meets. */
function cut(polygon: PolygonMm, at: number, alongIncoming: boolean): readonly PolygonMm[] {
  const n = polygon.length;
  const corner = cornerOf(polygon, at);
  const away = alongIncoming
    ? minus(corner, cornerOf(polygon, at - 1))
    : minus(corner, cornerOf(polygon, at + 1));
  let hit: { readonly edge: number; readonly along: number } | null = null;
  for (let edge = 0; edge < n; edge++) {
    if (edge === at || edge === (at - 1 + n) % n) continue;
    const along = meets(corner, away, cornerOf(polygon, edge), cornerOf(polygon, edge + 1));
    if (along !== null && (hit === null || along < hit.along)) hit = { edge, along };
  }
  if (hit === null) return [];
  const point = { xMm: corner.xMm + away.xMm * hit.along, yMm: corner.yMm + away.yMm * hit.along };
  return [
    [...walk(polygon, at, hit.edge), point],
    [point, ...walk(polygon, hit.edge + 1, at)],
  ];
}

/** Corners from `from` to `to`, both included, in the polygon's own sense. */
function walk(polygon: PolygonMm, from: number, to: number): PointMm[] {
  const n = polygon.length;
  const count = ((to - from + n) % n) + 1;
  return Array.from({ length: count }, (_, i) => cornerOf(polygon, from + i));
}

/** How far along `away` the ray from `from` meets the edge, in units of `away`; null where it doesn't. */
function meets(from: PointMm, away: PointMm, a: PointMm, b: PointMm): number | null {
  const edge = minus(b, a);
  const facing = cross(away, edge);
  if (Math.abs(facing) < 1e-12) return null;
  const toEdge = minus(a, from);
  const along = cross(toEdge, edge) / facing;
  const onEdge = cross(toEdge, away) / facing;
  return along > 1e-9 && onEdge >= -1e-9 && onEdge <= 1 + 1e-9 ? along : null;
}

function withoutStraightCorners(polygon: PolygonMm): PolygonMm {
  const apart = polygon.filter((corner, i) => {
    const next = cornerOf(polygon, i + 1);
    return Math.hypot(next.xMm - corner.xMm, next.yMm - corner.yMm) > 1e-9;
  });
  return apart.filter((_, i) => Math.abs(turnAt(apart, i)) > 1e-9);
}

/** Above 0 where the outline turns left (bulges), below 0 where it is hollow; relative to the edges' lengths. */
function turnAt(polygon: PolygonMm, i: number): number {
  const incoming = minus(cornerOf(polygon, i), cornerOf(polygon, i - 1));
  const outgoing = minus(cornerOf(polygon, i + 1), cornerOf(polygon, i));
  const lengths = Math.hypot(incoming.xMm, incoming.yMm) * Math.hypot(outgoing.xMm, outgoing.yMm);
  return lengths === 0 ? 0 : cross(incoming, outgoing) / lengths;
}

function cornerOf(polygon: PolygonMm, i: number): PointMm {
  const n = polygon.length;
  const corner = polygon[((i % n) + n) % n];
  if (corner === undefined) throw new Error('a polygon has corners');
  return corner;
}

/** `inner` adds nothing to `outer`; of two alike the earlier stays. */
function hides(outer: PolygonMm, inner: PolygonMm, outerIsEarlier: boolean): boolean {
  if (outer === inner) return false;
  const holdsAll = (a: PolygonMm, b: PolygonMm) =>
    b.every((p) => a.every((from, i) => cross(minus(cornerOf(a, i + 1), from), minus(p, from)) >= -1e-6));
  if (!holdsAll(outer, inner)) return false;
  return outerIsEarlier || !holdsAll(inner, outer);
}

// Exact least distances between segments and polygon outlines, with the two points where they are reached.
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';
import { edgesOf, type Segment } from './edges.ts';
import { cross, dot, lengthOf, minus, plus } from './vector.ts';

export type Closest = { readonly distanceMm: number; readonly a: PointMm; readonly b: PointMm };

export function closestOnSegment(segment: Segment, to: PointMm): PointMm {
  const along = minus(segment.to, segment.from);
  const lengthSquared = dot(along, along);
  if (lengthSquared === 0) return segment.from;
  const share = dot(minus(to, segment.from), along) / lengthSquared;
  return plus(segment.from, along, Math.min(1, Math.max(0, share)));
}

/** Two segments are nearest at an end of one of them, unless they cross. */
export function closestBetweenSegments(a: Segment, b: Segment): Closest {
  const meeting = crossingPoint(a, b);
  if (meeting !== null) return { distanceMm: 0, a: meeting, b: meeting };
  const pairs: readonly (readonly [PointMm, PointMm])[] = [
    [a.from, closestOnSegment(b, a.from)],
    [a.to, closestOnSegment(b, a.to)],
    [closestOnSegment(a, b.from), b.from],
    [closestOnSegment(a, b.to), b.to],
  ];
  let best: Closest = { distanceMm: Number.POSITIVE_INFINITY, a: a.from, b: b.from };
  for (const [onA, onB] of pairs) {
    const distanceMm = lengthOf(minus(onA, onB));
    if (distanceMm < best.distanceMm) best = { distanceMm, a: onA, b: onB };
  }
  return best;
}

/** Sine of an angle below which two directions are the same but for rounding: their lines cross anywhere. */
const SAME_WAY = 1e-12;

/** Where two segments properly cross; null where they only touch, run together or miss. */
export function crossingPoint(a: Segment, b: Segment): PointMm | null {
  const alongA = minus(a.to, a.from);
  const alongB = minus(b.to, b.from);
  const area = cross(alongA, alongB);
  if (Math.abs(area) <= SAME_WAY * lengthOf(alongA) * lengthOf(alongB)) return null;
  const between = minus(b.from, a.from);
  const shareA = cross(between, alongB) / area;
  const shareB = cross(between, alongA) / area;
  if (shareA < 0 || shareA > 1 || shareB < 0 || shareB > 1) return null;
  return plus(a.from, alongA, shareA);
}

/** Least distance between the outline of `polygon` and a segment. `a` lies on the polygon. */
export function closestToOutline(polygon: PolygonMm, segment: Segment): Closest {
  return edgesOf(polygon)
    .map((edge) => closestBetweenSegments(edge, segment))
    .reduce((best, next) => (next.distanceMm < best.distanceMm ? next : best));
}

/** Least distance between two outlines. `a` lies on the first. */
export function closestBetweenOutlines(first: PolygonMm, second: PolygonMm): Closest {
  return edgesOf(second)
    .map((segment) => closestToOutline(first, segment))
    .reduce((best, next) => (next.distanceMm < best.distanceMm ? next : best));
}

// Convex hull, extent along a direction, least caliper width.
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';
import { edgesOf } from './edges.ts';
import { cross, dot, lengthOf, minus, outwardNormal } from './vector.ts';

/** Counter-clockwise, without corners on its edges (monotone chain). */
export function convexHull(points: readonly PointMm[]): PolygonMm {
  const sorted = [...points].sort((a, b) => a.xMm - b.xMm || a.yMm - b.yMm);
  const lower = chain(sorted);
  const upper = chain([...sorted].reverse());
  return [...lower.slice(0, -1), ...upper.slice(0, -1)];
}

function chain(sorted: readonly PointMm[]): PointMm[] {
  const kept: PointMm[] = [];
  for (const next of sorted) {
    for (;;) {
      const last = kept.at(-1);
      const before = kept.at(-2);
      if (last === undefined || before === undefined) break;
      if (cross(minus(last, before), minus(next, before)) > 0) break;
      kept.pop();
    }
    kept.push(next);
  }
  return kept;
}

/** Size of the points along a unit direction, mm. */
export function extentAlong(points: readonly PointMm[], direction: PointMm): number {
  const reach = points.map((it) => dot(it, direction));
  return Math.max(...reach) - Math.min(...reach);
}

export type CaliperWidth = { readonly widthMm: number; readonly direction: PointMm };

/**
 * Smallest gap between two parallel jaws that the shape passes without turning: one jaw lies along an edge of the
 * hull (G. Strang, "The width of a chair", Amer. Math. Monthly 89, 1982). `direction` is square to the jaws.
 */
export function leastCaliperWidth(profile: PolygonMm): CaliperWidth {
  const hull = convexHull(profile);
  let best: CaliperWidth = { widthMm: Number.POSITIVE_INFINITY, direction: { xMm: 0, yMm: 1 } };
  for (const { from, to } of edgesOf(hull)) {
    if (lengthOf(minus(to, from)) === 0) continue;
    const direction = outwardNormal(from, to);
    const widthMm = extentAlong(hull, direction);
    if (widthMm < best.widthMm) best = { widthMm, direction };
  }
  return best;
}

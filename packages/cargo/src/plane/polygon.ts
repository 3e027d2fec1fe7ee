// Polygons: turning sense, inside or outside, clipping by a half-plane, posing.
import type { PointMm, PolygonMm, Pose } from '@gusset/contracts/geometry';
import { edgesOf } from './edges.ts';
import { cross, dot, minus, plus, turned } from './vector.ts';

/** Positive for a counter-clockwise polygon, mm². */
export function signedAreaMm2(polygon: PolygonMm): number {
  return edgesOf(polygon).reduce((sum, { from, to }) => sum + cross(from, to), 0) / 2;
}

export function counterClockwise(polygon: PolygonMm): PolygonMm {
  return signedAreaMm2(polygon) < 0 ? [...polygon].reverse() : polygon;
}

/** Even-odd rule; a point on the boundary may answer either way. */
export function holds(polygon: PolygonMm, at: PointMm): boolean {
  let inside = false;
  for (const { from, to } of edgesOf(polygon)) {
    if (from.yMm > at.yMm === to.yMm > at.yMm) continue;
    const crossX = from.xMm + ((at.yMm - from.yMm) / (to.yMm - from.yMm)) * (to.xMm - from.xMm);
    if (at.xMm < crossX) inside = !inside;
  }
  return inside;
}

/** The part of the polygon where (p - origin) · normal <= 0. Notched polygons may keep zero-width bridges. */
export function clippedTo(polygon: PolygonMm, origin: PointMm, normal: PointMm): PolygonMm {
  const kept: PointMm[] = [];
  for (const { from, to } of edgesOf(polygon)) {
    const a = dot(minus(from, origin), normal);
    const b = dot(minus(to, origin), normal);
    if (a <= 0) kept.push(from);
    if ((a < 0 && b > 0) || (a > 0 && b < 0)) kept.push(plus(from, minus(to, from), a / (a - b)));
  }
  return kept;
}

/** Some point strictly inside a polygon with area; null for one without. */
export function insidePoint(polygon: PolygonMm): PointMm | null {
  const levels = [...new Set(polygon.map((corner) => corner.yMm))].sort((a, b) => a - b);
  let best: { readonly at: PointMm; readonly room: number } | null = null;
  for (const [index, level] of levels.entries()) {
    const next = levels[index + 1];
    if (next === undefined) break;
    const yMm = (level + next) / 2;
    const crossings = edgesOf(polygon)
      .filter(({ from, to }) => from.yMm > yMm !== to.yMm > yMm)
      .map(({ from, to }) => from.xMm + ((yMm - from.yMm) / (to.yMm - from.yMm)) * (to.xMm - from.xMm))
      .sort((a, b) => a - b);
    const [left, right] = crossings;
    if (left === undefined || right === undefined) continue;
    const room = Math.min(right - left, next - level);
    if (room > 0 && (best === null || room > best.room))
      best = { at: { xMm: (left + right) / 2, yMm }, room };
  }
  return best === null ? null : best.at;
}

export type Bounds = {
  readonly xMinMm: number;
  readonly xMaxMm: number;
  readonly yMinMm: number;
  readonly yMaxMm: number;
};

export function boundsOf(points: readonly PointMm[]): Bounds {
  return {
    xMinMm: Math.min(...points.map((it) => it.xMm)),
    xMaxMm: Math.max(...points.map((it) => it.xMm)),
    yMinMm: Math.min(...points.map((it) => it.yMm)),
    yMaxMm: Math.max(...points.map((it) => it.yMm)),
  };
}

export function rectangle({ xMinMm, xMaxMm, yMinMm, yMaxMm }: Bounds): PolygonMm {
  return [
    { xMm: xMinMm, yMm: yMinMm },
    { xMm: xMaxMm, yMm: yMinMm },
    { xMm: xMaxMm, yMm: yMaxMm },
    { xMm: xMinMm, yMm: yMaxMm },
  ];
}

/** The profile where it stands: (x, y) + rotation(theta) * local point. */
export function posed(profile: PolygonMm, pose: Pose): PolygonMm {
  return profile.map((corner) => plus(turned(corner, pose.thetaRad), pose));
}

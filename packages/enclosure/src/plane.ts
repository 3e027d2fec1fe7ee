// Points, lines and polygons of the side view (and of a panel's own face), millimetres.
import type { PointMm } from '@gusset/contracts/geometry';
import { ringAt } from './ring.ts';

/** A direction in the plane, length 1. */
export type Direction = { readonly x: number; readonly y: number };

/** `start` moved `distanceMm` along `direction`. */
export function moved(start: PointMm, direction: Direction, distanceMm: number): PointMm {
  return { xMm: start.xMm + direction.x * distanceMm, yMm: start.yMm + direction.y * distanceMm };
}

/** How far `point` lies from `origin`, counted along `direction`. */
export function distanceAlong(origin: PointMm, point: PointMm, direction: Direction): number {
  return (point.xMm - origin.xMm) * direction.x + (point.yMm - origin.yMm) * direction.y;
}

export function cross(a: Direction, b: Direction): number {
  return a.x * b.y - a.y * b.x;
}

/** Where two lines cross. They never run parallel here: neighbouring walls turn by at least `MIN_TURN_RAD`. */
export function meetOfLines(a: PointMm, alongA: Direction, b: PointMm, alongB: Direction): PointMm {
  const offset = { x: b.xMm - a.xMm, y: b.yMm - a.yMm };
  return moved(a, alongA, cross(offset, alongB) / cross(alongA, alongB));
}

/** Signed: positive for corners given counter-clockwise. */
export function polygonAreaMm2(polygon: readonly PointMm[]): number {
  return polygon.reduce((sum, corner, index) => {
    const next = ringAt(polygon, index + 1);
    return sum + (corner.xMm * next.yMm - next.xMm * corner.yMm) / 2;
  }, 0);
}

/** Centre of area of a polygon that has an area. */
export function polygonCentre(polygon: readonly PointMm[]): PointMm {
  let areaMm2 = 0;
  let xMoment = 0;
  let yMoment = 0;
  const base = ringAt(polygon, 0); // moments about a corner: small numbers, no loss for far-off polygons
  for (const [index, corner] of polygon.entries()) {
    const next = ringAt(polygon, index + 1);
    const ax = corner.xMm - base.xMm;
    const ay = corner.yMm - base.yMm;
    const bx = next.xMm - base.xMm;
    const by = next.yMm - base.yMm;
    const twice = ax * by - bx * ay;
    areaMm2 += twice / 2;
    xMoment += (twice * (ax + bx)) / 6;
    yMoment += (twice * (ay + by)) / 6;
  }
  return { xMm: base.xMm + xMoment / areaMm2, yMm: base.yMm + yMoment / areaMm2 };
}

export type Extent = {
  readonly xMinMm: number;
  readonly xMaxMm: number;
  readonly yMinMm: number;
  readonly yMaxMm: number;
};

export function polygonExtent(polygon: readonly PointMm[]): Extent {
  const xs = polygon.map((corner) => corner.xMm);
  const ys = polygon.map((corner) => corner.yMm);
  return {
    xMinMm: Math.min(...xs),
    xMaxMm: Math.max(...xs),
    yMinMm: Math.min(...ys),
    yMaxMm: Math.max(...ys),
  };
}

/** Smallest distance from a point to the sides of a convex counter-clockwise polygon; negative outside. */
export function roomInside(polygon: readonly PointMm[], point: PointMm): number {
  return Math.min(
    ...polygon.map((corner, index) => {
      const next = ringAt(polygon, index + 1);
      const x = next.xMm - corner.xMm;
      const y = next.yMm - corner.yMm;
      return (x * (point.yMm - corner.yMm) - y * (point.xMm - corner.xMm)) / Math.hypot(x, y);
    }),
  );
}

/** The part of a polygon that lies behind a line, seen along `direction` from `point`. Exact for convex polygons. */
export function clippedBelow(polygon: readonly PointMm[], point: PointMm, direction: Direction): PointMm[] {
  return polygon.flatMap((corner, index) => {
    const next = ringAt(polygon, index + 1);
    const here = distanceAlong(point, corner, direction);
    const there = distanceAlong(point, next, direction);
    const kept = here <= 0 ? [corner] : [];
    if (here * there >= 0) return kept;
    const share = here / (here - there);
    const step = { x: next.xMm - corner.xMm, y: next.yMm - corner.yMm };
    return [...kept, moved(corner, step, share)];
  });
}

/** Whether a polygon counter-clockwise round turns right anywhere. */
export function isHollow(polygon: readonly PointMm[]): boolean {
  return polygon.some((corner, index) => {
    const before = ringAt(polygon, index - 1);
    const after = ringAt(polygon, index + 1);
    const arriving = { x: corner.xMm - before.xMm, y: corner.yMm - before.yMm };
    const leaving = { x: after.xMm - corner.xMm, y: after.yMm - corner.yMm };
    return cross(arriving, leaving) < 0;
  });
}

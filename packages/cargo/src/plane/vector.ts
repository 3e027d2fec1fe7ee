// Points and directions in the section plane, mm.
import type { PointMm } from '@gusset/contracts/geometry';

export function point(xMm: number, yMm: number): PointMm {
  return { xMm, yMm };
}

export function plus(a: PointMm, b: PointMm, times = 1): PointMm {
  return { xMm: a.xMm + b.xMm * times, yMm: a.yMm + b.yMm * times };
}

/** The way from `b` to `a`. */
export function minus(a: PointMm, b: PointMm): PointMm {
  return { xMm: a.xMm - b.xMm, yMm: a.yMm - b.yMm };
}

export function dot(a: PointMm, b: PointMm): number {
  return a.xMm * b.xMm + a.yMm * b.yMm;
}

/** Positive where `b` turns counter-clockwise from `a`. */
export function cross(a: PointMm, b: PointMm): number {
  return a.xMm * b.yMm - a.yMm * b.xMm;
}

export function lengthOf(a: PointMm): number {
  return Math.hypot(a.xMm, a.yMm);
}

/** Unit vector; a zero vector stays zero. */
export function unit(a: PointMm): PointMm {
  const length = lengthOf(a);
  return length > 0 ? { xMm: a.xMm / length, yMm: a.yMm / length } : { xMm: 0, yMm: 0 };
}

/** Unit normal on the right-hand side of the way from `from` to `to`: outward, for a counter-clockwise polygon. */
export function outwardNormal(from: PointMm, to: PointMm): PointMm {
  const along = unit(minus(to, from));
  return { xMm: along.yMm, yMm: -along.xMm };
}

export function turned(a: PointMm, byRad: number): PointMm {
  const cos = Math.cos(byRad);
  const sin = Math.sin(byRad);
  return { xMm: a.xMm * cos - a.yMm * sin, yMm: a.xMm * sin + a.yMm * cos };
}

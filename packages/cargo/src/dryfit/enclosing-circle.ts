// Smallest circle round a set of points (Welzl 1991, in the iterative form of Skyum; few points, so the plain loops do).
import type { PointMm } from '@gusset/contracts/geometry';

export type Circle = { readonly centre: PointMm; readonly radiusMm: number };

const SLACK = 1 + 1e-12;

export function enclosingCircle(points: readonly PointMm[]): Circle {
  let circle: Circle = { centre: points[0] ?? { xMm: 0, yMm: 0 }, radiusMm: 0 };
  for (const [i, p] of points.entries()) {
    if (holds(circle, p)) continue;
    circle = { centre: p, radiusMm: 0 };
    for (const [j, q] of points.slice(0, i).entries()) {
      if (holds(circle, q)) continue;
      circle = across(p, q);
      for (const s of points.slice(0, j)) if (!holds(circle, s)) circle = through(p, q, s);
    }
  }
  return circle;
}

function holds({ centre, radiusMm }: Circle, p: PointMm): boolean {
  return Math.hypot(p.xMm - centre.xMm, p.yMm - centre.yMm) <= radiusMm * SLACK + 1e-9;
}

function across(p: PointMm, q: PointMm): Circle {
  const centre = { xMm: (p.xMm + q.xMm) / 2, yMm: (p.yMm + q.yMm) / 2 };
  return { centre, radiusMm: Math.hypot(p.xMm - q.xMm, p.yMm - q.yMm) / 2 };
}

/** Three points in a line have no circle: the two farthest apart then span it. */
function through(p: PointMm, q: PointMm, s: PointMm): Circle {
  const [bx, by, cx, cy] = [q.xMm - p.xMm, q.yMm - p.yMm, s.xMm - p.xMm, s.yMm - p.yMm];
  const twice = 2 * (bx * cy - by * cx);
  const spans = [across(p, q), across(p, s), across(q, s)].sort((a, b) => b.radiusMm - a.radiusMm);
  if (Math.abs(twice) < 1e-9) return spans[0] ?? across(p, q);
  const [b2, c2] = [bx * bx + by * by, cx * cx + cy * cy];
  const [ux, uy] = [(cy * b2 - by * c2) / twice, (bx * c2 - cx * b2) / twice];
  return { centre: { xMm: p.xMm + ux, yMm: p.yMm + uy }, radiusMm: Math.hypot(ux, uy) };
}

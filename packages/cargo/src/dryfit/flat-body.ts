// The body that moves, prepared for a hundred thousand questions: convex pieces as half-planes and the outline as
// numbers, both about the centre of its smallest enclosing circle, where turning moves it least.
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';
import { convexCover } from './convex-cover.ts';
import { enclosingCircle } from './enclosing-circle.ts';

export type FlatBody = {
  /** The circle's centre in the profile's own frame, mm. */
  readonly centre: PointMm;
  readonly radiusMm: number;
  /** Corners about the centre: x, y in turn, counter-clockwise. */
  readonly outline: Float64Array;
  /** Half-planes of all pieces: outward unit normal x, y and distance from the centre, in turn. */
  readonly planes: Float64Array;
  /** Where in `planes` (counted in half-planes) each piece begins, and after the last one ends. */
  readonly pieceStarts: Int32Array;
  /** A point well inside, about the centre. */
  readonly inner: PointMm;
};

/** `profile`: simple and counter-clockwise, mm. */
export function flatBody(profile: PolygonMm): FlatBody {
  const { centre, radiusMm } = enclosingCircle(profile);
  const about = profile.map((corner) => shifted(corner, centre));
  const pieces = convexCover(about);
  const planes: number[] = [];
  const pieceStarts = [0];
  for (const piece of pieces) {
    planes.push(...halfPlanes(piece));
    pieceStarts.push(planes.length / 3);
  }
  return {
    centre,
    radiusMm,
    outline: Float64Array.from(about.flatMap(({ xMm, yMm }) => [xMm, yMm])),
    planes: Float64Array.from(planes),
    pieceStarts: Int32Array.from(pieceStarts),
    inner: middleOf(pieces[0] ?? about),
  };
}

/** Outward unit normal and offset of each edge of a convex counter-clockwise polygon. */
export function halfPlanes(convex: PolygonMm): number[] {
  return convex.flatMap((from, i) => {
    const to = convex[(i + 1) % convex.length] ?? from;
    const length = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm);
    const [x, y] = [(to.yMm - from.yMm) / length, (from.xMm - to.xMm) / length];
    return [x, y, x * from.xMm + y * from.yMm];
  });
}

function shifted({ xMm, yMm }: PointMm, by: PointMm): PointMm {
  return { xMm: xMm - by.xMm, yMm: yMm - by.yMm };
}

function middleOf(corners: PolygonMm): PointMm {
  const sum = corners.reduce((a, b) => ({ xMm: a.xMm + b.xMm, yMm: a.yMm + b.yMm }));
  return { xMm: sum.xMm / corners.length, yMm: sum.yMm / corners.length };
}

// Points and directions of the box in space: x out of the vehicle, y up, z to the left.
import type { Vector } from '@gusset/contracts/enclosure';
import type { PointMm } from '@gusset/contracts/geometry';

/** A point of the side view, `zMm` from the centre line. */
export function inSpace(point: PointMm, zMm: number): Vector {
  return { x: point.xMm, y: point.yMm, z: zMm };
}

export function along(start: Vector, direction: Vector, distanceMm: number): Vector {
  return {
    x: start.x + direction.x * distanceMm,
    y: start.y + direction.y * distanceMm,
    z: start.z + direction.z * distanceMm,
  };
}

/** How far `point` lies from `origin`, counted along `direction`. */
export function reach(origin: Vector, point: Vector, direction: Vector): number {
  return (
    (point.x - origin.x) * direction.x +
    (point.y - origin.y) * direction.y +
    (point.z - origin.z) * direction.z
  );
}

/** A weight or a volume at a point. */
export type Weighted = { readonly amount: number; readonly at: Vector };

/** Common centre; null where nothing weighs anything. */
export function weightedCentre(parts: readonly Weighted[]): Vector | null {
  const total = parts.reduce((sum, part) => sum + part.amount, 0);
  if (total <= 0) return null;
  const mean = (axis: 'x' | 'y' | 'z') =>
    parts.reduce((sum, part) => sum + part.amount * part.at[axis], 0) / total;
  return { x: mean('x'), y: mean('y'), z: mean('z') };
}

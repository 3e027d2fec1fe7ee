// Outline of a rectangle with round corners as a ring of spots.
import { polar, type Spot, spot } from '../scene/spot.ts';

const STEPS_A_CORNER = 8; // chord off the arc by 0.5 % of the radius

export function roundedRectangle(
  centre: Spot,
  widthPt: number,
  heightPt: number,
  radiusPt: number,
): readonly Spot[] {
  const radius = Math.max(0, Math.min(radiusPt, widthPt / 2, heightPt / 2));
  const [halfX, halfY] = [widthPt / 2 - radius, heightPt / 2 - radius];
  const corners: readonly [number, number, number][] = [
    [1, 1, 0],
    [-1, 1, 1],
    [-1, -1, 2],
    [1, -1, 3],
  ];
  return corners.flatMap(([sideX, sideY, quarter]) => {
    const corner = spot(centre.x + sideX * halfX, centre.y + sideY * halfY);
    if (radius === 0) return [corner];
    return Array.from({ length: STEPS_A_CORNER + 1 }, (_, step) =>
      polar(corner, ((quarter + step / STEPS_A_CORNER) * Math.PI) / 2, radius),
    );
  });
}

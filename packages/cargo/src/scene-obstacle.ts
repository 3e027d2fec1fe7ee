// Prisms of a scene: grown where they may stand nearer, shrunk where they may stand farther away.
import type { DryFitObstacle } from '@gusset/contracts/dryfit';
import type { PolygonMm } from '@gusset/contracts/geometry';
import { convexHull } from './plane/hull.ts';
import { cornersAt, movedEdges } from './plane/offset.ts';
import { counterClockwise, signedAreaMm2 } from './plane/polygon.ts';
import { crossingEdges } from './plane/simple.ts';

/** An outline smaller than this stands in nobody's way, mm². */
const LEAST_AREA_MM2 = 1;

export type ScenePrism = {
  readonly name: string;
  readonly polygon: PolygonMm;
  /** Null = over the whole width. */
  readonly z: { readonly minMm: number; readonly maxMm: number } | null;
};

/** Larger by `byMm` all round and on both sides; below 0 smaller, and null where nothing is left of it. */
export function grownObstacle({ name, polygon, z }: ScenePrism, byMm: number): DryFitObstacle | null {
  const grown = grownOutline(counterClockwise(polygon), byMm);
  if (grown === null) return null;
  if (z === null) return { name, polygon: [...grown], z };
  const across = { minMm: z.minMm - byMm, maxMm: z.maxMm + byMm };
  return across.minMm < across.maxMm ? { name, polygon: [...grown], z: across } : null;
}

/** A notched outline that would cross itself when grown is grown on its hull: more in the way, never less. */
export function grownOutline(polygon: PolygonMm, byMm: number): PolygonMm | null {
  if (byMm === 0) return polygon;
  const own = properOutline(moved(polygon, byMm));
  if (own !== null || byMm < 0) return own;
  return properOutline(moved(convexHull(polygon), byMm));
}

/** Null where it crosses itself or encloses nothing. */
export function properOutline(polygon: PolygonMm | null): PolygonMm | null {
  if (polygon === null || polygon.length < 3 || signedAreaMm2(polygon) < LEAST_AREA_MM2) return null;
  return crossingEdges(polygon) === null ? polygon : null;
}

function moved(polygon: PolygonMm, byMm: number): PolygonMm | null {
  const joints = movedEdges(
    polygon,
    polygon.map(() => -byMm),
  );
  return joints === null ? null : cornersAt(joints);
}

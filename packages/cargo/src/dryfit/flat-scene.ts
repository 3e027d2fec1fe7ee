// Everything that stands still, prepared for the search: walls as numbers, and the ranges of sideways places in which the
// same obstacles are abreast of the body.
import type { DryFitCase } from '@gusset/contracts/dryfit';
import type { PolygonMm } from '@gusset/contracts/geometry';
import { edgesOf } from '../plane/edges.ts';

export type SceneLayer = {
  /** Sideways places of the body (z of its pose) for which this layer holds. */
  readonly zMinMm: number;
  readonly zMaxMm: number;
  /** Walls that count here, by their number. */
  readonly walls: Int32Array;
  /** Corners of each solid abreast: x, y in turn. */
  readonly solids: readonly Float64Array[];
};

export type FlatScene = {
  /** Ends of each wall: ax, ay, bx, by in turn. */
  readonly walls: Float64Array;
  /** What each wall is called in a report. */
  readonly wallNames: readonly string[];
  readonly layers: readonly SceneLayer[];
  readonly space: Float64Array;
  readonly outside: Float64Array;
  /** Ends of the opening: ax, ay, bx, by. */
  readonly opening: Float64Array;
};

/** `clearanceMm`: grows the body sideways, so that an obstacle it would pass too near counts as abreast. */
export function flatScene(input: DryFitCase, clearanceMm: number): FlatScene {
  const spaceEdges = edgesOf(input.space);
  const ends = spaceEdges.map(({ from, to }) => [from.xMm, from.yMm, to.xMm, to.yMm]);
  const wallNames = spaceEdges.map((_, i) => `edge ${i + 1}`);
  const obstacleWalls = input.obstacles.map(({ name, polygon }) =>
    edgesOf(polygon).map(({ from, to }) => {
      wallNames.push(name);
      return ends.push([from.xMm, from.yMm, to.xMm, to.yMm]) - 1;
    }),
  );
  const always = spaceEdges.map((_, i) => i);
  return {
    walls: Float64Array.from(ends.flat()),
    wallNames,
    space: flatPolygon(input.space),
    outside: flatPolygon(input.outside),
    opening: flatPolygon([input.opening.from, input.opening.to]),
    layers: sidewaysLayers(input, clearanceMm).map(({ zMinMm, zMaxMm, abreast }) => ({
      zMinMm,
      zMaxMm,
      walls: Int32Array.from([...always, ...abreast.flatMap((i) => obstacleWalls[i] ?? [])]),
      solids: abreast.map((i) => flatPolygon(input.obstacles[i]?.polygon ?? [])),
    })),
  };
}

type Layer = { readonly zMinMm: number; readonly zMaxMm: number; readonly abreast: readonly number[] };

/**
 * The set of obstacles abreast of a body changes only where one of its sides passes an obstacle's end. Without a width
 * everything is abreast.
 */
function sidewaysLayers({ obstacles, body, zRange }: DryFitCase, clearanceMm: number): readonly Layer[] {
  const all = obstacles.map((_, i) => i);
  const width = body.widthMm;
  if (width === null) return [{ zMinMm: -Infinity, zMaxMm: Infinity, abreast: all }];
  const zMin = (zRange?.minMm ?? -Infinity) + clearanceMm;
  const zMax = (zRange?.maxMm ?? Infinity) - clearanceMm - width;
  if (zMin > zMax) return [];
  const changes = obstacles.flatMap(({ z }) =>
    z === null ? [] : [z.minMm - clearanceMm - width, z.maxMm + clearanceMm],
  );
  const inside = changes.filter((at) => at > zMin && at < zMax);
  const bounds = [zMin, ...[...new Set(inside)].sort((a, b) => a - b), zMax];
  const spans =
    zMin === zMax ? [[zMin, zMax] as const] : bounds.slice(1).map((to, i) => [bounds[i] ?? to, to] as const);
  return spans.map(([from, to]) => {
    const middle =
      from === -Infinity ? (to === Infinity ? 0 : to - 1) : to === Infinity ? from + 1 : (from + to) / 2;
    const abreast = all.filter((i) => {
      const z = obstacles[i]?.z ?? null;
      return z === null || (middle + width + clearanceMm > z.minMm && middle - clearanceMm < z.maxMm);
    });
    return { zMinMm: from, zMaxMm: to, abreast };
  });
}

/** Layers in which a body at sideways place `zMm` is free to be; a place on a border belongs to both sides. */
export function layersAt({ layers }: FlatScene, zMm: number): readonly number[] {
  return layers.flatMap(({ zMinMm, zMaxMm }, i) => (zMm >= zMinMm - 1e-9 && zMm <= zMaxMm + 1e-9 ? [i] : []));
}

/** Whether a point is in the free region of a layer. */
export function isOpenGround({ space }: FlatScene, { solids }: SceneLayer, x: number, y: number): boolean {
  if (!flatHolds(space, x, y)) return false;
  for (const solid of solids) if (flatHolds(solid, x, y)) return false;
  return true;
}

export function flatPolygon(polygon: PolygonMm): Float64Array {
  return Float64Array.from(polygon.flatMap(({ xMm, yMm }) => [xMm, yMm]));
}

/** Even-odd rule on a polygon of flat corners; a point on the boundary may answer either way. */
export function flatHolds(corners: Float64Array, x: number, y: number): boolean {
  let inside = false;
  for (let i = 0, j = corners.length - 2; i < corners.length; j = i, i += 2) {
    const [yi, yj] = [corners[i + 1] as number, corners[j + 1] as number];
    if (yi > y === yj > y) continue;
    const [xi, xj] = [corners[i] as number, corners[j] as number];
    if (x < xi + ((y - yi) / (yj - yi)) * (xj - xi)) inside = !inside;
  }
  return inside;
}

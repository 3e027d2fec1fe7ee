// The corners and walls of a construction as a clean outline: walls of no length left out.
import type { PolygonMm } from '@gusset/contracts/geometry';
import type { Construction, PlannedCorner, PlannedWall } from './forms/construction.ts';
import { lengthOf, minus } from './plane/vector.ts';

export type OutlineWall = {
  readonly wall: PlannedWall;
  readonly start: PlannedCorner;
  readonly end: PlannedCorner;
};

/** A wall shorter than this is a corner: a sill of height 0, mm. */
const NO_WALL_MM = 0.05;

export function outlineOf({ corners, walls }: Construction): OutlineWall[] {
  const outline: OutlineWall[] = [];
  for (const [index, start] of corners.entries()) {
    const end = corners[(index + 1) % corners.length];
    const wall = walls[index];
    if (end === undefined || wall === undefined) continue;
    if (lengthOf(minus(end.at, start.at)) >= NO_WALL_MM) outline.push({ wall, start, end });
  }
  return outline.map((it, index) => ({ ...it, end: outline[(index + 1) % outline.length]?.start ?? it.end }));
}

export function polygonOf(outline: readonly OutlineWall[]): PolygonMm {
  return outline.map((it) => it.start.at);
}

// What is known of all poses in one cell at once (Brooks and Lozano-Perez 1985; Zhu and Latombe 1991; soft predicates
// after Wang, Chiang and Yap 2013). No body point moves farther than `reach` from where it is at the cell's centre, so a
// distance at the centre bounds the distance everywhere in the cell.
import { holdsDeep, liesDeeper, outlineDistanceSquared, pointToSegment } from './body-wall.ts';
import type { FlatBody } from './flat-body.ts';
import { type FlatScene, flatHolds, isOpenGround, type SceneLayer } from './flat-scene.ts';

export const UNKNOWN = 0;
/** Every pose keeps the clearance. */
export const FREE = 1;
/** No pose keeps the clearance. */
export const BLOCKED = 2;
/** Neither is shown: a smaller cell may tell. */
export const MIXED = 3;
export type CellState = typeof UNKNOWN | typeof FREE | typeof BLOCKED | typeof MIXED;

const SLACK_MM = 1e-9;

export type CellPlace = {
  /** Centre of the body's circle, mm, and the body's turn. */
  x: number;
  y: number;
  cos: number;
  sin: number;
  /**
   * Seen from the body, a wall point at a distance d from the circle's centre is nowhere in the cell farther from where
   * it is at the cell's centre than `shift + d * turn`, mm: half the cell's diagonal and half its turn, rad.
   */
  shift: number;
  turn: number;
};

/** Lists of wall numbers one behind the other; `end` is where the next one begins. */
export type NearWalls = { list: Int32Array; end: number };

/**
 * `clearanceMm` may be below 0: so much overlap is then allowed (to measure by how much something jams). Looks at the
 * walls that stand in `near` from `nearFrom` to `nearTo`; where the answer is MIXED, those that a smaller cell inside
 * this one has to look at are added at its end.
 */
export function cellState(
  scene: FlatScene,
  layer: SceneLayer,
  body: FlatBody,
  clearanceMm: number,
  place: CellPlace,
  near: NearWalls,
  nearFrom: number,
  nearTo: number,
): CellState {
  const { walls } = scene;
  const { x, y, cos, sin, shift, turn } = place;
  // Turning keeps the body in its circle: wall points beyond this are clear of it at every pose of the cell.
  const horizon = body.radiusMm + shift + Math.max(clearanceMm, 0);
  const reach = shift + horizon * turn;
  const freeFrom = reach + clearanceMm; // distance from which the whole cell keeps the clearance
  const blockedFrom = reach - clearanceMm; // depth beyond which no pose does
  const horizon2 = horizon * horizon;
  const freeFrom2 = freeFrom * freeFrom;
  let isFree = true;
  const { list, end: begin } = near;
  let end = begin;
  for (let k = nearFrom; k < nearTo; k++) {
    const wall = list[k] as number;
    const gx = (walls[wall * 4] as number) - x;
    const gy = (walls[wall * 4 + 1] as number) - y;
    const hx = (walls[wall * 4 + 2] as number) - x;
    const hy = (walls[wall * 4 + 3] as number) - y;
    const [ex, ey] = [hx - gx, hy - gy];
    if (pointToSegment(-gx, -gy, ex, ey, ex * ex + ey * ey) > horizon2) continue;
    const ax = cos * gx + sin * gy;
    const ay = cos * gy - sin * gx;
    const bx = cos * hx + sin * hy;
    const by = cos * hy - sin * hx;
    if (blockedFrom < 0) {
      // The clearance is larger than anything moves: a wall within what is left of it is too near everywhere.
      if (liesDeeper(body, 0, ax, ay, bx, by)) return BLOCKED;
      const distance2 = outlineDistanceSquared(body, ax, ay, bx, by);
      if (distance2 < (blockedFrom + SLACK_MM) ** 2) return BLOCKED;
      if (distance2 >= freeFrom2) continue;
    } else {
      if (liesDeeper(body, blockedFrom + SLACK_MM, ax, ay, bx, by)) return BLOCKED;
      if (hasDeepPoint(body, clearanceMm - SLACK_MM, shift, turn, ax, ay, bx, by)) return BLOCKED;
      if (freeFrom < 0) {
        // Some overlap is allowed: free where no wall lies deeper than what is left of it.
        if (!liesDeeper(body, -freeFrom, ax, ay, bx, by)) continue;
      } else if (!liesDeeper(body, 0, ax, ay, bx, by)) {
        if (outlineDistanceSquared(body, ax, ay, bx, by) >= freeFrom2) continue;
        if (keepsOffByParts(body, clearanceMm, place, horizon, ax, ay, bx, by)) continue;
      }
    }
    isFree = false;
    list[end++] = wall;
  }
  const ix = x + cos * body.inner.xMm - sin * body.inner.yMm;
  const iy = y + sin * body.inner.xMm + cos * body.inner.yMm;
  const isOpen = isOpenGround(scene, layer, ix, iy);
  if (isFree && isOpen) return FREE;
  if (isFree && freeFrom >= 0) return BLOCKED; // all of it in something solid, no wall within reach
  const innerReach = shift + turn * Math.hypot(body.inner.xMm, body.inner.yMm);
  if (!isOpen && isFartherFrom(walls, list, begin, end, ix, iy, innerReach)) return BLOCKED;
  near.end = end;
  return MIXED;
}

/**
 * An end of the wall, or its point nearest to the centre, stays in the body at every pose of the cell: a corner that juts
 * in between two halves of a body moves little when it turns, so this tells where the whole wall's reach would not.
 */
function hasDeepPoint(
  body: FlatBody,
  clearanceMm: number,
  shift: number,
  turn: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
): boolean {
  const [ex, ey] = [bx - ax, by - ay];
  const length2 = ex * ex + ey * ey;
  const t = length2 === 0 ? 0 : Math.min(Math.max(-(ax * ex + ay * ey) / length2, 0), 1);
  return (
    isDeep(body, clearanceMm, shift, turn, ax + t * ex, ay + t * ey) ||
    isDeep(body, clearanceMm, shift, turn, ax, ay) ||
    isDeep(body, clearanceMm, shift, turn, bx, by)
  );
}

function isDeep(
  body: FlatBody,
  clearanceMm: number,
  shift: number,
  turn: number,
  x: number,
  y: number,
): boolean {
  const depth = shift + turn * Math.sqrt(x * x + y * y) - clearanceMm;
  return depth >= 0 && holdsDeep(body, depth, x, y);
}

/** The part of the wall near the centre, where turning moves it less, and the rest of it, each by its own reach. */
function keepsOffByParts(
  body: FlatBody,
  clearanceMm: number,
  { shift, turn }: CellPlace,
  horizon: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
): boolean {
  const [ex, ey] = [bx - ax, by - ay];
  const length2 = ex * ex + ey * ey;
  if (length2 === 0) return false;
  const inner = horizon / 2;
  const foot = -(ax * ex + ay * ey) / length2;
  const off2 = ax * ax + ay * ay - foot * foot * length2;
  if (off2 >= inner * inner) return false;
  const half = Math.sqrt((inner * inner - off2) / length2);
  const [from, to] = [Math.max(foot - half, 0), Math.min(foot + half, 1)];
  if (from >= to) return false;
  const near = (shift + turn * inner + clearanceMm) ** 2;
  const far = (shift + turn * horizon + clearanceMm) ** 2;
  const [px, py, qx, qy] = [ax + from * ex, ay + from * ey, ax + to * ex, ay + to * ey];
  return (
    outlineDistanceSquared(body, px, py, qx, qy) >= near &&
    (from === 0 || outlineDistanceSquared(body, ax, ay, px, py) >= far) &&
    (to === 1 || outlineDistanceSquared(body, qx, qy, bx, by) >= far)
  );
}

/** Walls that are not in the list are farther from the whole body than `mm` anyway. */
function isFartherFrom(
  walls: Float64Array,
  near: Int32Array,
  from: number,
  to: number,
  x: number,
  y: number,
  mm: number,
): boolean {
  for (let k = from; k < to; k++)
    if (wallDistanceSquared(walls, near[k] as number, x, y) <= mm * mm) return false;
  return true;
}

export function wallDistanceSquared(walls: Float64Array, wall: number, x: number, y: number): number {
  const ax = walls[wall * 4] as number;
  const ay = walls[wall * 4 + 1] as number;
  const ex = (walls[wall * 4 + 2] as number) - ax;
  const ey = (walls[wall * 4 + 3] as number) - ay;
  return pointToSegment(x - ax, y - ay, ex, ey, ex * ex + ey * ey);
}

export const NOT_OUTSIDE = 0;
/** Some pose of the cell may be wholly outside. */
export const MAYBE_OUTSIDE = 1;
/** The centre pose is wholly outside, provided that the cell is free. */
export const CENTRE_OUTSIDE = 2;

/** Where the cell lies to the opening and the free region beyond it. */
export function outsideState(
  { opening, outside }: FlatScene,
  body: FlatBody,
  { x, y, cos, sin, shift, turn }: CellPlace,
): typeof NOT_OUTSIDE | typeof MAYBE_OUTSIDE | typeof CENTRE_OUTSIDE {
  const reach = shift + turn * body.radiusMm;
  const gx = (opening[0] as number) - x;
  const gy = (opening[1] as number) - y;
  const hx = (opening[2] as number) - x;
  const hy = (opening[3] as number) - y;
  const ax = cos * gx + sin * gy;
  const ay = cos * gy - sin * gx;
  const bx = cos * hx + sin * hy;
  const by = cos * hy - sin * hx;
  if (liesDeeper(body, reach + SLACK_MM, ax, ay, bx, by)) return NOT_OUTSIDE;
  const ix = x + cos * body.inner.xMm - sin * body.inner.yMm;
  const iy = y + sin * body.inner.xMm + cos * body.inner.yMm;
  if (flatHolds(outside, ix, iy)) return liesDeeper(body, 0, ax, ay, bx, by) ? MAYBE_OUTSIDE : CENTRE_OUTSIDE;
  for (let i = 0, j = outside.length - 2; i < outside.length; j = i, i += 2) {
    const px = outside[j] as number;
    const py = outside[j + 1] as number;
    const [ex, ey] = [(outside[i] as number) - px, (outside[i + 1] as number) - py];
    if (pointToSegment(ix - px, iy - py, ex, ey, ex * ex + ey * ey) <= reach * reach) return MAYBE_OUTSIDE;
  }
  return NOT_OUTSIDE;
}

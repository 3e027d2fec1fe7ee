// One wall against the body, both in the body's frame: the two measures that every question is made of. Plain numbers
// and no allocation: a search asks them some hundred thousand times.
import type { FlatBody } from './flat-body.ts';

/**
 * Whether the wall from (ax, ay) to (bx, by) reaches deeper than `depthMm` (0 or more) into one of the body's convex
 * pieces: their half-planes moved in by that much clip the wall, and something is left of it.
 */
export function liesDeeper(
  { planes, pieceStarts }: FlatBody,
  depthMm: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
): boolean {
  const [dx, dy] = [bx - ax, by - ay];
  for (let piece = 0; piece + 1 < pieceStarts.length; piece++) {
    let low = 0;
    let high = 1;
    const end = (pieceStarts[piece + 1] as number) * 3;
    for (let i = (pieceStarts[piece] as number) * 3; i < end; i += 3) {
      const nx = planes[i] as number;
      const ny = planes[i + 1] as number;
      const room = (planes[i + 2] as number) - depthMm - nx * ax - ny * ay;
      const rate = nx * dx + ny * dy;
      if (rate === 0) {
        if (room <= 0) low = 2;
      } else if (rate > 0) {
        const at = room / rate;
        if (at < high) high = at;
      } else {
        const at = room / rate;
        if (at > low) low = at;
      }
      if (low >= high) break;
    }
    if (low < high) return true;
  }
  return false;
}

/** Whether a point lies at least `depthMm` deep in one of the body's convex pieces. */
export function holdsDeep({ planes, pieceStarts }: FlatBody, depthMm: number, x: number, y: number): boolean {
  for (let piece = 0; piece + 1 < pieceStarts.length; piece++) {
    const end = (pieceStarts[piece + 1] as number) * 3;
    let i = (pieceStarts[piece] as number) * 3;
    while (
      i < end &&
      (planes[i] as number) * x + (planes[i + 1] as number) * y <= (planes[i + 2] as number) - depthMm
    )
      i += 3;
    if (i >= end) return true;
  }
  return false;
}

/** Squared distance from the body's outline to a wall that doesn't cross it, mm². */
export function outlineDistanceSquared(
  { outline }: FlatBody,
  ax: number,
  ay: number,
  bx: number,
  by: number,
): number {
  let least = Number.POSITIVE_INFINITY;
  const [wx, wy] = [bx - ax, by - ay];
  const wall2 = wx * wx + wy * wy;
  const n = outline.length;
  let px = outline[n - 2] as number;
  let py = outline[n - 1] as number;
  for (let i = 0; i < n; i += 2) {
    const qx = outline[i] as number;
    const qy = outline[i + 1] as number;
    const [ex, ey] = [qx - px, qy - py];
    const edge2 = ex * ex + ey * ey;
    const fromA = pointToSegment(ax - px, ay - py, ex, ey, edge2);
    if (fromA < least) least = fromA;
    const fromB = pointToSegment(bx - px, by - py, ex, ey, edge2);
    if (fromB < least) least = fromB;
    const fromCorner = pointToSegment(qx - ax, qy - ay, wx, wy, wall2);
    if (fromCorner < least) least = fromCorner;
    px = qx;
    py = qy;
  }
  return least;
}

/** Squared distance from a point to a segment that starts at the origin and runs along (ex, ey). */
export function pointToSegment(x: number, y: number, ex: number, ey: number, length2: number): number {
  const along = length2 === 0 ? 0 : (x * ex + y * ey) / length2;
  const t = Math.min(Math.max(along, 0), 1);
  const [dx, dy] = [x - t * ex, y - t * ey];
  return dx * dx + dy * dy;
}

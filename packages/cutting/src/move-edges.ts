// An outline with each edge moved along its own normal: the smaller face of a bevelled
// panel (edges move in), the blank of a panel that is trimmed flush later (edges move out).
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';

/** Below this sine, two neighbouring edges count as one line: they meet at no sharp point. */
const PARALLEL_SINE = 1e-9;

export type SizeMm = { readonly lengthMm: number; readonly widthMm: number };

/**
 * Size of the rectangle round the outline (counter-clockwise) once edge i has moved out by `outwardMm[i]`.
 * Zero where edges that move in meet before they arrive: a thick panel bevelled to a ridge.
 */
export function sizeWithEdgesMoved(outline: PolygonMm, outwardMm: readonly number[]): SizeMm {
  const corners = outline.map((_, index) => movedCorner(outline, outwardMm, index));
  if (signedAreaMm2(corners) <= 0) return { lengthMm: 0, widthMm: 0 };
  const xs = corners.map((corner) => corner.xMm);
  const ys = corners.map((corner) => corner.yMm);
  return {
    lengthMm: Math.max(...xs) - Math.min(...xs),
    widthMm: Math.max(...ys) - Math.min(...ys),
  };
}

function signedAreaMm2(corners: PolygonMm): number {
  let doubled = 0;
  corners.forEach((corner, index) => {
    const next = cornerAt(corners, index + 1);
    doubled += corner.xMm * next.yMm - next.xMm * corner.yMm;
  });
  return doubled / 2;
}

export function edgeLengthMm(outline: PolygonMm, index: number): number {
  const from = cornerAt(outline, index);
  const to = cornerAt(outline, index + 1);
  return Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm);
}

/** Corner `index` counted round the outline, either way. */
function cornerAt(outline: PolygonMm, index: number): PointMm {
  const count = outline.length;
  const corner = outline[((index % count) + count) % count];
  return corner ?? { xMm: 0, yMm: 0 }; // unreachable: an outline has three corners or more
}

type Edge = { readonly alongX: number; readonly alongY: number; readonly outwardMm: number };

function edgeFrom(outline: PolygonMm, outwardMm: readonly number[], index: number): Edge {
  const from = cornerAt(outline, index);
  const to = cornerAt(outline, index + 1);
  const length = Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm) || 1;
  return {
    alongX: (to.xMm - from.xMm) / length,
    alongY: (to.yMm - from.yMm) / length,
    outwardMm: outwardMm[(index + outline.length) % outline.length] ?? 0,
  };
}

/** Where the moved edges before and after a corner meet. The outward normal of an edge (x, y) is (y, -x). */
function movedCorner(outline: PolygonMm, outwardMm: readonly number[], index: number): PointMm {
  const corner = cornerAt(outline, index);
  const before = edgeFrom(outline, outwardMm, index - 1);
  const after = edgeFrom(outline, outwardMm, index);
  const sine = before.alongX * after.alongY - before.alongY * after.alongX;
  if (Math.abs(sine) < PARALLEL_SINE) {
    const shift = Math.abs(before.outwardMm) > Math.abs(after.outwardMm) ? before.outwardMm : after.outwardMm;
    return { xMm: corner.xMm + shift * after.alongY, yMm: corner.yMm - shift * after.alongX };
  }
  const alongBefore = after.outwardMm / sine;
  const alongAfter = before.outwardMm / sine;
  return {
    xMm: corner.xMm + alongBefore * before.alongX - alongAfter * after.alongX,
    yMm: corner.yMm + alongBefore * before.alongY - alongAfter * after.alongY,
  };
}

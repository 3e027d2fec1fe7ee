// Whether a polygon crosses, touches or folds back on itself.
import type { PolygonMm } from '@gusset/contracts/geometry';
import { closestBetweenSegments } from './distance.ts';
import { edgesOf, type Segment } from './edges.ts';
import { cross, dot, lengthOf, minus } from './vector.ts';

/** Two edges that are not neighbours may not come nearer than this, mm: a tape cannot tell less apart. */
const PINCH_MM = 0.05;

/** Indices of the first two edges that cross, touch or fold back on each other; null for a simple polygon. */
export function crossingEdges(polygon: PolygonMm): readonly [number, number] | null {
  const edges = edgesOf(polygon);
  for (const [i, first] of edges.entries()) {
    for (const [j, second] of edges.entries()) {
      if (j <= i) continue;
      const next = j === i + 1;
      const around = i === 0 && j === edges.length - 1;
      if (next || around) {
        if (edges.length === 3) continue;
        if (next ? foldsBack(first, second) : foldsBack(second, first)) return [i, j];
      } else if (closestBetweenSegments(first, second).distanceMm < PINCH_MM) return [i, j];
    }
  }
  return null;
}

/** The second edge runs back along the first. */
function foldsBack(first: Segment, second: Segment): boolean {
  const a = minus(first.to, first.from);
  const b = minus(second.to, second.from);
  const size = lengthOf(a) * lengthOf(b);
  return dot(a, b) < 0 && Math.abs(cross(a, b)) <= 1e-9 * size;
}

// A polyline cut to a rectangle: the runs of it that lie inside (Liang and Barsky, 1984, segment by segment).
import { between, type Extent, type Spot } from '../scene/spot.ts';

const ROUNDING_PT = 1e-6; // a point on the frame is inside it, whatever the last digit says

export function clipLine(points: readonly Spot[], window: Extent): readonly (readonly Spot[])[] {
  const runs: Spot[][] = [];
  let run: Spot[] = [];
  points.slice(1).forEach((to, index) => {
    const from = points[index] ?? to;
    const inside = clipSegment(from, to, window);
    if (inside === null) {
      if (run.length > 0) runs.push(run);
      run = [];
      return;
    }
    if (inside.start > 0 && run.length > 0) {
      runs.push(run);
      run = [];
    }
    if (run.length === 0) run.push(between(from, to, inside.start));
    run.push(between(from, to, inside.end));
    if (inside.end < 1) {
      runs.push(run);
      run = [];
    }
  });
  if (run.length > 0) runs.push(run);
  return runs;
}

function clipSegment(
  from: Spot,
  to: Spot,
  { left, top, right, bottom }: Extent,
): { start: number; end: number } | null {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const walls: readonly [number, number][] = [
    [-dx, from.x - left + ROUNDING_PT],
    [dx, right - from.x + ROUNDING_PT],
    [-dy, from.y - top + ROUNDING_PT],
    [dy, bottom - from.y + ROUNDING_PT],
  ];
  let [start, end] = [0, 1];
  for (const [towards, room] of walls) {
    if (towards === 0 && room < 0) return null;
    if (towards < 0) start = Math.max(start, room / towards);
    if (towards > 0) end = Math.min(end, room / towards);
  }
  return start > end ? null : { start, end };
}

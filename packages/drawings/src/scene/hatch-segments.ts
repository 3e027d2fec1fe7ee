// Section hatching as plain segments (ISO 128-50), so that screen, print and PDF show the same lines: no pattern fills.
import { dot, type Spot } from './spot.ts';

export type Segment = readonly [Spot, Spot];

const SHORTEST_SEGMENT_PT = 0.05; // shorter than any printer dot: a touch at a corner, not a line

/**
 * Parallel segments at `angleRad` (clockwise on paper) and `pitchPt` apart, clipped to the area that the rings bound
 * (even-odd). The lines are counted from the drawing's origin, so two regions hatched alike run on into each other.
 */
export function hatchSegments(
  rings: readonly (readonly Spot[])[],
  angleRad: number,
  pitchPt: number,
): readonly Segment[] {
  const along = { x: Math.cos(angleRad), y: Math.sin(angleRad) };
  const across = { x: -along.y, y: along.x };
  const edges = rings.flatMap((ring) => ringEdges(ring, along, across));
  if (edges.length === 0 || pitchPt <= 0) return [];
  const first = Math.ceil(Math.min(...edges.map((edge) => edge.low)) / pitchPt);
  const last = Math.floor(Math.max(...edges.map((edge) => edge.high)) / pitchPt);
  const segments: Segment[] = [];
  for (let index = first; index <= last; index += 1) {
    const height = index * pitchPt;
    const place = (distance: number): Spot => ({
      x: along.x * distance + across.x * height,
      y: along.y * distance + across.y * height,
    });
    const stops = edges
      .filter((edge) => edge.low <= height && height < edge.high) // half open: a corner counts once
      .map(
        (edge) =>
          edge.lowAlong + (edge.highAlong - edge.lowAlong) * ((height - edge.low) / (edge.high - edge.low)),
      )
      .sort((a, b) => a - b);
    for (let stop = 0; stop + 1 < stops.length; stop += 2) {
      const from = stops[stop] ?? 0;
      const to = stops[stop + 1] ?? 0;
      if (to - from > SHORTEST_SEGMENT_PT) segments.push([place(from), place(to)]);
    }
  }
  return segments;
}

/** An edge in hatch coordinates: its lower and higher end across the hatch, and where along it they lie. */
type RingEdge = {
  readonly low: number;
  readonly high: number;
  readonly lowAlong: number;
  readonly highAlong: number;
};

function ringEdges(ring: readonly Spot[], along: Spot, across: Spot): RingEdge[] {
  return ring.flatMap((from, index) => {
    const to = ring[(index + 1) % ring.length] ?? from;
    const ends = [from, to].map((end) => ({ across: dot(end, across), along: dot(end, along) }));
    const [low, high] = ends.sort((a, b) => a.across - b.across);
    if (low === undefined || high === undefined || low.across === high.across) return [];
    return [{ low: low.across, high: high.across, lowAlong: low.along, highAlong: high.along }];
  });
}

// The hatched band outside a cavity's edges: what the tape stopped at.
import {
  add,
  cross,
  direction,
  distance,
  dot,
  doubleArea,
  leftOf,
  type Spot,
  subtract,
  times,
} from '../scene/spot.ts';

export type BandEdge = { readonly from: Spot; readonly to: Spot; readonly solid: boolean };

const MITRE_LIMIT = 2.5; // longest corner, in band widths: sharper ones are cut off
const SAME_SPOT_PT = 0.01;

/** One closed quad per solid edge, on the outside; null for open edges. Neighbours meet on a mitre. */
export function wallBand(edges: readonly BandEdge[], bandPt: number): readonly (readonly Spot[] | null)[] {
  const clockwise = doubleArea(edges.map(({ from }) => from)) > 0;
  const outward = (edge: BandEdge): Spot =>
    times(leftOf(direction(edge.from, edge.to)), clockwise ? bandPt : -bandPt);
  return edges.map((edge, index) => {
    if (!edge.solid || distance(edge.from, edge.to) < SAME_SPOT_PT) return null;
    const before = edges[(index + edges.length - 1) % edges.length];
    const after = edges[(index + 1) % edges.length];
    const own = outward(edge);
    const joinsBefore = before?.solid === true && distance(before.to, edge.from) < SAME_SPOT_PT;
    const joinsAfter = after?.solid === true && distance(after.from, edge.to) < SAME_SPOT_PT;
    const outerFrom = joinsBefore ? mitre(outward(before), own, bandPt) : own;
    const outerTo = joinsAfter ? mitre(own, outward(after), bandPt) : own;
    return [edge.from, edge.to, add(edge.to, outerTo), add(edge.from, outerFrom)];
  });
}

/** Where two lines set off by `a` and `b` from a common corner meet, as an offset from that corner. */
function mitre(a: Spot, b: Spot, bandPt: number): Spot {
  const sum = add(a, b);
  const share = dot(sum, sum) / 2;
  const offset = share < 1e-9 ? a : times(sum, (bandPt * bandPt) / share); // 1e-9 pt²: the wall doubles back
  const length = Math.hypot(offset.x, offset.y);
  return length > bandPt * MITRE_LIMIT ? times(offset, (bandPt * MITRE_LIMIT) / length) : offset;
}

/** True when the spot lies inside the ring (even-odd). */
export function insideRing(ring: readonly Spot[], at: Spot): boolean {
  let inside = false;
  ring.forEach((from, index) => {
    const to = ring[(index + 1) % ring.length] ?? from;
    if (from.y > at.y !== to.y > at.y) {
      const side = cross(subtract(to, from), subtract(at, from));
      if (side > 0 === to.y > from.y) inside = !inside;
    }
  });
  return inside;
}

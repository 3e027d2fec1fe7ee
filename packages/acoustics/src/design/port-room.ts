// Whether a port of a length goes into a box: straight, or bent square along the walls. A bent port lies against the
// walls and is measured along its middle; `thickMm` is its outside in the plane of the bend.
//   straight    s - c
//   one bend    (s - t/2) + (a - t/2 - c)
//   two bends   (s - t/2) + (a - t) + (s - t/2 - c)
// with s the room straight on, a the room across, t the thickness and c what stays free before the inner end.
import type { PortFit, PortRoom } from '@gusset/contracts/acoustics';

export type PortRoomQuestion = {
  readonly insideMm: number;
  readonly thickMm: number;
  /** Smaller side of the mouth: what stays free unless the room says otherwise. */
  readonly mouthMm: number;
  readonly room: PortRoom | null;
};

export type PortRoomAnswer = { readonly fit: PortFit; readonly longestMm: number | null };

/** The way with the fewest bends, and how much port would go in at most with the bends that are allowed. */
export function fitPort({ insideMm, thickMm, mouthMm, room }: PortRoomQuestion): PortRoomAnswer {
  if (room === null) return { fit: 'not-known', longestMm: null };
  const { straightMm, acrossMm, bendsAllowed } = room;
  const clearMm = room.clearMm ?? mouthMm;
  const ways: { readonly fit: PortFit; readonly longestMm: number }[] = [
    { fit: 'straight', longestMm: Math.max(0, straightMm - clearMm) },
  ];
  const canBend = acrossMm !== null && straightMm > thickMm;
  if (canBend && bendsAllowed >= 1 && acrossMm > thickMm + clearMm) {
    ways.push({ fit: 'one-bend', longestMm: straightMm + acrossMm - thickMm - clearMm });
  }
  if (canBend && bendsAllowed === 2 && acrossMm > 2 * thickMm && straightMm > thickMm + clearMm) {
    ways.push({ fit: 'two-bends', longestMm: 2 * straightMm + acrossMm - 2 * thickMm - clearMm });
  }
  const fitting = ways.find(({ longestMm }) => insideMm <= longestMm);
  return {
    fit: fitting?.fit ?? 'no',
    longestMm: Math.max(...ways.map(({ longestMm }) => longestMm)),
  };
}

// What the mouths of slots do to the boards round them: the face stops short or is notched, and the walls that the
// channel runs along go out through it, whatever joint was chosen there.
import type { Board, EndStop, WallCut } from './board.ts';
import { notched } from './board-notch.ts';
import type { Carcass } from './carcass.ts';
import type { EndJoint } from './corner-joints.ts';
import { distanceAlong, polygonAreaMm2, polygonCentre } from './plane.ts';
import type { LaidPort, Mouth, SideMouth } from './port-types.ts';
import { ringAt } from './ring.ts';
import { inSpace } from './vector.ts';
import { insetMeet, upTheFace, type Wall } from './wall-ring.ts';

export type Mouths = {
  readonly across: readonly Mouth[];
  readonly beside: readonly SideMouth[];
};

export const NO_MOUTHS: Mouths = { across: [], beside: [] };

/** Corners of the side view that a mouth changes, and the face it goes through. */
function cornersOf(carcass: Carcass, { mouth, sideMouth }: LaidPort) {
  const faceIndex = mouth?.faceIndex ?? sideMouth?.faceIndex ?? 0;
  const next = (faceIndex + 1) % carcass.walls.length;
  const corners = mouth === null ? [faceIndex, next] : [mouth.alongIndex === next ? next : faceIndex];
  return { faceIndex, corners };
}

/** Two mouths at one corner of the side view go together through one face, beside each other, or not at all. */
function quarrelling(carcass: Carcass, a: LaidPort, b: LaidPort): boolean {
  const [one, other] = [cornersOf(carcass, a), cornersOf(carcass, b)];
  if (!one.corners.some((corner) => other.corners.includes(corner))) return false;
  if (one.faceIndex !== other.faceIndex) return true;
  if (a.sideMouth !== null && b.sideMouth !== null) return a.sideMouth.side === b.sideMouth.side;
  if (a.mouth === null || b.mouth === null) return true;
  return a.mouth.zFromMm < b.mouth.zToMm && b.mouth.zFromMm < a.mouth.zToMm;
}

/** The number of the first port whose mouth cannot be beside an earlier one; null where all can. */
export function quarrel(carcass: Carcass, slots: readonly LaidPort[]): number | null {
  const later = slots.find((slot, index) =>
    slots.slice(0, index).some((earlier) => quarrelling(carcass, earlier, slot)),
  );
  return later?.placed.number ?? null;
}

/** Whether the panels of two neighbouring walls meet at a mouth, and which of them it goes through. */
export function mouthedFace(carcass: Carcass, mouths: Mouths, a: number, b: number): number | null {
  const count = carcass.walls.length;
  const pair = [(a + count) % count, (b + count) % count];
  const across = mouths.across.find(
    ({ faceIndex, alongIndex }) => pair.includes(faceIndex) && pair.includes(alongIndex),
  );
  if (across !== undefined) return across.faceIndex;
  return mouths.beside.find(({ faceIndex }) => pair.includes(faceIndex))?.faceIndex ?? null;
}

/** Where a board of a mouthed pair ends, in place of its joint; null where no mouth is. */
export function endAtMouth(
  carcass: Carcass,
  mouths: Mouths,
  own: number,
  neighbour: number,
): { readonly stop: EndStop; readonly joint: EndJoint } | null {
  const face = mouthedFace(carcass, mouths, own, neighbour);
  if (face === null) return null;
  const count = carcass.walls.length;
  const isFace = (own + count) % count === face;
  const insetMm = isFace ? ringAt(carcass.stocks, neighbour).thicknessMm : 0;
  const stop = {
    wall: ringAt(carcass.walls, neighbour),
    outerInsetMm: insetMm,
    innerInsetMm: insetMm,
  };
  return { stop, joint: isFace ? 'covered' : 'through' };
}

/** Across the box less the mouths beside the sides. */
export function besideMouths(
  mouths: Mouths,
  faceIndex: number,
  zMinMm: number,
  zMaxMm: number,
): { readonly zMinMm: number; readonly zMaxMm: number } {
  const taken = (side: 'left' | 'right') =>
    mouths.beside
      .filter((mouth) => mouth.faceIndex === faceIndex && mouth.side === side)
      .reduce((sum, { widthMm }) => sum + widthMm, 0);
  return { zMinMm: zMinMm + taken('right'), zMaxMm: zMaxMm - taken('left') };
}

const ROUNDING_MM = 1e-6; // of a depth that comes out of a leaning wall

/** The piece of one layer of the face that a mouth takes: between the joint's line and the channel's far side. */
function gonePiece(
  carcass: Carcass,
  mouth: Mouth,
  cut: WallCut,
  wall: Wall,
): readonly WallCut[keyof WallCut][] {
  const along = ringAt(carcass.walls, mouth.alongIndex);
  const depths = [cut.outerStart, cut.innerStart].map((point) => -distanceAlong(wall.from, point, wall.out));
  const [outerMm, innerMm] = [ringAt(depths, 0), ringAt(depths, 1)];
  // A doubler outside goes past the end of the other wall: there the notch is open down to its edge.
  const nearMm = outerMm < -ROUNDING_MM ? 0 : ringAt(carcass.stocks, mouth.alongIndex).thicknessMm;
  return [
    insetMeet(wall, outerMm, along, nearMm),
    insetMeet(wall, outerMm, along, mouth.insetMm),
    insetMeet(wall, innerMm, along, mouth.insetMm),
    insetMeet(wall, innerMm, along, nearMm),
  ];
}

/** One layer of wall `faceIndex` with its mouths taken out of it. */
export function boardWithMouths(
  board: Board,
  carcass: Carcass,
  mouths: readonly Mouth[],
  { wall, cut }: { readonly wall: Wall; readonly cut: WallCut },
): Board {
  return mouths.reduce((whole, mouth) => {
    const { placement, lengthMm } = whole;
    const { foot, up, runsUp } = upTheFace(wall);
    const piece = gonePiece(carcass, mouth, cut, wall);
    const originUpMm = distanceAlong(foot, { xMm: placement.originMm.x, yMm: placement.originMm.y }, up);
    const upMm = (index: number) => distanceAlong(foot, ringAt(piece, index), up) - originUpMm;
    const onPanel = (zMm: number) => (zMm - placement.originMm.z) * placement.xAxis.z;
    const places = [onPanel(mouth.zFromMm), onPanel(mouth.zToMm)];
    const [fromMm, toMm] = [Math.max(0, Math.min(...places)), Math.min(lengthMm, Math.max(...places))];
    const amount = Math.abs(polygonAreaMm2(piece)) * (toMm - fromMm);
    const middleZMm = placement.originMm.z + (placement.xAxis.z * (fromMm + toMm)) / 2;
    const followsRing =
      ringAt(carcass.walls, mouth.faceIndex + 1) === ringAt(carcass.walls, mouth.alongIndex);
    return notched(
      whole,
      { atLowEnd: followsRing !== runsUp, outerMm: upMm(1), innerMm: upMm(2), fromMm, toMm },
      { amount, at: inSpace(polygonCentre(piece), middleZMm) },
    );
  }, board);
}

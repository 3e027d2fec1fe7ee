// Where window braces stand across the box: near even, off the centre of symmetry, clear of the drivers.

/** Wood of a brace to the cut-out or magnet beside it. */
export const BRACE_TO_DRIVER_MM = 10;
/** Narrowest bay between braces, or between a brace and a side: room for a hand. */
export const BAY_MIN_MM = 60;
/** Bays of one size share one resonance: every brace moves this share of a bay off its even place. */
const OFF_CENTRE_SHARE = 0.08;

/** A stretch across the box where the middle of a brace may not stand. */
export type KeepOut = { readonly fromMm: number; readonly toMm: number };

export type BraceRoom = {
  readonly innerWidthMm: number;
  readonly thicknessMm: number;
  readonly keepOuts: readonly KeepOut[];
  /** What stands across the box already: a divider beside the braces. */
  readonly standing: readonly KeepOut[];
};

const isFree = (zMm: number, fromMm: number, toMm: number, keepOuts: readonly KeepOut[]) =>
  zMm >= fromMm && zMm <= toMm && keepOuts.every((out) => zMm <= out.fromMm || zMm >= out.toMm);

/** The free place nearest to `idealMm`; of two equally near, the upper. */
function nearestFree(
  idealMm: number,
  fromMm: number,
  toMm: number,
  keepOuts: readonly KeepOut[],
): number | null {
  const clamped = Math.min(Math.max(idealMm, fromMm), toMm);
  const candidates = [clamped, ...keepOuts.flatMap((out) => [out.fromMm, out.toMm])]
    .filter((zMm) => isFree(zMm, fromMm, toMm, keepOuts))
    .sort((a, b) => Math.abs(a - idealMm) - Math.abs(b - idealMm) || b - a);
  return candidates[0] ?? null;
}

/** Even places moved toward +z, whatever stands there. */
export function idealPlacesMm(count: number, room: BraceRoom): number[] {
  const bayMm = room.innerWidthMm / (count + 1);
  return Array.from(
    { length: count },
    (_, index) => (index + 1 + OFF_CENTRE_SHARE) * bayMm - room.innerWidthMm / 2,
  );
}

/** Places for `count` braces, from −z to +z, or null where the drivers leave no room for so many. */
export function clearPlacesMm(count: number, room: BraceRoom): number[] | null {
  const edgeMm = room.innerWidthMm / 2 - room.thicknessMm / 2 - BAY_MIN_MM;
  const pitchMm = room.thicknessMm + BAY_MIN_MM;
  const places: number[] = [];
  for (const idealMm of idealPlacesMm(count, room)) {
    const last = places.at(-1);
    const fromMm = last === undefined ? -edgeMm : last + pitchMm;
    const place = fromMm > edgeMm ? null : nearestFree(idealMm, fromMm, edgeMm, room.keepOuts);
    if (place === null) return null;
    places.push(place);
  }
  return places;
}

/** Clear stretches between sides, braces and what stands there already, from −z to +z. */
export function baysOf(
  placesMm: readonly number[],
  { innerWidthMm, thicknessMm, standing }: BraceRoom,
): KeepOut[] {
  const half = thicknessMm / 2;
  const braces = placesMm.map((zMm) => ({ fromMm: zMm - half, toMm: zMm + half }));
  const edge = innerWidthMm / 2;
  const wood = [...braces, ...standing].sort((a, b) => a.fromMm - b.fromMm);
  return [...wood, { fromMm: edge, toMm: edge }].map(({ fromMm }, index) => ({
    fromMm: wood[index - 1]?.toMm ?? -edge,
    toMm: fromMm,
  }));
}

/** Their widths. */
export function baysMm(placesMm: readonly number[], room: BraceRoom): number[] {
  return baysOf(placesMm, room).map(({ fromMm, toMm }) => toMm - fromMm);
}

/** The room seen in a mirror: so that a box and its mirror image get mirrored braces. */
export function mirrored(room: BraceRoom): BraceRoom {
  const turned = ({ fromMm, toMm }: KeepOut) => ({ fromMm: -toMm, toMm: -fromMm });
  return { ...room, keepOuts: room.keepOuts.map(turned), standing: room.standing.map(turned) };
}

// Beyond the opening: the half plane that is taken as free, and what was measured to stand in it.
import type { BeyondOpening, SceneAssumption } from '@gusset/contracts/cargo';
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';
import { clippedTo } from './plane/polygon.ts';
import { dot, minus, plus } from './plane/vector.ts';
import type { ScenePrism } from './scene-obstacle.ts';

/** The opening with its two directions; `from` and `to` as the walls of a counter-clockwise cavity run. */
export type OpeningFrame = {
  readonly from: PointMm;
  readonly to: PointMm;
  readonly along: PointMm;
  readonly outward: PointMm;
};

/** Free ground reaches this many times the body outward, and half as far past each end of the opening. */
const REACH = 3;

/**
 * Free ground beyond the opening, counter-clockwise from its corner nearest `from`; begins `offMm` out from the opening.
 * Cut off at the ground, where that was measured; null where the ground would close the opening.
 */
export function freeGround(
  frame: OpeningFrame,
  offMm: number,
  bodyMm: number,
  groundYMm: number | null,
): PolygonMm | null {
  const { from, to, along, outward } = frame;
  const near = plus(plus(from, outward, offMm), along, (-REACH / 2) * bodyMm);
  const far = plus(plus(to, outward, offMm), along, (REACH / 2) * bodyMm);
  const box = [near, plus(near, outward, REACH * bodyMm), plus(far, outward, REACH * bodyMm), far];
  if (groundYMm === null) return box;
  const ends = [plus(from, outward, offMm), plus(to, outward, offMm)];
  if (ends.some(({ yMm }) => yMm <= groundYMm)) return null;
  const kept = clippedTo(box, { xMm: 0, yMm: groundYMm }, { xMm: 0, yMm: -1 });
  return startingBefore(kept, frame, offMm);
}

/** Rotated so that it begins on the line of the opening, before `from`, and ends on it past `to`. */
function startingBefore(
  polygon: PolygonMm,
  { from, along, outward }: OpeningFrame,
  offMm: number,
): PolygonMm {
  const onLine = (at: PointMm) => Math.abs(dot(minus(at, from), outward) - offMm) < 1e-6;
  const start = polygon.findIndex((at) => onLine(at) && dot(minus(at, from), along) < 0);
  return [...polygon.slice(start), ...polygon.slice(0, start)];
}

/** How far below the lip a bumper goes down where the ground was not measured, mm. */
const BUMPER_DOWN_MM = 400;

export type GroundPrism = ScenePrism & { readonly plusMinusMm: number; readonly moves: boolean };

/** Raised lid and bumper as prisms over the whole width. The lid hangs from the upper end of the opening. */
export function groundPrisms({ from, to, outward }: OpeningFrame, beyond: BeyondOpening): GroundPrism[] {
  const [lip, hinge] = from.yMm <= to.yMm ? [from, to] : [to, from];
  const out = outward.xMm < 0 ? -1 : 1;
  const prisms: GroundPrism[] = [];
  if (beyond.lid !== null) {
    const { lengthMm, thicknessMm, openRad, plusMinusMm } = beyond.lid;
    const way: PointMm = { xMm: out * Math.cos(openRad), yMm: Math.sin(openRad) };
    // Shut, the lid points down and its outer face looks out; opening turns both by the same angle.
    const outer: PointMm = { xMm: -out * Math.sin(openRad), yMm: Math.cos(openRad) };
    const end = plus(hinge, way, lengthMm);
    const polygon = [hinge, end, plus(end, outer, thicknessMm), plus(hinge, outer, thicknessMm)];
    prisms.push({ name: 'Open lid', polygon, z: null, plusMinusMm, moves: true });
  }
  if (beyond.bumper !== null) {
    const { outMm, belowMm, plusMinusMm } = beyond.bumper;
    const topYMm = lip.yMm - belowMm;
    const footYMm = Math.min(topYMm - 1, lip.yMm - (beyond.ground?.belowMm ?? belowMm + BUMPER_DOWN_MM));
    const endXMm = lip.xMm + out * outMm;
    const polygon = [
      { xMm: lip.xMm, yMm: footYMm },
      { xMm: endXMm, yMm: footYMm },
      { xMm: endXMm, yMm: topYMm },
      { xMm: lip.xMm, yMm: topYMm },
    ];
    prisms.push({ name: 'Bumper', polygon, z: null, plusMinusMm, moves: false });
  }
  return prisms;
}

export function groundAssumptions({ lid, bumper, ground }: BeyondOpening): SceneAssumption[] {
  return [
    lid === null ? 'lid-not-measured' : 'lid-at-its-open-angle',
    bumper === null ? 'bumper-not-measured' : 'bumper-as-measured',
    ground === null ? 'ground-not-measured' : 'ground-as-measured',
  ];
}

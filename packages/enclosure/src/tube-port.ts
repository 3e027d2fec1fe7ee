// Pipes through a face: what they take of the air, in closed form, and where they go when nobody says.
import type { BoxFace, TubePort, Vector } from '@gusset/contracts/enclosure';
import type { PointMm } from '@gusset/contracts/geometry';
import { type Refusal, refuse } from '@gusset/units';
import type { BraceLayout } from './bracing.ts';
import { baffleBuildMm, type Carcass, liesBeside } from './carcass.ts';
import type { DriverLayout } from './driver-layout.ts';
import { CLEAR_MIN_MM } from './limits.ts';
import { distanceAlong, moved, polygonExtent, roomInside } from './plane.ts';
import type { LaidPort, Tube } from './port-types.ts';
import { ringAt } from './ring.ts';
import { roomInRing } from './simple-polygon.ts';
import { along, inSpace, reach } from './vector.ts';
import { upTheFace } from './wall-ring.ts';

const LITRE_MM3 = 1e6;
const shown = (mm: number) => Number(mm.toFixed(2));

/** Radius of a flared end's outside, `backMm` from the end: a quarter circle that opens outward, wall added. */
export function flareRadiusMm(plainMm: number, flareMm: number, backMm: number): number {
  if (backMm >= flareMm) return plainMm;
  const riseMm = flareMm - backMm;
  return plainMm + flareMm - Math.sqrt(flareMm ** 2 - riseMm ** 2);
}

/**
 * Volume round the axis of a flared end between two distances from the end. With s from the flare's foot and
 * ρ = plain + flare: ∫ π (ρ − √(r² − s²))² ds = π [ρ² s − ρ (s √(r² − s²) + r² asin(s/r)) + r² s − s³/3].
 */
export function flaredMm3(plainMm: number, flareMm: number, fromBackMm: number, toBackMm: number): number {
  const straight = Math.PI * plainMm ** 2 * Math.max(0, toBackMm - Math.max(fromBackMm, flareMm));
  if (flareMm === 0 || fromBackMm >= flareMm) return straight;
  const rho = plainMm + flareMm;
  const squared = flareMm ** 2;
  const upTo = (footMm: number) => {
    const chord = Math.sqrt(Math.max(0, squared - footMm ** 2));
    const swept = footMm * chord + squared * Math.asin(Math.min(1, footMm / flareMm));
    return rho ** 2 * footMm - rho * swept + squared * footMm - footMm ** 3 / 3;
  };
  const nearFootMm = flareMm - Math.min(toBackMm, flareMm);
  return straight + Math.PI * (upTo(flareMm - fromBackMm) - upTo(nearFootMm));
}

/** Wood of the face that a pipe goes through. */
export function faceWoodMm(carcass: Carcass, face: BoxFace): number {
  if (face === carcass.baffle.face) {
    const { outMm, inMm } = baffleBuildMm(carcass);
    return outMm + inMm;
  }
  return carcass.sideStock.thicknessMm;
}

/** What one pipe takes behind the face, its air included. */
export function tubeDisplacedMm3(tube: TubePort, woodMm: number): number {
  const plainMm = tube.insideDiaMm / 2 + tube.wallMm;
  const { lengthMm, outerFlareMm, innerFlareMm } = tube;
  const halfwayMm = Math.max(woodMm, lengthMm - innerFlareMm);
  return (
    flaredMm3(plainMm, outerFlareMm, woodMm, halfwayMm) +
    flaredMm3(plainMm, innerFlareMm, 0, lengthMm - halfwayMm)
  );
}

/** The hole that lets the outer flare in: as wide as the flare is at the face. */
export function tubeHoleDiaMm({ insideDiaMm, wallMm, outerFlareMm }: TubePort): number {
  return insideDiaMm + 2 * wallMm + 2 * outerFlareMm;
}

/** Widest outside behind the face. */
export function tubeRadiusMm(tube: TubePort, woodMm: number): number {
  const plainMm = tube.insideDiaMm / 2 + tube.wallMm;
  return Math.max(plainMm + tube.innerFlareMm, flareRadiusMm(plainMm, tube.outerFlareMm, woodMm));
}

/** A face as a plane to place things on: across and up, and the outline that they stay in. */
type PipeFace = {
  readonly outline: readonly PointMm[];
  readonly inward: Vector;
  readonly at: (acrossMm: number, upMm: number) => Vector;
};

function pipeFace(carcass: Carcass, face: BoxFace): PipeFace | null {
  if (face === 'left' || face === 'right') {
    const sign = face === 'left' ? 1 : -1;
    return {
      outline: carcass.free,
      inward: { x: 0, y: 0, z: -sign },
      at: (acrossMm, upMm) => inSpace({ xMm: acrossMm, yMm: upMm }, (sign * carcass.widthMm) / 2),
    };
  }
  const index = carcass.walls.findIndex((wall) => wall.face === face);
  const wall = carcass.walls[index];
  if (wall === undefined) return null;
  const { foot, up } = upTheFace(wall);
  const ends = [ringAt(carcass.free, index), ringAt(carcass.free, index + 1)].map((end) =>
    distanceAlong(foot, end, up),
  );
  const half = carcass.innerWidthMm / 2;
  const outMm = index === carcass.baffleIndex ? baffleBuildMm(carcass).outMm : 0;
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  return {
    outline: [
      { xMm: -half, yMm: low },
      { xMm: half, yMm: low },
      { xMm: half, yMm: high },
      { xMm: -half, yMm: high },
    ],
    inward: { x: -wall.out.x, y: -wall.out.y, z: 0 },
    at: (acrossMm, upMm) => inSpace(moved(moved(foot, up, upMm), wall.out, outMm), acrossMm),
  };
}

/** What stands on or behind a face already: circles, and upright panels that cross it. */
export type Neighbourhood = {
  readonly drivers: DriverLayout | null;
  readonly braces: BraceLayout;
  readonly tubes: readonly Tube[];
};

const SEARCH_STEPS = 24; // across and up: finer places make no better ports

/** Wood or air from a pipe's edge to the nearest thing; negative where they meet. */
function roomAt(
  carcass: Carcass,
  face: BoxFace,
  { outline, at }: PipeFace,
  radiusMm: number,
  around: Neighbourhood,
  point: PointMm,
): number {
  const centre = at(point.xMm, point.yMm);
  const { drivers, braces, tubes } = around;
  const apart = (other: Vector) => Math.hypot(other.x - centre.x, other.y - centre.y, other.z - centre.z);
  const ofDrivers =
    drivers === null || face !== carcass.baffle.face
      ? []
      : drivers.seats.map(({ faceMm }) => apart(faceMm) - drivers.holes.faceDiaMm / 2);
  const ofTubes = tubes.map((tube) => apart(tube.faceMm) - tube.outerRadiusMm);
  const isSide = face === 'left' || face === 'right';
  const ofBraces = isSide
    ? []
    : braces.placesMm.map((zMm) => Math.abs(zMm - centre.z) - carcass.braceStock.thicknessMm / 2);
  return (
    Math.min(
      (carcass.isHollow ? roomInRing : roomInside)(outline, point),
      ...ofDrivers,
      ...ofTubes,
      ...ofBraces,
    ) - radiusMm
  );
}

/** The place with most wood round it on a grid over the face; of equals the lowest, then the leftmost. */
function freestPlace(
  carcass: Carcass,
  face: BoxFace,
  plane: PipeFace,
  radiusMm: number,
  around: Neighbourhood,
): PointMm {
  const { xMinMm, xMaxMm, yMinMm, yMaxMm } = polygonExtent(plane.outline);
  let best = { xMm: (xMinMm + xMaxMm) / 2, yMm: (yMinMm + yMaxMm) / 2 };
  let bestMm = Number.NEGATIVE_INFINITY;
  for (let row = 1; row < SEARCH_STEPS; row++) {
    for (let column = SEARCH_STEPS - 1; column > 0; column--) {
      const point = {
        xMm: xMinMm + ((xMaxMm - xMinMm) * column) / SEARCH_STEPS,
        yMm: yMinMm + ((yMaxMm - yMinMm) * row) / SEARCH_STEPS,
      };
      const roomMm = roomAt(carcass, face, plane, radiusMm, around, point);
      if (roomMm > bestMm + BETTER_MM) {
        best = point;
        bestMm = roomMm;
      }
    }
  }
  return best;
}

const BETTER_MM = 1e-6; // equal places must not be told apart by rounding

/** From the face's outermost wood, along the pipe, to the wall across from it: the shortest at the pipe's edge. */
function depthAlong(carcass: Carcass, face: BoxFace, tube: Tube): number {
  const { faceMm, inward, outerRadiusMm } = tube;
  if (face === 'left' || face === 'right') return (carcass.widthMm + carcass.innerWidthMm) / 2;
  const across = { x: -inward.y, y: inward.x };
  const start = { xMm: faceMm.x, yMm: faceMm.y };
  const depths = [-1, 1].flatMap((side) => {
    const edge = moved(start, across, side * outerRadiusMm);
    return carcass.walls.flatMap((wall, index) => {
      const closing = inward.x * wall.out.x + inward.y * wall.out.y;
      if (wall.face === face || closing < LEVEL) return [];
      const corner = ringAt(carcass.free, index);
      const depthMm = distanceAlong(edge, corner, wall.out) / closing;
      return carcass.isHollow &&
        !liesBeside(carcass, index, moved(edge, { x: inward.x, y: inward.y }, depthMm))
        ? []
        : [depthMm];
    });
  });
  return Math.min(...depths);
}

const LEVEL = 1e-9; // cosine below which a wall runs along the pipe and never ends it

function refuseTube(tube: TubePort, carcass: Carcass, field: string): Refusal | null {
  const woodMm = faceWoodMm(carcass, tube.face);
  const leastMm = Math.max(woodMm, tube.outerFlareMm + tube.innerFlareMm);
  if (tube.lengthMm < leastMm) {
    return refuse(`${field}.lengthMm`, {
      allowed: `at least ${shown(leastMm)} mm: the wood it goes through, and its flares`,
      got: tube.lengthMm,
      why: `the port is ${shown(leastMm - tube.lengthMm)} mm shorter than that`,
    });
  }
  if (tube.at === null || tube.at.length === tube.count) return null;
  const why = `${tube.count} pipes need ${tube.count} places`;
  return refuse(`${field}.at`, { allowed: `${tube.count} places`, got: tube.at.length, why });
}

/** Lays out pipes alike, or refuses what they cannot be. They go where they were put, even into something. */
export function layOutTubes(
  port: TubePort,
  number: number,
  carcass: Carcass,
  around: Neighbourhood,
): LaidPort | Refusal {
  const field = `ports[${number - 1}]`;
  const plane = pipeFace(carcass, port.face);
  if (plane === null) {
    const allowed = [...carcass.walls.map((wall) => wall.face), 'left', 'right'].join(', ');
    return refuse(`${field}.face`, { allowed, got: port.face, why: `this box has no ${port.face} wall` });
  }
  const refusal = refuseTube(port, carcass, field);
  if (refusal !== null) return refusal;
  const woodMm = faceWoodMm(carcass, port.face);
  const outerRadiusMm = tubeRadiusMm(port, woodMm);
  const holeRadiusMm = tubeHoleDiaMm(port) / 2;
  const tubes: Tube[] = [];
  for (let index = 0; index < port.count; index++) {
    const given = port.at?.[index];
    const radiusMm = Math.max(outerRadiusMm, holeRadiusMm);
    const seen = { ...around, tubes: [...around.tubes, ...tubes] };
    const point =
      given === undefined
        ? freestPlace(carcass, port.face, plane, radiusMm, seen)
        : { xMm: given.acrossMm, yMm: given.upMm };
    const { inward } = plane;
    const faceMm = plane.at(point.xMm, point.yMm);
    tubes.push({ faceMm, inward, outerRadiusMm, lengthMm: port.lengthMm });
  }
  return laidTubes(port, number, carcass, tubes);
}

function laidTubes(port: TubePort, number: number, carcass: Carcass, tubes: readonly Tube[]): LaidPort {
  const woodMm = faceWoodMm(carcass, port.face);
  const openMm2 = (port.count * Math.PI * port.insideDiaMm ** 2) / 4;
  const depthMm = Math.min(...tubes.map((tube) => depthAlong(carcass, port.face, tube)));
  const first = ringAt(tubes, 0);
  return {
    placed: {
      number,
      kind: 'tube',
      face: port.face,
      count: port.count,
      openAreaCm2: openMm2 / 100,
      lengthMm: port.lengthMm,
      bends: 0,
      airLitres: (openMm2 * port.lengthMm) / LITRE_MM3,
      mouthLitres: 0,
      displacedLitres: (port.count * tubeDisplacedMm3(port, woodMm)) / LITRE_MM3,
      centreLineMm: [first.faceMm, along(first.faceMm, first.inward, port.lengthMm)],
      endRoomMm: depthMm - port.lengthMm,
      neededRoomMm: port.insideDiaMm,
      section: null,
    },
    askedMm: port.lengthMm,
    roomMm: depthMm - CLEAR_MIN_MM,
    boards: [],
    inDoublersLitres: 0,
    mouth: null,
    sideMouth: null,
    channel: null,
    stretch: null,
    tubes,
    coversCorners: [],
    coversSeams: [],
    taken: null,
    weights: tubes.map(({ faceMm, inward }) => ({
      amount: port.massKg,
      at: along(faceMm, inward, port.lengthMm / 2),
    })),
  };
}

/** How far a pipe reaches into the walls and sides beside it. */
export function tubeInWallsMm(
  carcass: Carcass,
  face: BoxFace,
  { faceMm, inward, outerRadiusMm, lengthMm }: Tube,
): { readonly face: BoxFace; readonly byMm: number }[] {
  const half = carcass.innerWidthMm / 2;
  const ends = [faceWoodMm(carcass, face), lengthMm].map((mm) => along(faceMm, inward, mm));
  const isAcross = face === 'left' || face === 'right';
  const sides = isAcross
    ? []
    : [
        { face: 'left' as const, byMm: faceMm.z + outerRadiusMm - half },
        { face: 'right' as const, byMm: outerRadiusMm - faceMm.z - half },
      ];
  const walls = carcass.walls.flatMap((wall, index) => {
    if (wall.face === face || inward.x * wall.out.x + inward.y * wall.out.y > LEVEL) return [];
    const corner = inSpace(ringAt(carcass.free, index), faceMm.z);
    const out = { x: wall.out.x, y: wall.out.y, z: 0 };
    const nearest = ends.filter(
      (end) => !carcass.isHollow || liesBeside(carcass, index, { xMm: end.x, yMm: end.y }),
    );
    if (nearest.length === 0) return [];
    const byMm = Math.max(...nearest.map((end) => reach(corner, end, out))) + outerRadiusMm;
    return [{ face: wall.face, byMm }];
  });
  return [...sides, ...walls];
}

// Where the drivers sit, and what is cut for them. Rules of hole and recess sizes: the shop's own, from practice.
import type {
  BoxDesign,
  DriverBody,
  DriverPosition,
  Finish,
  MountedDrivers,
  PlacedDriver,
  Vector,
  WallFace,
} from '@gusset/contracts/enclosure';
import type { PointMm } from '@gusset/contracts/geometry';
import { baffleBuildMm, type Carcass } from './carcass.ts';
import { airOf, type ChamberPlace, type DividerLayout } from './divider.ts';
import { distanceAlong, moved } from './plane.ts';
import type { LaidPort } from './port-types.ts';
import { ringAt } from './ring.ts';
import { along, inSpace } from './vector.ts';
import { type FaceAxis, insetMeet, upTheFace } from './wall-ring.ts';

/** Play round a flange in its recess, each side, so that it goes in after the finish. */
export const RECESS_PLAY_MM = 1;

/** Holes that the finished wood needs for one driver. */
export type DriverHoles = {
  readonly cutoutDiaMm: number;
  readonly recessDiaMm: number | null;
  readonly recessDepthMm: number;
  /** How far the flange ends up in front of the finished face. */
  readonly proudMm: number;
  /** What shows on the face: the recess, or the flange of a driver that lies on it. */
  readonly faceDiaMm: number;
};

/** One driver in its place. Points of the side view carry no z of their own. */
export type Seat = {
  readonly number: number;
  readonly position: DriverPosition;
  /** Centre on the outermost wood, and at the underside of the flange. */
  readonly faceMm: Vector;
  readonly seatMm: Vector;
  readonly seatPoint: PointMm;
};

/** Everything about the drivers that depends on the box. */
export type DriverLayout = {
  readonly drivers: MountedDrivers;
  readonly body: DriverBody;
  readonly holes: DriverHoles;
  readonly axis: FaceAxis;
  /** Out of the box, along the drivers. */
  readonly out: Vector;
  readonly seats: readonly Seat[];
};

export function finishOnMm(finish: Finish, face: WallFace | 'left' | 'right'): number {
  switch (face) {
    case 'bottom':
      return finish.bottomMm;
    case 'front':
      return finish.frontMm;
    case 'top':
      return finish.topMm;
    case 'back':
      return finish.backMm;
    case 'left':
      return finish.leftMm;
    case 'right':
      return finish.rightMm;
    default:
      return finish.slopesMm;
  }
}

function driverHoles(
  { finish, cutoutClearanceMm, baffle }: BoxDesign,
  { body, mount }: MountedDrivers,
): DriverHoles {
  const finishMm = finishOnMm(finish, baffle.face);
  const wrappedMm = finish.wrapsOpenings ? finishMm : 0;
  const cutoutDiaMm = body.cutoutDiaMm + cutoutClearanceMm + 2 * wrappedMm;
  const flangeMm = body.flangeThicknessMm + body.gasketThicknessMm;
  // A flange pinches what lies under it: in a recess only a finish that is tucked in, on the face any finish.
  const recessDepthMm = flangeMm - finishMm + (finish.wrapsOpenings ? finish.compressedMm : 0);
  if (mount === 'surface' || recessDepthMm <= 0) {
    const proudMm = Math.max(0, flangeMm + Math.min(finish.compressedMm, finishMm) - finishMm);
    return { cutoutDiaMm, recessDiaMm: null, recessDepthMm: 0, proudMm, faceDiaMm: body.overallDiaMm };
  }
  const recessDiaMm = body.overallDiaMm + 2 * wrappedMm + 2 * RECESS_PLAY_MM;
  return { cutoutDiaMm, recessDiaMm, recessDepthMm, proudMm: 0, faceDiaMm: recessDiaMm };
}

/** Between a grille and a cone at full travel. */
export const GRILLE_ROOM_MM = 6;

/** Room that a grille needs in front of the finished face; null where the travel is not stated. */
export function grilleRoomMm({ body, holes }: DriverLayout): number | null {
  return body.xmechMm === null ? null : body.xmechMm + GRILLE_ROOM_MM + holes.proudMm;
}

/** Equal gaps from inner face to recess, between recesses, and to the other inner face. */
export function evenRowZMm(count: number, faceDiaMm: number, innerWidthMm: number): number[] {
  const gapMm = (innerWidthMm - count * faceDiaMm) / (count + 1);
  const pitchMm = gapMm + faceDiaMm;
  return Array.from({ length: count }, (_, index) => (index - (count - 1) / 2) * pitchMm);
}

/** Clear baffle behind which nothing of a slot lies: up the face, and across. */
function baffleRoom(
  carcass: Carcass,
  { foot, up }: FaceAxis,
  { slots, divider, chamber }: DriverSurroundings,
) {
  const { baffleIndex, walls, baffle } = carcass;
  const own = slots.filter(({ placed }) => placed.face === baffle.face);
  const end = (corner: number, neighbour: number) => {
    const mouth = own.find(
      (slot) => slot.mouth?.alongIndex === (neighbour + walls.length) % walls.length,
    )?.mouth;
    const boardMm = carcass.sideStock.thicknessMm;
    const point =
      mouth === undefined || mouth === null
        ? ringAt(carcass.free, corner)
        : insetMeet(baffle, baffleBuildMm(carcass).inMm, ringAt(walls, neighbour), mouth.insetMm + boardMm);
    return distanceAlong(foot, point, up);
  };
  const taken = (side: 'left' | 'right') =>
    own
      .filter(({ sideMouth }) => sideMouth?.side === side)
      .reduce((sum, { sideMouth }) => sum + (sideMouth?.widthMm ?? 0) + carcass.sideStock.thicknessMm, 0);
  const half = carcass.innerWidthMm / 2;
  const across = divider === null ? null : airOf(divider, chamber).across;
  const rightMm = Math.max(taken('right') - half, across?.fromMm ?? -half);
  const leftMm = Math.min(half - taken('left'), across?.toMm ?? half);
  const ends = [end(baffleIndex, baffleIndex - 1), end(baffleIndex + 1, baffleIndex + 1)];
  const [from, to] = besideDivider(carcass, { foot, up }, { divider, chamber }, ends);
  return {
    upMm: (from + to) / 2,
    widthMm: leftMm - rightMm,
    middleZMm: (leftMm + rightMm) / 2,
  };
}

/** What drivers without a place of their own keep off. `chamber`: the one behind them, where a divider ends on the
 * baffle. */
export type DriverSurroundings = {
  readonly slots: readonly LaidPort[];
  readonly divider: DividerLayout | null;
  readonly chamber: ChamberPlace;
};

/** Ends of the clear baffle, up the face, in one of the chambers that a divider makes behind it. */
function besideDivider(
  carcass: Carcass,
  { foot, up }: Pick<FaceAxis, 'foot' | 'up'>,
  { divider, chamber }: Pick<DriverSurroundings, 'divider' | 'chamber'>,
  ends: readonly number[],
): readonly [number, number] {
  const { baffle, baffleIndex } = carcass;
  const section = divider?.section ?? null;
  const isCut = section?.ends.includes(baffleIndex) ?? false;
  if (section === null || !isCut) return [ringAt(ends, 0), ringAt(ends, 1)];
  const depthMm = chamber === 'near' ? section.nearMm : section.farMm;
  const meet = insetMeet(baffle, baffleBuildMm(carcass).inMm, section.parallel, depthMm);
  const endAt = (at: number) => {
    const point = ringAt(carcass.free, baffleIndex + at);
    const isNear = -distanceAlong(section.parallel.from, point, section.parallel.out) < section.nearMm;
    return isNear === (chamber === 'near') ? ringAt(ends, at) : distanceAlong(foot, meet, up);
  };
  return [endAt(0), endAt(1)];
}

/** Null for a box without drivers. */
export function layOutDrivers(
  design: BoxDesign,
  carcass: Carcass,
  surroundings: DriverSurroundings,
): DriverLayout | null {
  const { drivers } = design;
  if (drivers === null) return null;
  const holes = driverHoles(design, drivers);
  const axis = upTheFace(carcass.baffle);
  const { outMm } = baffleBuildMm(carcass);
  const out = { x: carcass.baffle.out.x, y: carcass.baffle.out.y, z: 0 };
  const { upMm, widthMm, middleZMm } = baffleRoom(carcass, axis, surroundings);
  const positions =
    drivers.positions ??
    evenRowZMm(drivers.count, holes.faceDiaMm, widthMm).map((zMm) => ({ zMm: middleZMm + zMm, upMm }));
  const seats = positions.map((position, index) => {
    const facePoint = moved(moved(axis.foot, axis.up, position.upMm), carcass.baffle.out, outMm);
    const faceMm = inSpace(facePoint, position.zMm);
    const seatPoint = moved(facePoint, carcass.baffle.out, -holes.recessDepthMm);
    return {
      number: index + 1,
      position,
      faceMm,
      seatMm: along(faceMm, out, -holes.recessDepthMm),
      seatPoint,
    };
  });
  return { drivers, body: drivers.body, holes, axis, out, seats };
}

/** Hull of a driver in the side view: flange in front of the seat, frame tapering from cut-out to magnet behind. */
export function driverSection({ body, axis, out }: DriverLayout, seat: Seat): PointMm[] {
  const at = (upMm: number, outMm: number) => moved(moved(seat.seatPoint, axis.up, upMm), out, outMm);
  const flange = body.overallDiaMm / 2;
  const frame = body.cutoutDiaMm / 2;
  const magnet = body.magnetDiaMm / 2;
  const upper = [
    at(flange, body.flangeThicknessMm),
    at(flange, 0),
    at(frame, 0),
    at(magnet, -body.mountingDepthMm),
  ];
  const lower = [
    at(-magnet, -body.mountingDepthMm),
    at(-frame, 0),
    at(-flange, 0),
    at(-flange, body.flangeThicknessMm),
  ];
  const around = [...upper, ...lower];
  // `up` × `out` turns clockwise where up follows the ring, so the order above is counter-clockwise only there.
  return axis.runsUp ? around : around.reverse();
}

export function placedDriver(
  layout: DriverLayout,
  seat: Seat,
  depth: { readonly depthAtMagnetEdgeMm: number; readonly neededDepthMm: number },
): PlacedDriver {
  const { holes, out } = layout;
  return {
    number: seat.number,
    ...seat.position,
    seatMm: seat.seatMm,
    axis: out,
    cutoutDiaMm: holes.cutoutDiaMm,
    recessDiaMm: holes.recessDiaMm,
    recessDepthMm: holes.recessDiaMm === null ? null : holes.recessDepthMm,
    proudMm: holes.proudMm,
    grilleRoomMm: grilleRoomMm(layout),
    ...depth,
    section: driverSection(layout, seat),
  };
}

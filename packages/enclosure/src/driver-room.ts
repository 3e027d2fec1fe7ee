// Room behind a driver, measured where it runs out first: at the magnet's edge, not on the axis. The hull of a
// driver behind the baffle is a cone from the cut-out to the magnet's rear; a box without hollows holds it exactly
// when it holds both ends, so both discs are held against every wall. Beside a hollow corner discs between them count
// too, and a wall only where it is.
import type { BoxFinding } from '@gusset/contracts/enclosure';
import type { PointMm } from '@gusset/contracts/geometry';
import { baffleBuildMm, type Carcass, liesBeside } from './carcass.ts';
import { deepest } from './deepest.ts';
import type { DriverLayout, Seat } from './driver-layout.ts';
import { distanceAlong, moved } from './plane.ts';
import { ringAt } from './ring.ts';
import { roomInRing } from './simple-polygon.ts';
import type { Wall } from './wall-ring.ts';

/** Behind a vented pole: at least this, or the vent's own diameter. */
export const VENT_ROOM_MM = 25;
/** Behind a closed magnet: upper end of the usual 10 to 12 mm. */
export const MAGNET_ROOM_MM = 12;
/** Beside a driver that breathes through its frame. */
export const SIDE_VENT_ROOM_MM = 25;
const TOUCH_MM = 1e-6; // touching is not meeting

type Edge = 'lower' | 'upper';

/** A wall's inner face, doublers counted. */
export type InnerWall = { readonly wall: Wall; readonly corner: PointMm; readonly index: number };

export type DriverDepth = {
  readonly depthAtMagnetEdgeMm: number;
  readonly neededDepthMm: number;
  readonly facing: { readonly inner: InnerWall; readonly edge: Edge; readonly at: PointMm } | null;
};

/** Walls that can stand in a driver's way: all but the baffle. */
export function otherWalls(carcass: Carcass): readonly InnerWall[] {
  return carcass.walls
    .map((wall, index) => ({ wall, corner: ringAt(carcass.free, index), index }))
    .filter((_, index) => index !== carcass.baffleIndex);
}

/** Distance from a wall's inner face, positive on the air side. */
const clearOf = ({ wall, corner }: InnerWall, point: PointMm) => -distanceAlong(corner, point, wall.out);

/** Whether a wall is there at a point: everywhere along its line in a box without hollows. */
const isThere = (carcass: Carcass, { index }: InnerWall, point: PointMm) =>
  !carcass.isHollow || liesBeside(carcass, index, point);

/** Lower and upper end of a disc across the driver, `depthMm` behind the seat. */
export function discEdges(layout: DriverLayout, seat: Seat, depthMm: number, radiusMm: number) {
  const centre = moved(seat.seatPoint, { x: layout.out.x, y: layout.out.y }, -depthMm);
  return [
    { edge: 'lower' as const, point: moved(centre, layout.axis.up, -radiusMm) },
    { edge: 'upper' as const, point: moved(centre, layout.axis.up, radiusMm) },
  ];
}

export function neededRoomMm({ body }: DriverLayout): number {
  return body.poleVentDiaMm === null ? MAGNET_ROOM_MM : Math.max(VENT_ROOM_MM, body.poleVentDiaMm);
}

const LEVEL = 1e-9; // cosine below which a wall runs along the driver and never ends its depth

/** Depth from the seat along the axis to the first wall that looks at the magnet, at the worse edge. */
export function driverDepth(carcass: Carcass, layout: DriverLayout, seat: Seat): DriverDepth {
  const neededDepthMm = layout.body.mountingDepthMm + neededRoomMm(layout);
  const inward = { x: -layout.out.x, y: -layout.out.y };
  let shortest: DriverDepth | null = null;
  for (const { edge, point } of discEdges(layout, seat, 0, layout.body.magnetDiaMm / 2)) {
    for (const inner of otherWalls(carcass)) {
      const closing = inward.x * inner.wall.out.x + inward.y * inner.wall.out.y;
      if (closing < LEVEL) continue;
      const depthMm = clearOf(inner, point) / closing;
      if (!isThere(carcass, inner, moved(point, inward, depthMm))) continue;
      if (shortest === null || depthMm < shortest.depthAtMagnetEdgeMm) {
        const at = moved(point, inward, depthMm);
        shortest = { depthAtMagnetEdgeMm: depthMm, neededDepthMm, facing: { inner, edge, at } };
      }
    }
  }
  // A closed side view always has a wall that looks back at the baffle.
  return shortest ?? { depthAtMagnetEdgeMm: 0, neededDepthMm, facing: null };
}

/** Inside a box with hollows, where a wall's line alone says nothing. */
const isHeld = (carcass: Carcass, point: PointMm) => carcass.isHollow && roomInRing(carcass.free, point) >= 0;

/** Slices of a cone between two discs that a hollow corner may reach into. */
const SLICES = 8;

type Meeting = Extract<BoxFinding, { code: 'driver-meets-wall' }>;

/** Where one disc of the hull lies in a wall or a side: the deepest place for each of them. */
function discMeetings(
  carcass: Carcass,
  layout: DriverLayout,
  seat: Seat,
  disc: { readonly part: Meeting['part']; readonly depthMm: number; readonly radiusMm: number },
): Meeting[] {
  const { part, depthMm, radiusMm } = disc;
  const edges = discEdges(layout, seat, depthMm, radiusMm);
  const centre = moved(seat.seatPoint, { x: layout.out.x, y: layout.out.y }, -depthMm);
  const walls = otherWalls(carcass).flatMap((inner) =>
    edges
      .filter(({ point }) => isThere(carcass, inner, point) && !isHeld(carcass, point))
      .map(
        ({ edge, point }): Meeting => ({
          code: 'driver-meets-wall',
          part,
          driver: seat.number,
          face: inner.wall.face,
          edge,
          byMm: -clearOf(inner, point),
          at: point,
        }),
      ),
  );
  const sides = (['left', 'right'] as const).map((side): Meeting => {
    const reachMm = (side === 'left' ? 1 : -1) * seat.position.zMm + radiusMm;
    return {
      code: 'driver-meets-wall',
      part,
      driver: seat.number,
      face: side,
      edge: side,
      byMm: reachMm - carcass.innerWidthMm / 2,
      at: centre,
    };
  });
  return [...walls, ...sides].filter(({ byMm }) => byMm > TOUCH_MM);
}

/** Both ends of every driver's hull against every wall; of several meetings with one wall, the deepest. */
export function wallMeetings(carcass: Carcass, layout: DriverLayout): BoxFinding[] {
  const { outMm, inMm } = baffleBuildMm(carcass);
  const behindSeatMm = outMm + inMm - layout.holes.recessDepthMm;
  const discs = [
    { part: 'frame' as const, depthMm: behindSeatMm, radiusMm: layout.body.cutoutDiaMm / 2 },
    { part: 'magnet' as const, depthMm: layout.body.mountingDepthMm, radiusMm: layout.body.magnetDiaMm / 2 },
  ];
  const [frame, magnet] = [ringAt(discs, 0), ringAt(discs, 1)];
  const between = Array.from({ length: carcass.isHollow ? SLICES : 0 }, (_, slice) => {
    const share = (slice + 1) / (SLICES + 1);
    return {
      part: 'frame' as const,
      depthMm: frame.depthMm + (magnet.depthMm - frame.depthMm) * share,
      radiusMm: frame.radiusMm + (magnet.radiusMm - frame.radiusMm) * share,
    };
  });
  const meetings = layout.seats.flatMap((seat) =>
    [...discs, ...between].flatMap((disc) => discMeetings(carcass, layout, seat, disc)),
  );
  return deepest(meetings, ({ part, face }) => `${part} ${face}`);
}

/** Too little air behind a magnet that does fit. */
export function magnetRoomFindings(carcass: Carcass, layout: DriverLayout): BoxFinding[] {
  const { mountingDepthMm, poleVentDiaMm } = layout.body;
  const short = layout.seats.flatMap((seat) => {
    const { depthAtMagnetEdgeMm, facing } = driverDepth(carcass, layout, seat);
    const roomMm = depthAtMagnetEdgeMm - mountingDepthMm;
    const neededMm = neededRoomMm(layout);
    if (facing === null || roomMm < 0 || roomMm >= neededMm - TOUCH_MM) return [];
    return [
      {
        code: 'magnet-room-short' as const,
        driver: seat.number,
        face: facing.inner.wall.face,
        edge: facing.edge,
        vented: poleVentDiaMm !== null,
        roomMm,
        neededMm,
        byMm: neededMm - roomMm,
        at: facing.at,
      },
    ];
  });
  return deepest(short, ({ face }) => face);
}

/** Frames that breathe sideways need air beside the cut-out, towards walls and sides. */
export function sideVentFindings(carcass: Carcass, layout: DriverLayout): BoxFinding[] {
  if (!layout.body.sideVents) return [];
  const { outMm, inMm } = baffleBuildMm(carcass);
  const depthMm = outMm + inMm - layout.holes.recessDepthMm;
  const radiusMm = layout.body.cutoutDiaMm / 2;
  const short = layout.seats.flatMap((seat) => {
    const edges = discEdges(layout, seat, depthMm, radiusMm);
    const walls = otherWalls(carcass).map((inner) => ({
      face: inner.wall.face,
      roomMm: Math.min(
        ...edges
          .filter(({ point }) => isThere(carcass, inner, point))
          .map(({ point }) => clearOf(inner, point)),
      ),
    }));
    const half = carcass.innerWidthMm / 2 - radiusMm;
    const sides = [
      { face: 'left' as const, roomMm: half - seat.position.zMm },
      { face: 'right' as const, roomMm: half + seat.position.zMm },
    ];
    return [...walls, ...sides]
      .filter(({ roomMm }) => roomMm < SIDE_VENT_ROOM_MM - TOUCH_MM)
      .map(({ face, roomMm }) => ({
        code: 'side-vent-room-short' as const,
        driver: seat.number,
        face,
        roomMm,
        neededMm: SIDE_VENT_ROOM_MM,
        byMm: SIDE_VENT_ROOM_MM - roomMm,
      }));
  });
  return deepest(short, ({ face }) => face);
}

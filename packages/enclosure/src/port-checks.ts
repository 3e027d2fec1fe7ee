// What a port runs into: its own length, the wall across from its end, braces, drivers, other ports.
import type { BoxFinding, Vector } from '@gusset/contracts/enclosure';
import type { PointMm } from '@gusset/contracts/geometry';
import { baffleBuildMm, type Carcass } from './carcass.ts';
import { deepest } from './deepest.ts';
import type { DriverLayout, Seat } from './driver-layout.ts';
import type { MarkedBoard } from './panel-list.ts';
import type { LaidPort, Tube } from './port-types.ts';
import { roomInRing } from './simple-polygon.ts';
import { tubeInWallsMm } from './tube-port.ts';
import { along } from './vector.ts';

const TOUCH_MM = 1e-6; // touching is not meeting
const SAMPLES = 12; // discs along a body that is not a cylinder, or lies askew

function lengthFindings({ placed, askedMm, roomMm }: LaidPort): BoxFinding[] {
  const { number: port, lengthMm, endRoomMm, neededRoomMm } = placed;
  if (askedMm > roomMm + TOUCH_MM) {
    return [{ code: 'port-too-long', port, lengthMm: askedMm, roomMm, byMm: askedMm - roomMm }];
  }
  const offMm = Math.abs(lengthMm - askedMm);
  const off: BoxFinding[] =
    offMm > TOUCH_MM ? [{ code: 'port-length-off', port, askedMm, builtMm: lengthMm, byMm: offMm }] : [];
  const shortMm = neededRoomMm - endRoomMm;
  return shortMm <= TOUCH_MM
    ? off
    : [...off, { code: 'port-end-close', port, roomMm: endRoomMm, neededMm: neededRoomMm, byMm: shortMm }];
}

/** A round slice of a driver or a pipe. */
type Disc = { readonly centre: Vector; readonly axis: Vector; readonly radiusMm: number };

function tubeDiscs({ faceMm, inward, outerRadiusMm, lengthMm }: Tube, fromMm: number): Disc[] {
  return Array.from({ length: SAMPLES + 1 }, (_, step) => ({
    centre: along(faceMm, inward, fromMm + ((lengthMm - fromMm) * step) / SAMPLES),
    axis: inward,
    radiusMm: outerRadiusMm,
  }));
}

function driverDiscs(carcass: Carcass, { body, out, holes }: DriverLayout, { seatMm }: Seat): Disc[] {
  const { outMm, inMm } = baffleBuildMm(carcass);
  const fromMm = Math.min(outMm + inMm - holes.recessDepthMm, body.mountingDepthMm);
  return Array.from({ length: SAMPLES + 1 }, (_, step) => {
    const depthMm = fromMm + ((body.mountingDepthMm - fromMm) * step) / SAMPLES;
    const share = depthMm / body.mountingDepthMm;
    return {
      centre: along(seatMm, out, -depthMm),
      axis: out,
      radiusMm: (body.cutoutDiaMm + (body.magnetDiaMm - body.cutoutDiaMm) * share) / 2,
    };
  });
}

/** How deep a disc lies in what a slot takes; 0 or less where it does not. */
function inSlotMm({ taken, stretch }: LaidPort, { centre, axis, radiusMm }: Disc): number {
  if (taken === null) return 0;
  const across = Math.abs(axis.z) > 0.5 ? 0 : radiusMm;
  const beyondMm =
    stretch === null
      ? Number.POSITIVE_INFINITY
      : Math.min(stretch.toMm - (centre.z - across), centre.z + across - stretch.fromMm);
  const up = Math.abs(axis.z) > 0.5 ? { x: 0, y: 1 } : { x: -axis.y, y: axis.x };
  const edges = [-radiusMm, 0, radiusMm].map(
    (mm): PointMm => ({ xMm: centre.x + up.x * mm, yMm: centre.y + up.y * mm }),
  );
  const deepMm = Math.max(...edges.map((edge) => roomInRing(taken, edge)));
  return Math.min(beyondMm, deepMm);
}

/** Overlap of two round bodies by their slices: exact for parallel ones. */
function discsOverlapMm(a: readonly Disc[], b: readonly Disc[]): number {
  return Math.max(
    ...a.flatMap((one) =>
      b.map((other) => {
        const { x, y, z } = other.centre;
        const apart = Math.hypot(x - one.centre.x, y - one.centre.y, z - one.centre.z);
        return one.radiusMm + other.radiusMm - apart;
      }),
    ),
  );
}

function driverFindings(carcass: Carcass, port: LaidPort, drivers: DriverLayout | null): BoxFinding[] {
  if (drivers === null) return [];
  const meetings = drivers.seats.map((seat) => {
    const discs = driverDiscs(carcass, drivers, seat);
    const inSlot = Math.max(...discs.map((disc) => inSlotMm(port, disc)));
    const inTubes = port.tubes.map((tube) => discsOverlapMm(discs, tubeDiscs(tube, 0)));
    return { driver: seat.number, byMm: Math.max(inSlot, ...inTubes) };
  });
  return deepest(
    meetings.filter(({ byMm }) => byMm > TOUCH_MM),
    () => '',
  ).map((meeting) => ({ code: 'port-meets-driver', port: port.placed.number, ...meeting }));
}

/** Braces tie the walls all round, so any of them that stands in a port's stretch is in its way. */
function braceFindings(
  carcass: Carcass,
  port: LaidPort,
  braces: readonly { readonly marked: MarkedBoard; readonly zMm: number }[],
): BoxFinding[] {
  const half = carcass.braceStock.thicknessMm / 2;
  const stretches = [
    ...(port.stretch === null ? [] : [port.stretch]),
    ...port.tubes.map(({ faceMm, inward, outerRadiusMm, lengthMm }) => {
      const endMm = faceMm.z + inward.z * lengthMm;
      const across = Math.abs(inward.z) > 0.5 ? 0 : outerRadiusMm;
      return { fromMm: Math.min(faceMm.z, endMm) - across, toMm: Math.max(faceMm.z, endMm) + across };
    }),
  ];
  const meetings = braces.flatMap(({ marked, zMm }) =>
    stretches.map(({ fromMm, toMm }) => ({
      panelId: marked.board.id,
      mark: marked.mark,
      byMm: Math.min(zMm + half - fromMm, toMm - (zMm - half)),
    })),
  );
  return deepest(
    meetings.filter(({ byMm }) => byMm > TOUCH_MM),
    ({ panelId }) => panelId,
  ).map((meeting) => ({ code: 'port-meets-brace', port: port.placed.number, ...meeting }));
}

function wallFindings(carcass: Carcass, { placed, tubes }: LaidPort): BoxFinding[] {
  const meetings = tubes.flatMap((tube) => tubeInWallsMm(carcass, placed.face, tube));
  return deepest(
    meetings.filter(({ byMm }) => byMm > TOUCH_MM),
    ({ face }) => face,
  ).map((meeting) => ({ code: 'port-meets-wall', port: placed.number, ...meeting }));
}

/** Two narrow slots from the same corner; two pipes; a pipe in a slot. */
function betweenMm(a: LaidPort, b: LaidPort): number {
  const ofTubes = a.tubes.flatMap((one) =>
    b.tubes.map((other) => discsOverlapMm(tubeDiscs(one, 0), tubeDiscs(other, 0))),
  );
  const inSlots = [
    ...a.tubes.flatMap((tube) => tubeDiscs(tube, 0).map((disc) => inSlotMm(b, disc))),
    ...b.tubes.flatMap((tube) => tubeDiscs(tube, 0).map((disc) => inSlotMm(a, disc))),
  ];
  return Math.max(0, ...ofTubes, ...inSlots, slotsOverlapMm(a, b));
}

function slotsOverlapMm(a: LaidPort, b: LaidPort): number {
  if (a.taken === null || b.taken === null) return 0;
  const all = { fromMm: Number.NEGATIVE_INFINITY, toMm: Number.POSITIVE_INFINITY };
  const [one, other] = [a.stretch ?? all, b.stretch ?? all];
  const acrossMm = Math.min(one.toMm - other.fromMm, other.toMm - one.fromMm);
  const [first, second] = [a.taken, b.taken];
  const deepMm = Math.max(
    ...first.map((corner) => roomInRing(second, corner)),
    ...second.map((corner) => roomInRing(first, corner)),
    ...first.map((corner, index) => {
      const next = first[(index + 1) % first.length] ?? corner;
      return roomInRing(second, { xMm: (corner.xMm + next.xMm) / 2, yMm: (corner.yMm + next.yMm) / 2 });
    }),
  );
  return Math.min(acrossMm, deepMm);
}

/** Everything that is wrong with the ports. */
export function portFindings(
  { carcass, mount, ports, drivers, braces }: PortedBox,
  boards: readonly MarkedBoard[],
): BoxFinding[] {
  const frames = boards
    .filter(({ board }) => board.role === 'brace')
    .map((marked) => ({ marked, zMm: marked.board.blankCentreMm.z }));
  const own = ports.flatMap((port) => [
    ...lengthFindings(port),
    ...wallFindings(carcass, port),
    ...driverFindings(mount, port, drivers),
    ...(braces.placesMm.length === 0 ? [] : braceFindings(carcass, port, frames)),
  ]);
  const pairs = ports.flatMap((a, index) =>
    ports.slice(index + 1).flatMap((b): BoxFinding[] => {
      const byMm = betweenMm(a, b);
      return byMm <= TOUCH_MM
        ? []
        : [{ code: 'ports-meet', ports: [a.placed.number, b.placed.number], byMm }];
    }),
  );
  return [...own, ...pairs];
}

type PortedBox = {
  readonly carcass: Carcass;
  readonly mount: Carcass;
  readonly ports: readonly LaidPort[];
  readonly drivers: DriverLayout | null;
  readonly braces: { readonly placesMm: readonly number[] };
};

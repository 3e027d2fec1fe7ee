// What would be wrong with a flat board once it is cut and its devices are on it.
import type { BoardDevice, FlatBoardFinding } from '@gusset/contracts/enclosure';
import type { PointMm } from '@gusset/contracts/geometry';
import type { PanelHole } from '@gusset/contracts/panel';
import { roomInRing } from '../simple-polygon.ts';
import { cornerOffcuts, type RoundedOutline } from './rounded-outline.ts';

/** Wood beside a screw or an opening in the face of MDF: maker's guides, 12 mm. */
const EDGE_WOOD_MM = 12;

type Frame = {
  readonly centre: PointMm;
  readonly halfXMm: number;
  readonly halfYMm: number;
  readonly radiusMm: number;
};

/** Hole or footprint as a rectangle with rounded corners; a circle is one whose radius is half its side. */
function frameOf(hole: PanelHole): Frame {
  const centre = { xMm: hole.centreXMm, yMm: hole.centreYMm };
  if (hole.shape === 'circle') {
    const radiusMm = hole.diameterMm / 2;
    return { centre, halfXMm: radiusMm, halfYMm: radiusMm, radiusMm };
  }
  return { centre, halfXMm: hole.widthMm / 2, halfYMm: hole.heightMm / 2, radiusMm: hole.cornerRadiusMm };
}

const deviceFrame = (device: BoardDevice): Frame => ({
  centre: device.centre,
  halfXMm: device.widthMm / 2,
  halfYMm: device.heightMm / 2,
  radiusMm: 0,
});

/** Centres of a frame's corner arcs. */
function arcCentres({ centre, halfXMm, halfYMm, radiusMm }: Frame): PointMm[] {
  return [-1, 1].flatMap((sx) =>
    [-1, 1].map((sy) => ({
      xMm: centre.xMm + sx * (halfXMm - radiusMm),
      yMm: centre.yMm + sy * (halfYMm - radiusMm),
    })),
  );
}

/** Wood between a frame and the sides of the board, below 0 where it runs off. Rounded corners of the board count. */
function edgeRoomMm(frame: Frame, outline: RoundedOutline): number {
  const { corners } = outline;
  const atArcs = arcCentres(frame).map((point) => roomInRounded(point, outline) - frame.radiusMm);
  // A hollow corner of the board may reach in between the frame's own corners.
  const atCorners = corners.map((corner) =>
    gapMm(frame, { centre: corner, halfXMm: 0, halfYMm: 0, radiusMm: 0 }),
  );
  return Math.min(...atArcs, ...atCorners);
}

/** Room from a point to the rounded outline: past an arc's centre towards the corner it is counted to the arc. */
function roomInRounded(point: PointMm, outline: RoundedOutline): number {
  const straight = roomInRing(outline.corners, point);
  const arcs = cornerOffcuts(outline).flatMap(({ arcCentre, corner, radiusMm }) => {
    const out = { x: corner.xMm - arcCentre.xMm, y: corner.yMm - arcCentre.yMm };
    const to = { x: point.xMm - arcCentre.xMm, y: point.yMm - arcCentre.yMm };
    const away = Math.hypot(to.x, to.y);
    // The arc's sector meets the sides squarely: the cosine of half its angle is radius over |out|.
    return out.x * to.x + out.y * to.y > away * radiusMm ? [radiusMm - away] : [];
  });
  return Math.min(straight, ...arcs);
}

/** Free room between two frames; below 0 they overlap by that much. */
function gapMm(a: Frame, b: Frame): number {
  const x = Math.abs(a.centre.xMm - b.centre.xMm) - (a.halfXMm - a.radiusMm) - (b.halfXMm - b.radiusMm);
  const y = Math.abs(a.centre.yMm - b.centre.yMm) - (a.halfYMm - a.radiusMm) - (b.halfYMm - b.radiusMm);
  const apart = x > 0 && y > 0 ? Math.hypot(x, y) : Math.max(x, y);
  return apart - a.radiusMm - b.radiusMm;
}

const pairs = <T>(all: readonly T[]) =>
  all.flatMap((a, index) => all.slice(index + 1).map((b) => [a, b] as const));

const SIDES = { left: [-1, 0], right: [1, 0], top: [0, 1], bottom: [0, -1] } as const;

/** The room that a hand needs beside a device, as a frame of its own. */
function accessFrame(device: BoardDevice): Frame | null {
  if (device.access === null || device.access.roomMm === 0) return null;
  const { side, roomMm } = device.access;
  const [sx, sy] = SIDES[side];
  const halfXMm = sx === 0 ? device.widthMm / 2 : roomMm / 2;
  const halfYMm = sy === 0 ? device.heightMm / 2 : roomMm / 2;
  const centre = {
    xMm: device.centre.xMm + sx * (device.widthMm / 2 + halfXMm),
    yMm: device.centre.yMm + sy * (device.heightMm / 2 + halfYMm),
  };
  return { centre, halfXMm, halfYMm, radiusMm: 0 };
}

function holeFindings(holes: readonly PanelHole[], outline: RoundedOutline): FlatBoardFinding[] {
  const edge = holes.flatMap((hole): FlatBoardFinding[] => {
    const frame = frameOf(hole);
    const gotMm = edgeRoomMm(frame, outline);
    if (gotMm >= EDGE_WOOD_MM) return [];
    const code = gotMm <= 0 ? 'hole-off-board' : 'hole-near-edge';
    return [{ code, about: [hole.purpose], gotMm, wantedMm: EDGE_WOOD_MM, atMm: frame.centre }];
  });
  const meet = pairs(holes).flatMap(([a, b]): FlatBoardFinding[] => {
    const gotMm = gapMm(frameOf(a), frameOf(b));
    return gotMm > 0
      ? []
      : [{ code: 'holes-meet', about: [a.purpose, b.purpose], gotMm, wantedMm: 0, atMm: frameOf(b).centre }];
  });
  return [...edge, ...meet];
}

function deviceFindings(
  devices: readonly BoardDevice[],
  openings: readonly PanelHole[],
  outline: RoundedOutline,
) {
  const findings: FlatBoardFinding[] = [];
  for (const device of devices) {
    const frame = deviceFrame(device);
    const roomMm = edgeRoomMm(frame, outline);
    const at = { wantedMm: 0, atMm: device.centre };
    if (roomMm < 0) findings.push({ code: 'device-off-board', about: [device.id], gotMm: roomMm, ...at });
    for (const hole of openings) {
      const gotMm = gapMm(frame, frameOf(hole));
      if (gotMm >= 0) continue;
      findings.push({ code: 'device-over-opening', about: [device.id, hole.purpose], gotMm, ...at });
    }
    const hand = accessFrame(device);
    for (const other of devices) {
      if (hand === null || other === device) continue;
      const gotMm = gapMm(hand, deviceFrame(other));
      if (gotMm >= 0) continue;
      findings.push({
        code: 'access-blocked',
        about: [device.id, other.id],
        gotMm,
        wantedMm: 0,
        atMm: hand.centre,
      });
    }
  }
  for (const [a, b] of pairs(devices)) {
    const gotMm = gapMm(deviceFrame(a), deviceFrame(b));
    const wantedMm = Math.max(a.airMm, b.airMm);
    if (gotMm >= wantedMm) continue;
    const atMm = { xMm: (a.centre.xMm + b.centre.xMm) / 2, yMm: (a.centre.yMm + b.centre.yMm) / 2 };
    findings.push({ code: 'devices-too-near', about: [a.id, b.id], gotMm, wantedMm, atMm });
  }
  return findings;
}

/** Holes against the outline and each other; devices against the board, its openings, and each other. */
export function boardFindings(board: {
  readonly outline: RoundedOutline;
  readonly openings: readonly PanelHole[];
  readonly fixings: readonly PanelHole[];
  readonly devices: readonly BoardDevice[];
}): FlatBoardFinding[] {
  const { outline, openings, fixings, devices } = board;
  return [...holeFindings([...openings, ...fixings], outline), ...deviceFindings(devices, openings, outline)];
}

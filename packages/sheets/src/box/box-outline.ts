// Points of a finished box for its drawings: where its corners stand, cuts through it, its baffle laid flat.
import type { BoxSheetResult } from '@gusset/contracts/box';
import type { PanelBody, Vector } from '@gusset/contracts/enclosure';
import type { PointMm, PolygonMm, Pose } from '@gusset/contracts/geometry';
import { posed } from '@gusset/drawings';

/** Upright with its lower back corner at the origin, for a box whose car nobody has measured. */
export const AT_ORIGIN: Pose = { xMm: 0, yMm: 0, thetaRad: 0, zMm: 0 };

export const poseIn = (result: BoxSheetResult): Pose => result.place?.pose ?? AT_ORIGIN;

export const at = (xMm: number, yMm: number): PointMm => ({ xMm, yMm });

/** Ends of one wall of the side view, stood there. */
export function wallEnds(
  { box }: BoxSheetResult,
  face: 'bottom' | 'top',
  pose: Pose,
): readonly [PointMm, PointMm] | null {
  const { walls, carcass } = box.section;
  const index = walls.indexOf(face);
  const [from, to] = [carcass[index], carcass[(index + 1) % carcass.length]];
  if (index < 0 || from === undefined || to === undefined) return null;
  const [a, b] = posed([from, to], pose);
  return a === undefined || b === undefined ? null : [a, b];
}

/** Where a level line crosses a polygon: from the first crossing to the last. */
export function spanAt(polygon: PolygonMm, yMm: number): readonly [number, number] | null {
  const xs = polygon.flatMap((from, index) => {
    const to = polygon[(index + 1) % polygon.length] ?? from;
    const [low, high] = [Math.min(from.yMm, to.yMm), Math.max(from.yMm, to.yMm)];
    if (yMm < low || yMm > high) return [];
    if (high === low) return [from.xMm, to.xMm];
    return [from.xMm + ((yMm - from.yMm) / (to.yMm - from.yMm)) * (to.xMm - from.xMm)];
  });
  return xs.length === 0 ? null : [Math.min(...xs), Math.max(...xs)];
}

/** Half the height of the wood as it stands. */
export function middleHeightMm(result: BoxSheetResult, pose: Pose): number {
  const ys = posed(result.box.section.wood, pose).map(({ yMm }) => yMm);
  return (Math.min(...ys) + Math.max(...ys)) / 2;
}

export const rectangle = (xFrom: number, xTo: number, yFrom: number, yTo: number): PolygonMm => [
  at(xFrom, yFrom),
  at(xTo, yFrom),
  at(xTo, yTo),
  at(xFrom, yTo),
];

export type FlatBaffle = {
  readonly outline: PolygonMm;
  /** Across as seen from outside, up along the face; null where the point is not of this box's baffle. */
  readonly flat: (point: Vector) => PointMm;
  readonly body: PanelBody;
};

/** The baffle's face as someone sees it who stands in front of it. */
export function flatBaffle({ box, design }: BoxSheetResult): FlatBaffle | null {
  const face = box.faces.find((each) => each.face === design.baffle.face);
  const body = box.bodies.find((each) => each.role === 'baffle');
  if (face === undefined || body === undefined) return null;
  const { xAxis, yAxis } = body.placement;
  const raw = (point: Vector) => at(dot(point, xAxis), dot(point, yAxis));
  const corners = face.cornersMm.map(raw);
  const leftMm = Math.min(...corners.map(({ xMm }) => xMm));
  const lowestMm = Math.min(...corners.map(({ yMm }) => yMm));
  const flat = (point: Vector) => {
    const { xMm, yMm } = raw(point);
    return at(xMm - leftMm, yMm - lowestMm);
  };
  return { outline: face.cornersMm.map(flat), flat, body };
}

const dot = (a: Vector, b: Vector) => a.x * b.x + a.y * b.y + a.z * b.z;

/** A point of a panel's own drawing as a point of the box. */
export function panelPoint({ placement }: PanelBody, { xMm, yMm }: PointMm, wMm = 0): Vector {
  const { originMm, xAxis, yAxis, normal } = placement;
  return {
    x: originMm.x + xMm * xAxis.x + yMm * yAxis.x + wMm * normal.x,
    y: originMm.y + xMm * xAxis.y + yMm * yAxis.y + wMm * normal.y,
    z: originMm.z + xMm * xAxis.z + yMm * yAxis.z + wMm * normal.z,
  };
}

// One panel as a body: two parallel faces, ends square or bevelled, and where it lies in the box.
import type { BoxFace, PanelBody, PanelStock, Placement, Vector } from '@gusset/contracts/enclosure';
import type { PointMm } from '@gusset/contracts/geometry';
import type { PanelEdge } from '@gusset/contracts/panel';
import type { EndJoint } from './corner-joints.ts';
import { distanceAlong, moved, polygonAreaMm2, polygonCentre, polygonExtent } from './plane.ts';
import { ringAt } from './ring.ts';
import { inSpace, reach } from './vector.ts';
import { insetMeet, upTheFace, type Wall } from './wall-ring.ts';

export type Board = {
  readonly id: string;
  readonly name: string;
  readonly role: PanelBody['role'];
  readonly face: BoxFace | null;
  readonly stock: PanelStock;
  readonly placement: Placement;
  readonly lengthMm: number;
  readonly widthMm: number;
  /** Local, as seen from outside: the rectangle or polygon to cut, and both faces within it. */
  readonly outline: PointMm[];
  readonly outerFace: PointMm[];
  readonly innerFace: PointMm[];
  readonly edges: PanelEdge[];
  readonly edgeLeans: PanelBody['edgeLeans'];
  readonly section: PointMm[] | null;
  /** Before holes. */
  readonly blankMm3: number;
  readonly blankCentreMm: Vector;
};

export type BoardNaming = Pick<Board, 'id' | 'name' | 'role' | 'face' | 'stock'>;

/** Cut of a wall panel in the side view: outer edge from start to end, inner edge back. */
export type WallCut = {
  readonly outerStart: PointMm;
  readonly outerEnd: PointMm;
  readonly innerEnd: PointMm;
  readonly innerStart: PointMm;
};

/** A neighbour's line at one end of a panel: its inset where the panel's outer and inner faces stop. */
export type EndStop = { readonly wall: Wall; readonly outerInsetMm: number; readonly innerInsetMm: number };

/** The slab of `wall` between two depths, cut off by its neighbours. */
export function wallCut(
  wall: Wall,
  depth: { readonly outerMm: number; readonly innerMm: number },
  start: EndStop,
  end: EndStop,
): WallCut {
  return {
    outerStart: insetMeet(wall, depth.outerMm, start.wall, start.outerInsetMm),
    outerEnd: insetMeet(wall, depth.outerMm, end.wall, end.outerInsetMm),
    innerEnd: insetMeet(wall, depth.innerMm, end.wall, end.innerInsetMm),
    innerStart: insetMeet(wall, depth.innerMm, start.wall, start.innerInsetMm),
  };
}

const SQUARE_MM = 1e-9; // an end this close to square is square: rounding, far below any saw

function lean(outerReachMm: number, innerReachMm: number): PanelBody['edgeLeans'][number] {
  if (Math.abs(outerReachMm - innerReachMm) < SQUARE_MM) return 'square';
  return outerReachMm > innerReachMm ? 'outer' : 'inner';
}

const rectangle = (lengthMm: number, fromMm: number, toMm: number): PointMm[] => [
  { xMm: 0, yMm: fromMm },
  { xMm: lengthMm, yMm: fromMm },
  { xMm: lengthMm, yMm: toMm },
  { xMm: 0, yMm: toMm },
];

/** One end of a wall panel, measured up the face: where its outer and its inner face stop. */
type PanelEnd = { readonly outerMm: number; readonly innerMm: number };

/** A cut turned the way its panel is looked at: lower end first. */
function endsUp(wall: Wall, cut: WallCut): { readonly low: PanelEnd; readonly high: PanelEnd } {
  const { foot, up, runsUp } = upTheFace(wall);
  const end = (outer: PointMm, inner: PointMm): PanelEnd => ({
    outerMm: distanceAlong(foot, outer, up),
    innerMm: distanceAlong(foot, inner, up),
  });
  const start = end(cut.outerStart, cut.innerStart);
  const stop = end(cut.outerEnd, cut.innerEnd);
  return runsUp ? { low: start, high: stop } : { low: stop, high: start };
}

const butt = (runsThrough: boolean): PanelEdge => ({ bevelRad: 0, joint: 'butt', runsThrough });
const free: PanelEdge = { bevelRad: 0, joint: 'free', runsThrough: false };

function endEdge(joint: EndJoint | null, { outerMm, innerMm }: PanelEnd, thicknessMm: number): PanelEdge {
  const leanMm = Math.abs(outerMm - innerMm);
  const bevelRad = leanMm < SQUARE_MM ? 0 : Math.atan(leanMm / thicknessMm);
  if (joint === null) return { ...free, bevelRad };
  const kind = joint === 'mitre' ? 'mitre' : joint === 'rabbeted' ? 'rabbet' : 'butt';
  return { bevelRad, joint: kind, runsThrough: joint === 'through' };
}

/** How a panel ends at both corners (null = in the air), and whether it runs over the sides. */
export type WallEnds = {
  readonly start: EndJoint | null;
  readonly end: EndJoint | null;
  readonly runsOverSides: boolean;
};

function wallEdges(wall: Wall, low: PanelEnd, high: PanelEnd, thicknessMm: number, ends: WallEnds | null) {
  const { runsUp } = upTheFace(wall);
  const lowJoint = ends === null ? null : runsUp ? ends.start : ends.end;
  const highJoint = ends === null ? null : runsUp ? ends.end : ends.start;
  const side = ends === null ? free : butt(ends.runsOverSides);
  return [endEdge(lowJoint, low, thicknessMm), side, endEdge(highJoint, high, thicknessMm), side];
}

function placementAcross(wall: Wall, footMm: PointMm, across: Across): Placement {
  const { up, runsUp } = upTheFace(wall);
  return {
    originMm: inSpace(footMm, runsUp ? across.zMaxMm : across.zMinMm),
    xAxis: { x: 0, y: 0, z: runsUp ? -1 : 1 }, // to the right, as seen from outside with `up` up
    yAxis: { x: up.x, y: up.y, z: 0 },
    normal: { x: wall.out.x, y: wall.out.y, z: 0 },
  };
}

export type Across = { readonly zMinMm: number; readonly zMaxMm: number };

/**
 * A panel that runs straight across the box with the given cut. `ends` is null for a doubler: it is glued by its
 * face, and its ends hold nothing.
 */
export function boardAcross(
  naming: BoardNaming,
  { wall, cut }: { readonly wall: Wall; readonly cut: WallCut },
  across: Across,
  ends: WallEnds | null,
): Board {
  const { low, high } = endsUp(wall, cut);
  const { foot, up } = upTheFace(wall);
  const bottomMm = Math.min(low.outerMm, low.innerMm);
  const widthMm = Math.max(high.outerMm, high.innerMm) - bottomMm;
  const lengthMm = across.zMaxMm - across.zMinMm;
  const section = [cut.outerStart, cut.outerEnd, cut.innerEnd, cut.innerStart];
  const outerFoot = moved(cut.outerStart, up, bottomMm - distanceAlong(foot, cut.outerStart, up));
  return {
    ...naming,
    placement: placementAcross(wall, outerFoot, across),
    lengthMm,
    widthMm,
    outline: rectangle(lengthMm, 0, widthMm),
    outerFace: rectangle(lengthMm, low.outerMm - bottomMm, high.outerMm - bottomMm),
    innerFace: rectangle(lengthMm, low.innerMm - bottomMm, high.innerMm - bottomMm),
    edges: wallEdges(wall, low, high, naming.stock.thicknessMm, ends),
    edgeLeans: [lean(-low.outerMm, -low.innerMm), 'square', lean(high.outerMm, high.innerMm), 'square'],
    section,
    blankMm3: polygonAreaMm2(section) * lengthMm,
    blankCentreMm: inSpace(polygonCentre(section), (across.zMinMm + across.zMaxMm) / 2),
  };
}

/**
 * A panel that lies in the plane of the side view: a side or a brace. `outerZMm` is where its outer face lies,
 * and `looksLeft` which way that face looks.
 */
export function boardUpright(
  naming: BoardNaming,
  polygon: readonly PointMm[],
  { outerZMm, looksLeft }: { readonly outerZMm: number; readonly looksLeft: boolean },
  runsThrough: boolean,
): Board {
  const { xMinMm, xMaxMm, yMinMm, yMaxMm } = polygonExtent(polygon);
  const { thicknessMm } = naming.stock;
  const sign = looksLeft ? 1 : -1;
  const local = polygon.map(({ xMm, yMm }) => ({
    xMm: looksLeft ? xMm - xMinMm : xMaxMm - xMm,
    yMm: yMm - yMinMm,
  }));
  const outline = looksLeft ? local : local.reverse();
  return {
    ...naming,
    placement: {
      originMm: { x: looksLeft ? xMinMm : xMaxMm, y: yMinMm, z: outerZMm },
      xAxis: { x: sign, y: 0, z: 0 },
      yAxis: { x: 0, y: 1, z: 0 },
      normal: { x: 0, y: 0, z: sign },
    },
    lengthMm: xMaxMm - xMinMm,
    widthMm: yMaxMm - yMinMm,
    outline,
    outerFace: outline,
    innerFace: outline,
    edges: outline.map(() => butt(runsThrough)),
    edgeLeans: outline.map(() => 'square'),
    section: null,
    blankMm3: polygonAreaMm2(polygon) * thicknessMm,
    blankCentreMm: inSpace(polygonCentre(polygon), outerZMm - (sign * thicknessMm) / 2),
  };
}

/** A point of the box on a board's own face. */
export function onBoard({ placement }: Board, point: Vector): PointMm {
  return {
    xMm: reach(placement.originMm, point, placement.xAxis),
    yMm: reach(placement.originMm, point, placement.yAxis),
  };
}

/** Round-trip of `onBoard`, `depthMm` below the outer face. */
export function offBoard({ placement }: Board, point: PointMm, depthMm: number): Vector {
  const { originMm, xAxis, yAxis, normal } = placement;
  const axis = (key: 'x' | 'y' | 'z') =>
    originMm[key] + xAxis[key] * point.xMm + yAxis[key] * point.yMm - normal[key] * depthMm;
  return { x: axis('x'), y: axis('y'), z: axis('z') };
}

/** Perimeter of a face, mm. */
export function girthMm(polygon: readonly PointMm[]): number {
  return polygon.reduce((sum, corner, index) => {
    const next = ringAt(polygon, index + 1);
    return sum + Math.hypot(next.xMm - corner.xMm, next.yMm - corner.yMm);
  }, 0);
}

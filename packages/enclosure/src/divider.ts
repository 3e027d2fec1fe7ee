// The wall between two chambers: parallel to a wall of the side view, or to the sides.
import type { BoxDesign, Chamber, Vector } from '@gusset/contracts/enclosure';
import type { PointMm } from '@gusset/contracts/geometry';
import { type Refusal, refuse } from '@gusset/units';
import { type Board, type BoardNaming, boardAcross, boardUpright, type EndStop, wallCut } from './board.ts';
import type { Carcass } from './carcass.ts';
import { CLEAR_MIN_MM, SLOT_CORNER_MIN_RAD } from './limits.ts';
import {
  clippedBelow,
  cross,
  type Direction,
  distanceAlong,
  isHollow,
  moved,
  polygonAreaMm2,
} from './plane.ts';
import type { Stretch } from './port-types.ts';
import { ringAt } from './ring.ts';
import { innerInsetMm } from './slot-channel.ts';
import { insetMeet, insetRing, type Wall } from './wall-ring.ts';

export type ChamberPlace = Chamber['place'];

/** The air of one chamber before anything stands in it. */
export type ChamberAir = { readonly ring: readonly PointMm[]; readonly across: Stretch };

/** A divider in the side view: depths of both its faces below the wall it stands parallel to, and where it ends. */
export type SectionDivider = {
  readonly parallel: Wall;
  readonly nearMm: number;
  readonly farMm: number;
  /** Walls that it ends on, by index, along the ring direction of `parallel`. */
  readonly ends: readonly [number, number];
};

export type DividerLayout = {
  readonly board: Board;
  readonly near: ChamberAir;
  readonly far: ChamberAir;
  /** Null where it stands parallel to the sides. */
  readonly section: SectionDivider | null;
  /** Across the box; null where it crosses the side view. */
  readonly stretch: Stretch | null;
  /** How far a point lies behind the divider's near face, towards the far chamber. */
  readonly behindMm: (point: Vector) => number;
  readonly thicknessMm: number;
};

const shown = (mm: number) => Number(mm.toFixed(2));

/** Chamber that a point lies in; inside the wood the one that it is nearer to. */
export function chamberAt({ behindMm, thicknessMm }: DividerLayout, point: Vector): ChamberPlace {
  return behindMm(point) < thicknessMm / 2 ? 'near' : 'far';
}

export function airOf(divider: DividerLayout, place: ChamberPlace): ChamberAir {
  return place === 'near' ? divider.near : divider.far;
}

function refuseClear(clearMm: number, roomMm: number): Refusal {
  return refuse('divider.clearMm', {
    allowed: `${CLEAR_MIN_MM} to ${shown(Math.max(0, roomMm))} mm, so that both chambers keep air`,
    got: clearMm,
    why: `it leaves ${shown(Math.min(clearMm, roomMm + CLEAR_MIN_MM - clearMm))} mm on one side`,
  });
}

const naming = (carcass: Carcass): BoardNaming => ({
  id: 'divider',
  name: 'Divider',
  role: 'divider',
  face: null,
  stock: carcass.sideStock,
});

function besideDivider(carcass: Carcass, side: 'left' | 'right', clearMm: number): DividerLayout | Refusal {
  const { thicknessMm } = carcass.sideStock;
  const half = carcass.innerWidthMm / 2;
  const roomMm = carcass.innerWidthMm - thicknessMm - CLEAR_MIN_MM;
  if (clearMm < CLEAR_MIN_MM || clearMm > roomMm) return refuseClear(clearMm, roomMm);
  const sign = side === 'left' ? 1 : -1;
  const nearZMm = sign * (half - clearMm);
  const farZMm = nearZMm - sign * thicknessMm;
  const between = (a: number, b: number): Stretch => ({ fromMm: Math.min(a, b), toMm: Math.max(a, b) });
  return {
    board: boardUpright(
      naming(carcass),
      carcass.free,
      { outerZMm: nearZMm, looksLeft: side === 'left' },
      false,
    ),
    near: { ring: carcass.free, across: between(nearZMm, sign * half) },
    far: { ring: carcass.free, across: between(-sign * half, farZMm) },
    section: null,
    stretch: between(nearZMm, farZMm),
    behindMm: ({ z }) => sign * (nearZMm - z),
    thicknessMm,
  };
}

/** Walls that a line at a depth below `parallel` crosses, from its start to its end. */
function crossed(carcass: Carcass, parallel: Wall, depthMm: number): number[] {
  const depthOf = (corner: PointMm) => -distanceAlong(parallel.from, corner, parallel.out) - depthMm;
  return carcass.walls
    .map((_, index) => index)
    .filter(
      (index) => depthOf(ringAt(carcass.free, index)) > 0 !== depthOf(ringAt(carcass.free, index + 1)) > 0,
    )
    .sort((a, b) => {
      const at = (index: number) =>
        distanceAlong(
          parallel.from,
          insetMeet(parallel, depthMm, ringAt(carcass.walls, index), innerInsetMm(carcass, index)),
          parallel.along,
        );
      return at(a) - at(b);
    });
}

function sectionEnds(carcass: Carcass, parallel: Wall, nearMm: number, farMm: number) {
  const [near, far] = [crossed(carcass, parallel, nearMm), crossed(carcass, parallel, farMm)];
  const [start, end] = near;
  if (near.length !== 2 || start === undefined || end === undefined) return null;
  if (far[0] !== start || far[1] !== end || far.length !== 2) return null;
  const isFlat = [start, end].some(
    (index) => Math.abs(cross(ringAt(carcass.walls, index).along, parallel.along)) < LEAST_SINE,
  );
  return isFlat ? null : ([start, end] as const);
}

/** A divider meets its walls at 45° to 135°, as a slot does. */
const LEAST_SINE = Math.sin(SLOT_CORNER_MIN_RAD) - 1e-9;

function acrossDivider(carcass: Carcass, index: number, clearMm: number): DividerLayout | Refusal {
  const parallel = ringAt(carcass.walls, index);
  const { thicknessMm } = carcass.sideStock;
  const nearMm = innerInsetMm(carcass, index) + clearMm;
  const farMm = nearMm + thicknessMm;
  const deepestMm = Math.max(
    ...carcass.free.map((corner) => -distanceAlong(parallel.from, corner, parallel.out)),
  );
  const roomMm = deepestMm - innerInsetMm(carcass, index) - thicknessMm - CLEAR_MIN_MM;
  if (clearMm < CLEAR_MIN_MM || clearMm > roomMm) return refuseClear(clearMm, roomMm);
  const ends = sectionEnds(carcass, parallel, nearMm, farMm);
  if (ends === null) {
    return refuse('divider.clearMm', {
      allowed: 'a place where both its ends meet one wall each, at 45 to 135 degrees',
      got: clearMm,
      why: `parallel to the ${parallel.face} it ends in a corner there, or meets a wall too flat`,
    });
  }
  const stop = (wall: number): EndStop => ({
    wall: ringAt(carcass.walls, wall),
    outerInsetMm: innerInsetMm(carcass, wall),
    innerInsetMm: innerInsetMm(carcass, wall),
  });
  const cut = wallCut(parallel, { outerMm: nearMm, innerMm: farMm }, stop(ends[0]), stop(ends[1]));
  const half = carcass.innerWidthMm / 2;
  const across = { fromMm: -half, toMm: half };
  const away: Direction = { x: -parallel.out.x, y: -parallel.out.y };
  const faceAt = (depthMm: number) => moved(parallel.from, parallel.out, -depthMm);
  return {
    board: boardAcross(
      naming(carcass),
      { wall: parallel, cut },
      { zMinMm: -half, zMaxMm: half },
      { start: 'covered', end: 'covered', runsOverSides: false },
    ),
    near: { ring: clippedBelow(carcass.free, faceAt(nearMm), away), across },
    far: { ring: clippedBelow(carcass.free, faceAt(farMm), parallel.out), across },
    section: { parallel, nearMm, farMm, ends },
    stretch: null,
    behindMm: ({ x, y }) => distanceAlong(faceAt(nearMm), { xMm: x, yMm: y }, away),
    thicknessMm,
  };
}

/** Null for a box of one chamber; refused where the divider leaves no chamber, or does not end on one wall each. */
export function layOutDivider(design: BoxDesign, carcass: Carcass): DividerLayout | null | Refusal {
  const { divider } = design;
  if (divider === null) return null;
  const { parallelTo, clearMm } = divider;
  if (parallelTo === 'left' || parallelTo === 'right') {
    if (divider.drivers === 'baffle') return besideDivider(carcass, parallelTo, clearMm);
    return refuse('divider.drivers', {
      allowed: 'drivers on the baffle, or a divider parallel to a wall across the box',
      got: divider.drivers,
      why: 'drivers are not placed on a wall along the sides',
    });
  }
  const index = carcass.walls.findIndex((wall) => wall.face === parallelTo);
  if (index >= 0) return acrossDivider(carcass, index, clearMm);
  const allowed = [...carcass.walls.map((wall) => wall.face), 'left', 'right'].join(', ');
  const why = `this box has no ${parallelTo} wall`;
  return refuse('divider.parallelTo', { allowed, got: parallelTo, why });
}

/** The chamber behind drivers that sit in the divider, as a box of its own whose baffle the divider is. */
export function mountInDivider(
  carcass: Carcass,
  { parallel, nearMm, farMm, ends }: SectionDivider,
  magnets: ChamberPlace,
): Carcass {
  const count = carcass.walls.length;
  const looksNear = magnets === 'far';
  const sign = looksNear ? 1 : -1;
  const from = moved(parallel.from, parallel.out, -(looksNear ? nearMm : farMm));
  const baffle: Wall = {
    ...parallel,
    from,
    to: moved(from, parallel.along, parallel.lengthMm),
    along: { x: sign * parallel.along.x, y: sign * parallel.along.y },
    out: { x: sign * parallel.out.x, y: sign * parallel.out.y },
  };
  // From the wall where the divider ends round to the one where it starts, counter-clockwise, then the divider.
  const [first, last] = looksNear ? [ends[1], ends[0]] : [ends[0], ends[1]];
  const indexes = Array.from(
    { length: ((last - first + count) % count) + 1 },
    (_, at) => (first + at) % count,
  );
  const walls = [...indexes.map((index) => ringAt(carcass.walls, index)), baffle];
  const stocks = [...indexes.map((index) => ringAt(carcass.stocks, index)), carcass.sideStock];
  const insets = [...indexes.map((index) => innerInsetMm(carcass, index)), carcass.sideStock.thicknessMm];
  const inner = insetRing(walls, insets);
  return {
    ...carcass,
    walls,
    stocks,
    baffle,
    baffleStock: carcass.sideStock,
    baffleIndex: walls.length - 1,
    doublers: { inside: 0, outside: 0 },
    setBackMm: 0,
    outline: inner,
    // What shows of the divider on the side that its drivers look to, and all that a flange can lie on.
    wood: insetRing(
      walls,
      insets.map((insetMm, at) => (at === insets.length - 1 ? 0 : insetMm)),
    ),
    inner,
    free: inner,
    widthMm: carcass.innerWidthMm,
    isHollow: isHollow(inner),
  };
}

/** Bare air of a chamber, mm³. */
export function chamberAirMm3({ ring, across }: ChamberAir): number {
  return Math.abs(polygonAreaMm2(ring)) * (across.toMm - across.fromMm);
}

/** What is left of a brace's outline in each chamber: whole where the divider stands beside the braces. */
export function framesOf(
  divider: DividerLayout | null,
  frame: readonly PointMm[],
): readonly { readonly part: ChamberPlace | null; readonly outline: readonly PointMm[] }[] {
  if (divider === null || divider.section === null) return [{ part: null, outline: frame }];
  const { parallel, nearMm, farMm } = divider.section;
  const away = { x: -parallel.out.x, y: -parallel.out.y };
  const faceAt = (depthMm: number) => moved(parallel.from, parallel.out, -depthMm);
  const parts = [
    { part: 'near' as const, outline: clippedBelow(frame, faceAt(nearMm), away) },
    { part: 'far' as const, outline: clippedBelow(frame, faceAt(farMm), parallel.out) },
  ];
  // A slot from side to side may leave nothing of a chamber; that it meets the divider is said elsewhere.
  return parts.filter(({ outline }) => outline.length > 2 && polygonAreaMm2(outline) > LEAST_FRAME_MM2);
}

/** Less is no brace: a square centimetre. */
const LEAST_FRAME_MM2 = 100;

// The bare box: walls with their real thickness, and the outlines that follow from it.
import type { BoxDesign, PanelStock } from '@gusset/contracts/enclosure';
import type { PointMm } from '@gusset/contracts/geometry';
import { type Refusal, refuse } from '@gusset/units';
import { CLEAR_MIN_MM } from './limits.ts';
import { distanceAlong, isHollow, polygonAreaMm2 } from './plane.ts';
import { ringAt } from './ring.ts';
import { fieldOfWall } from './shape-rules.ts';
import { narrowestPair } from './simple-polygon.ts';
import { insetLengthMm, insetMeet, insetRing, type Wall, wallRing } from './wall-ring.ts';

export type Layers = { readonly inside: number; readonly outside: number };

export type Carcass = {
  readonly walls: readonly Wall[];
  /** Wall by wall: the board of the carcass itself, doublers not counted. */
  readonly stocks: readonly PanelStock[];
  readonly sideStock: PanelStock;
  readonly braceStock: PanelStock;
  readonly baffleStock: PanelStock;
  readonly baffleIndex: number;
  readonly baffle: Wall;
  readonly doublers: Layers;
  /** Of the baffle, behind its line. */
  readonly setBackMm: number;
  readonly widthMm: number;
  readonly innerWidthMm: number;
  /** Corners counter-clockwise, corner i where wall i starts. */
  readonly outline: PointMm[];
  readonly wood: PointMm[];
  readonly inner: PointMm[];
  readonly free: PointMm[];
  /** Some corner turns inward: an L, a step. */
  readonly isHollow: boolean;
};

/** Insets of every wall's line, with `extraMm` on the baffle alone. */
function insets(stocks: readonly PanelStock[], baffleIndex: number, extraMm: number): number[] {
  return stocks.map(({ thicknessMm }, index) => thicknessMm + (index === baffleIndex ? extraMm : 0));
}

/** Baffle, its doublers and everything that depends on the thickness: refused where no air is left. */
export function layOutCarcass(design: BoxDesign): Carcass | Refusal {
  const { shape, stock, baffle } = design;
  const walls = wallRing(shape);
  const baffleIndex = walls.findIndex((wall) => wall.face === baffle.face);
  const baffleWall = walls[baffleIndex];
  if (baffleWall === undefined) {
    const allowed = walls.map((wall) => wall.face).join(', ');
    const why = `this side view has no ${baffle.face} wall`;
    return refuse('baffle.face', { allowed, got: baffle.face, why });
  }
  const baffleStock = stock.baffle ?? stock.carcass;
  const stocks = walls.map((_, index) => (index === baffleIndex ? baffleStock : stock.carcass));
  const doublers = {
    inside: baffle.doubler?.at === 'inside' ? baffle.doubler.layers : 0,
    outside: baffle.doubler?.at === 'outside' ? baffle.doubler.layers : 0,
  };
  const outsideMm = doublers.outside * baffleStock.thicknessMm;
  const insideMm = doublers.inside * baffleStock.thicknessMm;
  const carcass: Carcass = {
    walls,
    stocks,
    sideStock: stock.carcass,
    braceStock: stock.brace ?? stock.carcass,
    baffleStock,
    baffleIndex,
    baffle: baffleWall,
    doublers,
    setBackMm: baffle.setBackMm,
    widthMm: shape.widthMm,
    innerWidthMm: shape.widthMm - 2 * stock.carcass.thicknessMm,
    outline: walls.map((wall) => wall.from),
    wood: insetRing(
      walls,
      walls.map((_, index) => (index === baffleIndex ? -outsideMm : 0)),
    ),
    inner: insetRing(walls, insets(stocks, baffleIndex, baffle.setBackMm)),
    free: insetRing(walls, insets(stocks, baffleIndex, baffle.setBackMm + insideMm)),
    isHollow: isHollow(walls.map((wall) => wall.from)),
  };
  return refuseNoAir(design, carcass) ?? refuseNarrow(design, carcass) ?? carcass;
}

function refuseNoAir(design: BoxDesign, carcass: Carcass): Refusal | null {
  const { thicknessMm } = carcass.sideStock;
  if (carcass.innerWidthMm < CLEAR_MIN_MM) {
    return refuse('shape.widthMm', {
      allowed: `at least ${2 * thicknessMm + CLEAR_MIN_MM} mm with sides of ${thicknessMm} mm`,
      got: carcass.widthMm,
      why: `two sides of ${thicknessMm} mm leave ${shown(carcass.innerWidthMm)} mm inside`,
    });
  }
  return (
    refuseShortWall(design, carcass, carcass.inner) ??
    refuseShortWall(design, carcass, carcass.free) ??
    refuseShortWall(design, carcass, carcass.wood)
  );
}

const shown = (lengthMm: number) => Number(lengthMm.toFixed(2));

/** Boards eat into walls that they meet; an outside doubler beside a flat corner runs out to a point. */
function refuseShortWall(design: BoxDesign, carcass: Carcass, ring: readonly PointMm[]): Refusal | null {
  const lengths = carcass.walls.map((_, index) => insetLengthMm(carcass.walls, ring, index));
  const index = lengths.findIndex((lengthMm) => !(lengthMm >= CLEAR_MIN_MM));
  const wall = carcass.walls[index];
  const clearMm = lengths[index];
  if (wall === undefined || clearMm === undefined) return null;
  const byDoublers = ring !== carcass.inner;
  return refuse(byDoublers ? 'baffle.doubler.layers' : fieldOfWall(design.shape, wall.face), {
    allowed: `a ${wall.face} wall with at least ${CLEAR_MIN_MM} mm clear on every face of it`,
    got: byDoublers ? (design.baffle.doubler?.layers ?? 0) : shown(wall.lengthMm),
    why: `the boards leave ${shown(clearMm)} mm of ${shown(wall.lengthMm)} mm, ${shown(CLEAR_MIN_MM - clearMm)} mm too little`,
  });
}

/** How far the baffle's outermost and innermost wood lie from its line, doublers counted; out is negative where it is
 * set back. */
export function baffleBuildMm({ baffleStock, doublers, setBackMm }: Carcass): {
  readonly outMm: number;
  readonly inMm: number;
} {
  const { thicknessMm } = baffleStock;
  return {
    outMm: doublers.outside * thicknessMm - setBackMm,
    inMm: (1 + doublers.inside) * thicknessMm + setBackMm,
  };
}

/** Whether a point lies square off wall `index`'s inner face, not past its ends. In a box without hollows every wall
 * counts whole; beyond a hollow corner its line means nothing. */
export function liesBeside(carcass: Carcass, index: number, point: PointMm): boolean {
  const wall = ringAt(carcass.walls, index);
  const here = distanceAlong(wall.from, point, wall.along);
  const ends = [ringAt(carcass.free, index), ringAt(carcass.free, index + 1)];
  const [from, to] = ends.map((end) => distanceAlong(wall.from, end, wall.along));
  return from !== undefined && to !== undefined && here >= from && here <= to;
}

/** A narrow place between two limbs, or an outline that the boards make cross itself. */
function refuseNarrow(design: BoxDesign, carcass: Carcass): Refusal | null {
  if (!carcass.isHollow) return null;
  for (const ring of [carcass.inner, carcass.free, carcass.wood]) {
    const narrow = narrowestPair(ring);
    if (narrow === null || narrow.roomMm >= CLEAR_MIN_MM) continue;
    const [a, b] = [ringAt(carcass.walls, narrow.first), ringAt(carcass.walls, narrow.second)];
    return refuse(fieldOfWall(design.shape, a.face), {
      allowed: `${CLEAR_MIN_MM} mm and more between walls, boards counted`,
      got: shown(narrow.roomMm),
      why: `between the ${a.face} and the ${b.face} there are ${shown(CLEAR_MIN_MM - narrow.roomMm)} mm too little`,
    });
  }
  return null;
}

/** Open air in front of a baffle that is set back: between its neighbours' inner faces and the sides. */
export function recessMm3({ walls, stocks, baffle, baffleIndex, setBackMm, innerWidthMm }: Carcass): number {
  const corner = (depthMm: number, neighbour: number) =>
    insetMeet(baffle, depthMm, ringAt(walls, neighbour), ringAt(stocks, neighbour).thicknessMm);
  const [before, after] = [baffleIndex - 1, baffleIndex + 1];
  const section = [corner(0, before), corner(0, after), corner(setBackMm, after), corner(setBackMm, before)];
  return Math.abs(polygonAreaMm2(section)) * innerWidthMm;
}

// A panel that is stepped for the ends of others: the wood between its outer face and the rabbet runs on.
import type { PointMm } from '@gusset/contracts/geometry';
import type { PanelEdge } from '@gusset/contracts/panel';
import type { Board } from './board.ts';
import { polygonAreaMm2, polygonCentre } from './plane.ts';
import { ringAt } from './ring.ts';
import { inSpace, weightedCentre } from './vector.ts';
import { insetMeet, upTheFace, type Wall } from './wall-ring.ts';

/** A rabbet at one end of a board across the box, for a neighbour of that thickness. */
export type Rabbet = {
  readonly atStart: boolean;
  readonly neighbour: Wall;
  readonly widthMm: number;
  readonly depthMm: number;
};

/** Cut of the rabbet in the side view: the step's corner stands third. */
function stepOf(wall: Wall, thicknessMm: number, { neighbour, widthMm, depthMm }: Rabbet) {
  const at = (ownMm: number, otherMm: number) => insetMeet(wall, ownMm, neighbour, otherMm);
  const floorMm = thicknessMm - depthMm;
  return {
    lip: at(floorMm, 0),
    heel: at(floorMm, widthMm),
    foot: at(thicknessMm, widthMm),
    end: at(thicknessMm, 0),
  };
}

const withRabbet = (edge: PanelEdge, { widthMm, depthMm }: Rabbet): PanelEdge => ({
  ...edge,
  joint: 'rabbet',
  rabbet: { widthMm, depthMm },
});

function stepped(board: Board, wall: Wall, rabbet: Rabbet): Board {
  const { section } = board;
  if (section === null) return board;
  const { lip, heel, foot, end } = stepOf(wall, board.stock.thicknessMm, rabbet);
  const gone: readonly PointMm[] = [lip, heel, foot, end];
  const amount = Math.abs(polygonAreaMm2(gone)) * board.lengthMm;
  // The inner corner at this end gives way to the step: last in the ring at the start, third at the end.
  const inner = rabbet.atStart ? section.length - 1 : 2;
  const step = rabbet.atStart ? [foot, heel, lip] : [lip, heel, foot];
  const isLow = upTheFace(wall).runsUp === rabbet.atStart;
  const centre = weightedCentre([
    { amount: board.blankMm3, at: board.blankCentreMm },
    { amount: -amount, at: inSpace(polygonCentre(gone), board.blankCentreMm.z) },
  ]);
  return {
    ...board,
    section: section.flatMap((corner, index) => (index === inner ? step : [corner])),
    edges: board.edges.map((edge, index) => (index === (isLow ? 0 : 2) ? withRabbet(edge, rabbet) : edge)),
    blankMm3: board.blankMm3 - amount,
    blankCentreMm: centre ?? board.blankCentreMm,
  };
}

/** A board across the box less its rabbets. Only at square corners, so every step is a rectangle. */
export function rabbeted(board: Board, wall: Wall, rabbets: readonly Rabbet[]): Board {
  return rabbets.reduce((whole, rabbet) => stepped(whole, wall, rabbet), board);
}

/** A side stepped all round for the walls' ends, which lie between its outline and the inside. */
export function rabbetedSide(
  board: Board,
  inner: readonly PointMm[],
  widthsMm: readonly number[],
  depthMm: number,
): Board {
  const { outline } = board;
  const sign = board.placement.normal.z;
  const ringMm2 = Math.abs(polygonAreaMm2(outline)) - Math.abs(polygonAreaMm2(inner));
  const amount = ringMm2 * depthMm;
  const innerCentre = polygonCentre(inner);
  const floorZMm = board.placement.originMm.z - sign * (board.stock.thicknessMm - depthMm);
  const middleZMm = floorZMm - (sign * depthMm) / 2;
  const whole = { xMm: board.blankCentreMm.x, yMm: board.blankCentreMm.y };
  const outerMm2 = Math.abs(polygonAreaMm2(outline));
  const centre = weightedCentre([
    { amount: board.blankMm3, at: board.blankCentreMm },
    { amount: -outerMm2 * depthMm, at: inSpace(whole, middleZMm) },
    { amount: Math.abs(polygonAreaMm2(inner)) * depthMm, at: inSpace(innerCentre, middleZMm) },
  ]);
  // A right side is drawn mirrored: its corners, and so its edges, go the other way round.
  const count = outline.length;
  const wallOf = (edge: number) => (sign > 0 ? edge : (2 * count - 2 - edge) % count);
  return {
    ...board,
    edges: board.edges.map((edge, index) => ({
      ...edge,
      joint: 'rabbet',
      rabbet: { widthMm: ringAt(widthsMm, wallOf(index)), depthMm },
    })),
    blankMm3: board.blankMm3 - amount,
    blankCentreMm: centre ?? board.blankCentreMm,
  };
}

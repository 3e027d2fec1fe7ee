// A panel with a piece taken out of one end: where the mouth of a port is narrower than the panel.
import type { PointMm } from '@gusset/contracts/geometry';
import type { PanelEdge } from '@gusset/contracts/panel';
import { type Board, offBoard } from './board.ts';
import { type Weighted, weightedCentre } from './vector.ts';

/** Up to where the piece is gone on both faces, counted from the outline's lower edge; across as on the panel. */
export type Notch = {
  readonly atLowEnd: boolean;
  readonly outerMm: number;
  readonly innerMm: number;
  readonly fromMm: number;
  readonly toMm: number;
};

const EDGE_MM = 1e-6; // a notch this near to the panel's side runs out of it: rounding only
const free: PanelEdge = { bevelRad: 0, joint: 'free', runsThrough: false };

/** A rectangle with the notch taken out of its lower (or upper) end. */
function notchedFace(face: readonly PointMm[], notch: Notch, toMm: number): PointMm[] {
  const xs = face.map(({ xMm }) => xMm);
  const ys = face.map(({ yMm }) => yMm);
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const at = (xMm: number, yMm: number): PointMm => ({ xMm, yMm });
  const endMm = notch.atLowEnd ? low : high;
  const atLeft = notch.fromMm <= left + EDGE_MM;
  const atRight = notch.toMm >= right - EDGE_MM;
  const beside = [
    ...(atLeft ? [] : [at(left, endMm), at(notch.fromMm, endMm)]),
    at(atLeft ? left : notch.fromMm, toMm),
    at(atRight ? right : notch.toMm, toMm),
    ...(atRight ? [] : [at(notch.toMm, endMm), at(right, endMm)]),
  ];
  return notch.atLowEnd
    ? [...beside, at(right, high), at(left, high)]
    : [at(left, low), at(right, low), ...beside.toReversed()];
}

/** Edges in the order of `notchedFace`, the end's own beside the notch. */
function notchedEdges<T>(
  [low, right, high, left]: readonly [T, T, T, T],
  { atLowEnd }: Notch,
  { atLeft, atRight, plain, top }: { readonly atLeft: boolean; readonly atRight: boolean; plain: T; top: T },
): T[] {
  const end = atLowEnd ? low : high;
  const beside = [...(atLeft ? [] : [end, plain]), top, ...(atRight ? [] : [plain, end])];
  return atLowEnd ? [...beside, right, high, left] : [low, right, ...beside.toReversed(), left];
}

function four<T>(list: readonly T[]): readonly [T, T, T, T] {
  const [a, b, c, d] = list;
  if (a === undefined || b === undefined || c === undefined || d === undefined) {
    throw new RangeError('a panel across the box has four edges');
  }
  return [a, b, c, d];
}

/** The board less a notch in one of its ends. `gone` is the wood that was there. */
export function notched(board: Board, notch: Notch, gone: Weighted): Board {
  const { thicknessMm } = board.stock;
  const woodTo = notch.atLowEnd ? Math.min : Math.max;
  const blankTo = woodTo(notch.outerMm, notch.innerMm);
  const leanMm = Math.abs(notch.outerMm - notch.innerMm);
  const isSquare = leanMm < EDGE_MM;
  const top: PanelEdge = { ...free, bevelRad: isSquare ? 0 : Math.atan(leanMm / thicknessMm) };
  const sides = { atLeft: notch.fromMm <= EDGE_MM, atRight: notch.toMm >= board.lengthMm - EDGE_MM };
  const reaching = blankTo === notch.outerMm ? 'outer' : 'inner';
  const blankCentre = weightedCentre([
    { amount: board.blankMm3, at: board.blankCentreMm },
    { amount: -gone.amount, at: gone.at },
  ]);
  return {
    ...board,
    outline: notchedFace(board.outline, notch, blankTo),
    outerFace: notchedFace(board.outerFace, notch, notch.outerMm),
    innerFace: notchedFace(board.innerFace, notch, notch.innerMm),
    edges: notchedEdges(four(board.edges), notch, { ...sides, plain: free, top }),
    edgeLeans: notchedEdges(four(board.edgeLeans), notch, {
      ...sides,
      plain: 'square' as const,
      top: isSquare ? ('square' as const) : reaching,
    }),
    blankMm3: board.blankMm3 - gone.amount,
    blankCentreMm: blankCentre ?? offBoard(board, { xMm: 0, yMm: 0 }, 0),
  };
}

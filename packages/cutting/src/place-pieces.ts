// Filling a layout: pieces one by one in some order, each where it costs least, a new sheet where none has room.
import { findSpot, type SpotRule } from './best-spot.ts';
import { type Forest, insertPiece, NONE, openSheet, type Spot } from './guillotine-forest.ts';
import type { LayoutProblem, Piece } from './layout-problem.ts';
import type { SeededRandom } from './seeded-random.ts';
import { allowsSheet, type Budget } from './sheet-usage.ts';

/** Largest first by one of these; null stands for a random order. */
const SIZE_KEYS: readonly ((piece: Piece) => number)[] = [
  (piece) => piece.area,
  (piece) => Math.max(piece.width, piece.height),
  (piece) => piece.width,
  (piece) => piece.height,
  (piece) => Math.min(piece.width, piece.height),
];
/** Number of orders: the keys above, and random. */
export const ORDER_COUNT = SIZE_KEYS.length + 1;

export type PlacingStyle = {
  /** Index of the order, 0 to ORDER_COUNT - 1. */
  readonly order: number;
  /** Share by which a key may stray up or down from its true value. */
  readonly noise: number;
  readonly rule: SpotRule;
  readonly blink: number;
  /** Stocks in the order in which a new sheet is sought. */
  readonly stockOrder: readonly number[];
};

export type Placer = {
  /** Places what it can and returns the pieces left over, in the order in which they were tried. */
  readonly place: (
    forest: Forest,
    pieces: readonly number[],
    style: PlacingStyle,
    budget: Budget | null,
  ) => number[];
};

export function piecePlacer(problem: LayoutProblem, random: SeededRandom): Placer {
  const sizes = SIZE_KEYS.map((key) => Float64Array.from(problem.pieces, key));
  const keys = new Float64Array(problem.pieces.length);
  const spot: Spot = { node: NONE, turned: false, cutFirst: 0 };

  const sortPieces = (pieces: readonly number[], style: PlacingStyle): number[] => {
    const size = sizes[style.order];
    for (const piece of pieces) {
      keys[piece] =
        size === undefined
          ? random.next()
          : (size[piece] ?? 0) * (style.noise === 0 ? 1 : 1 + style.noise * (random.next() - 0.5));
    }
    return [...pieces].sort((one, two) => (keys[two] ?? 0) - (keys[one] ?? 0) || one - two);
  };

  const stockFor = (
    forest: Forest,
    piece: number,
    order: readonly number[],
    budget: Budget | null,
  ): number | undefined =>
    order.find(
      (stock) =>
        problem.ways[piece * problem.stocks.length + stock] !== 0 &&
        allowsSheet(budget, forest, problem, stock),
    );

  /** A new sheet is opened only where no open one has room; a spot passed over at random is room. */
  const findOnNewSheet = (
    forest: Forest,
    piece: number,
    style: PlacingStyle,
    budget: Budget | null,
  ): boolean => {
    const stock = stockFor(forest, piece, style.stockOrder, budget);
    if (stock === undefined) return false;
    const search = { rule: style.rule, blink: 0, random };
    if (findSpot(forest, problem, piece, search, spot)) return true;
    openSheet(forest, problem, stock);
    return findSpot(forest, problem, piece, search, spot);
  };

  const place: Placer['place'] = (forest, pieces, style, budget) => {
    const search = { rule: style.rule, blink: style.blink, random };
    const unplaced: number[] = [];
    for (const piece of sortPieces(pieces, style)) {
      const hasSpot =
        findSpot(forest, problem, piece, search, spot) || findOnNewSheet(forest, piece, style, budget);
      if (hasSpot) insertPiece(forest, problem, piece, spot);
      else unplaced.push(piece);
    }
    return unplaced;
  };

  return { place };
}

/** Rack offcuts from small to large, then full sheets with `first` in front. */
export function stockOrder(problem: LayoutProblem, first: number): readonly number[] {
  const indices = problem.stocks.map((_, index) => index);
  const area = (index: number): number => problem.stocks[index]?.area ?? 0;
  const offcuts = indices
    .filter((index) => problem.stocks[index]?.isOffcut)
    .sort((one, two) => area(one) - area(two) || one - two);
  const full = indices.filter((index) => !problem.stocks[index]?.isOffcut);
  const place = Math.max(0, full.indexOf(first));
  return [...offcuts, ...full.slice(place), ...full.slice(0, place)];
}

// How many full sheets no layout can do without: the best over pairs of dual-feasible functions, plain area among
// them. Valid with kerf, because pieces and sheets are enlarged alike (layout-problem.ts), and for layouts that
// are not guillotine too.
import { weightTables } from './dual-feasible.ts';
import { growPieces } from './grow-pieces.ts';
import { AS_GIVEN, type LayoutProblem, TURNED } from './layout-problem.ts';

/** Multiplications spent on pairs of functions; some 40 ms. */
const WORK_LIMIT = 2e7;
/** Sorting several stocks by what they carry, in multiplications for each. */
const STOCK_WORK = 100;
/** Pairs tried first: most bounds that can be reached are reached by plain area. */
const FEW_FUNCTIONS = 8;
/** Rounding of sums of weights: a sheet too many would be a wrong bound. */
const WEIGHT_SLACK = 1e-7;

export type LowerBound = { readonly fullSheets: number; readonly costMinor: number };

type Rectangle = { readonly width: number; readonly height: number };
/** A piece with the ways it may lie on at least one stock. */
type Weighed = Rectangle & { readonly ways: number };

/** `enough` ends the search for a better bound: the sheets of a layout already found. */
export function lowerBound(problem: LayoutProblem, enough: number): LowerBound {
  const pieces = weighedPieces(problem);
  const stockWork = problem.stocks.length === 1 ? 1 : STOCK_WORK * problem.stocks.length;
  const most = Math.floor(Math.sqrt(WORK_LIMIT / (2 * pieces.length + stockWork)));
  let fullSheets = 0;
  for (const limit of [FEW_FUNCTIONS, Math.max(FEW_FUNCTIONS, most)]) {
    if (fullSheets < enough) fullSheets = bestOverPairs(problem, pieces, limit, enough);
  }
  return { fullSheets, costMinor: costFor(problem, fullSheets) };
}

function bestOverPairs(
  problem: LayoutProblem,
  pieces: readonly Weighed[],
  limit: number,
  enough: number,
): number {
  const { stocks } = problem;
  const canTurn = pieces.some((piece) => piece.ways === BOTH_WAYS);
  const isSquare = canTurn && stocks.every((stock) => stock.width === stock.height);
  const turned = pieces.map((piece) => (isSquare || piece.ways === BOTH_WAYS ? turn(piece) : piece));
  const across = sideWeights('width', pieces, turned, stocks, limit);
  const up = sideWeights('height', pieces, turned, stocks, limit);
  // On square sheets a layout can be turned as a whole, so it obeys the bound in both attitudes: the mean of a
  // piece's two weights counts, whichever way it lies. Elsewhere only the lesser weight is sure.
  let fullSheets = 0;
  for (const x of across) {
    for (const y of up) {
      const total = !canTurn
        ? sumOf(x.asGiven, y.asGiven)
        : isSquare
          ? (sumOf(x.asGiven, y.asGiven) + sumOf(x.turned, y.turned)) / 2
          : sumOfLesser(x, y);
      fullSheets = Math.max(fullSheets, sheetsFor(problem, total, x.stocks, y.stocks));
      if (fullSheets >= enough) return fullSheets;
    }
  }
  return fullSheets;
}

const BOTH_WAYS = AS_GIVEN | TURNED;

function turn<T extends Rectangle>(piece: T): T {
  return { ...piece, width: piece.height, height: piece.width };
}

/** One function of one side: its values for every piece as given, for every piece turned, for every stock. */
type SideWeights = {
  readonly asGiven: Float64Array;
  readonly turned: Float64Array;
  readonly stocks: Float64Array;
};

function sideWeights(
  side: 'width' | 'height',
  pieces: readonly Rectangle[],
  turned: readonly Rectangle[],
  stocks: readonly Rectangle[],
  limit: number,
): readonly SideWeights[] {
  const all = [...pieces, ...turned, ...stocks].map((one) => one[side]);
  const lengths = [...new Set(all)].sort((one, two) => one - two);
  const place = new Map(lengths.map((length, index) => [length, index]));
  const size = Math.max(...stocks.map((stock) => stock[side]));
  const oneSize = stocks.every((stock) => stock[side] === size);
  const ofPieces = pieces.flatMap((piece, index) => {
    const other = turned[index];
    return other === undefined || other === piece ? [piece[side]] : [piece[side], other[side]];
  });
  return weightTables(size, lengths, limit, oneSize ? ofPieces : null).map((table) => {
    const pick = (some: readonly Rectangle[]): Float64Array =>
      Float64Array.from(some, (one) => table[place.get(one[side]) ?? 0] ?? 0);
    return { asGiven: pick(pieces), turned: pick(turned), stocks: pick(stocks) };
  });
}

function sumOf(x: Float64Array, y: Float64Array): number {
  let sum = 0;
  for (let index = 0; index < x.length; index++) sum += (x[index] as number) * (y[index] as number); // same length
  return sum;
}

/** The lesser weight of the two ways; pieces with one way have it in both tables. */
function sumOfLesser(x: SideWeights, y: SideWeights): number {
  let sum = 0;
  for (let index = 0; index < x.asGiven.length; index++) {
    const asGiven = (x.asGiven[index] as number) * (y.asGiven[index] as number); // all tables are as long
    const turned = (x.turned[index] as number) * (y.turned[index] as number);
    sum += Math.min(asGiven, turned);
  }
  return sum;
}

/** Pieces that cannot turn are grown where nothing can lie beside them; only sound for one size of sheet. */
function weighedPieces(problem: LayoutProblem): readonly Weighed[] {
  const { pieces, stocks, ways } = problem;
  const weighed = pieces.map((piece, index) => ({
    width: piece.width,
    height: piece.height,
    ways: ways
      .subarray(index * stocks.length, (index + 1) * stocks.length)
      .reduce((all, some) => all | some, 0),
  }));
  const lying = weighed.map(asItLies);
  const [first] = stocks;
  const oneSize = stocks.every((stock) => stock.width === first?.width && stock.height === first.height);
  if (!oneSize || first === undefined || lying.some((piece) => piece.ways === BOTH_WAYS)) {
    return lying;
  }
  return growPieces(lying, first);
}

function asItLies<T extends Weighed>(piece: T): T {
  if (piece.ways !== TURNED) return piece;
  return { ...piece, width: piece.height, height: piece.width, ways: AS_GIVEN };
}

/** Full sheets needed to carry `total` once every offcut is full; the roomiest sheets are taken first. */
function sheetsFor(problem: LayoutProblem, total: number, x: Float64Array, y: Float64Array): number {
  let rest = total - WEIGHT_SLACK;
  if (problem.stocks.length === 1 && problem.stocks[0]?.isOffcut === false) return Math.ceil(rest);
  const full: { readonly capacity: number; readonly count: number }[] = [];
  problem.stocks.forEach((stock, index) => {
    const capacity = (x[index] ?? 0) * (y[index] ?? 0);
    if (stock.isOffcut) rest -= capacity * stock.count;
    else full.push({ capacity, count: stock.count });
  });
  full.sort((one, two) => two.capacity - one.capacity);
  let sheets = 0;
  for (const { capacity, count } of full) {
    if (rest <= 0 || capacity <= 0) break;
    const used = Math.min(count, Math.ceil(rest / capacity));
    sheets += used;
    rest -= used * capacity;
  }
  return sheets;
}

/** Least price of that many full sheets, or of the area bought by the cheapest square metre, the greater. */
function costFor(problem: LayoutProblem, fullSheets: number): number {
  const byPrice = problem.stocks.toSorted((one, two) => one.costMinor - two.costMinor);
  let sheets = fullSheets;
  let cheapest = 0;
  for (const stock of byPrice.filter(({ isOffcut }) => !isOffcut)) {
    const used = Math.min(stock.count, sheets);
    sheets -= used;
    cheapest += used * stock.costMinor;
  }
  let area = problem.pieces.reduce((sum, piece) => sum + piece.area, 0);
  let byArea = 0;
  const byRate = problem.stocks
    .filter((stock) => stock.area > 0)
    .toSorted((one, two) => one.costMinor / one.area - two.costMinor / two.area);
  for (const stock of byRate) {
    const used = Math.min(stock.count * stock.area, Math.max(0, area));
    area -= used;
    byArea += (used / stock.area) * stock.costMinor;
  }
  return Math.max(cheapest, Math.ceil(byArea - WEIGHT_SLACK));
}

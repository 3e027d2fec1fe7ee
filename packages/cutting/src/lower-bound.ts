// How many full sheets no layout can do without: the best over pairs of dual-feasible functions, plain area among
// them. Valid with kerf, because pieces and sheets are enlarged alike (layout-problem.ts), and for layouts that
// are not guillotine too.
import { type WeightTable, weightTables } from './dual-feasible.ts';
import { growPieces } from './grow-pieces.ts';
import { AS_GIVEN, type LayoutProblem, TURNED } from './layout-problem.ts';

/** Multiplications spent on pairs of functions; about 40 ms. */
const WORK_LIMIT = 2e7;
/** Rounding of sums of weights: a sheet too many would be a wrong bound. */
const WEIGHT_SLACK = 1e-7;

export type LowerBound = { readonly fullSheets: number; readonly costMinor: number };

type Rectangle = { readonly width: number; readonly height: number };
/** A piece with the ways it may lie on at least one stock. */
type Weighed = Rectangle & { readonly ways: number };
/** Index of each rectangle's width and height in the tabulated lengths. */
type Place = { readonly x: number; readonly y: number; readonly ways: number };

export function lowerBound(problem: LayoutProblem): LowerBound {
  const pieces = weighedPieces(problem);
  const { stocks } = problem;
  const width = Math.max(...stocks.map((stock) => stock.width));
  const height = Math.max(...stocks.map((stock) => stock.height));
  const fixed = pieces.every((piece) => piece.ways !== (AS_GIVEN | TURNED));
  const isSquare = !fixed && stocks.every((stock) => stock.width === stock.height);
  const lie = fixed ? pieces.map(asItLies) : pieces;
  const xLengths = distinct(
    [...lie, ...stocks].flatMap((one) => sides(one, fixed, 'width')),
    width,
  );
  const yLengths = distinct(
    [...lie, ...stocks].flatMap((one) => sides(one, fixed, 'height')),
    height,
  );
  const places = lie.map((piece) => toPlace(piece, xLengths, yLengths));
  const turnedPlaces = lie.map((piece) =>
    toPlace({ width: piece.height, height: piece.width, ways: piece.ways }, xLengths, yLengths),
  );
  const stockPlaces = stocks.map((stock) => toPlace({ ...stock, ways: 0 }, xLengths, yLengths));
  const limit = Math.max(2, Math.floor(Math.sqrt(WORK_LIMIT / (pieces.length + stocks.length))));
  const acrossTables = weightTables(width, xLengths, limit);
  const upTables = weightTables(height, yLengths, limit);
  let fullSheets = 0;
  for (const across of acrossTables) {
    for (const up of upTables) {
      const total = fixed
        ? sumFixed(places, across, up)
        : isSquare
          ? sumSquare(places, turnedPlaces, across, up)
          : sumLeast(places, turnedPlaces, across, up);
      const capacities = stockPlaces.map((place) => weight(place, across, up));
      fullSheets = Math.max(fullSheets, sheetsFor(problem, total, capacities));
    }
  }
  return { fullSheets, costMinor: costFor(problem, fullSheets) };
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
  const [first] = stocks;
  const oneSize = stocks.every((stock) => stock.width === first?.width && stock.height === first.height);
  if (!oneSize || first === undefined || weighed.some((piece) => piece.ways === (AS_GIVEN | TURNED))) {
    return weighed;
  }
  return growPieces(weighed.map(asItLies), first);
}

function asItLies<T extends Weighed>(piece: T): T {
  if (piece.ways !== TURNED) return piece;
  return { ...piece, width: piece.height, height: piece.width, ways: AS_GIVEN };
}

function sides(one: Rectangle, fixed: boolean, side: 'width' | 'height'): readonly number[] {
  return fixed ? [one[side]] : [one.width, one.height];
}

/** A turned piece that is longer than every sheet that way never lies so: its place is never asked for. */
function distinct(lengths: readonly number[], most: number): readonly number[] {
  return [...new Set(lengths.filter((length) => length <= most))].sort((one, two) => one - two);
}

function toPlace(piece: Weighed, xLengths: readonly number[], yLengths: readonly number[]): Place {
  return { x: xLengths.indexOf(piece.width), y: yLengths.indexOf(piece.height), ways: piece.ways };
}

function weight(place: Place, across: WeightTable, up: WeightTable): number {
  return (across[place.x] ?? 0) * (up[place.y] ?? 0);
}

function sumFixed(places: readonly Place[], across: WeightTable, up: WeightTable): number {
  let sum = 0;
  for (const place of places) sum += weight(place, across, up);
  return sum;
}

/**
 * On square sheets a layout can be turned as a whole, so it obeys the bound in both attitudes: the mean of a
 * piece's two weights counts, whichever way it lies.
 */
function sumSquare(
  places: readonly Place[],
  turned: readonly Place[],
  across: WeightTable,
  up: WeightTable,
): number {
  return (sumFixed(places, across, up) + sumFixed(turned, across, up)) / 2;
}

function sumLeast(
  places: readonly Place[],
  turned: readonly Place[],
  across: WeightTable,
  up: WeightTable,
): number {
  let sum = 0;
  places.forEach((place, index) => {
    const other = turned[index];
    const asGiven = (place.ways & AS_GIVEN) === 0 ? Number.POSITIVE_INFINITY : weight(place, across, up);
    const asTurned =
      other === undefined || (place.ways & TURNED) === 0
        ? Number.POSITIVE_INFINITY
        : weight(other, across, up);
    const least = Math.min(asGiven, asTurned);
    if (Number.isFinite(least)) sum += least;
  });
  return sum;
}

/** Full sheets needed to carry `total` once every offcut is full; the roomiest sheets are taken first. */
function sheetsFor(problem: LayoutProblem, total: number, capacities: readonly number[]): number {
  let rest = total - WEIGHT_SLACK;
  const full: { readonly capacity: number; readonly count: number }[] = [];
  problem.stocks.forEach((stock, index) => {
    const capacity = capacities[index] ?? 0;
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

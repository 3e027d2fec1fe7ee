// Dual-feasible functions of whole-unit lengths. Each maps [0, size] to [0, 1], never falls, and has
// f(a) + f(b) <= f(a + b): lengths that fit one beside the other within x add up to f(x) at most. That makes
// f(width) x g(height) a weight of a rectangle of which no sheet holds more than f(its width) x g(its height).
//
// [FS] S. P. Fekete, J. Schepers, "A general framework for bounds for higher-dimensional orthogonal packing
//      problems", Mathematical Methods of Operations Research 60, 2004.
// [CCM] J. Carlier, F. Clautiaux, A. Moukrim, "New reduction procedures and lower bounds for the two-dimensional
//      bin packing problem with fixed orientation", Computers & Operations Research 34, 2007.

/** Largest k of the stair functions [FS] worth trying: beyond it they differ little from plain length. */
const MOST_STAIRS = 20;

type LengthFunction = (length: number) => number;

/** Values of one function at the asked lengths, in their order. */
export type WeightTable = Float64Array;

/**
 * Distinct functions for a sheet side `size`, tabulated at `lengths` (whole, at most `size`); plain length first,
 * at most `limit` of them. `pieceLengths` names the lengths that pieces may have along this side, each as often as
 * it occurs: with it come functions that hold for those pieces on whole sheets, not for smaller sheets.
 */
export function weightTables(
  size: number,
  lengths: readonly number[],
  limit: number,
  pieceLengths: readonly number[] | null,
): readonly WeightTable[] {
  const tables = new Map<string, WeightTable>();
  for (const weigh of lengthFunctions(size, turningPoints(size, lengths), pieceLengths)) {
    const table = Float64Array.from(lengths, weigh);
    const key = fingerprint(table);
    if (!tables.has(key)) tables.set(key, table);
    if (tables.size >= limit) break;
  }
  return [...tables.values()];
}

/** Two different tables with one fingerprint cost a function, never soundness. */
function fingerprint(table: WeightTable): string {
  let sum = 0;
  let ranked = 0;
  table.forEach((value, index) => {
    sum += value;
    ranked += value * (index + 1);
  });
  return `${sum} ${ranked}`;
}

function* lengthFunctions(
  size: number,
  points: readonly number[],
  pieceLengths: readonly number[] | null,
): Generator<LengthFunction> {
  yield (length) => length / size;
  for (const point of points) yield smallDropped(size, point, (length) => length / size);
  for (const point of points) yield steps(size, point);
  if (pieceLengths !== null) for (const point of points) yield* headCount(size, point, pieceLengths);
  for (let stairs = 1; stairs <= MOST_STAIRS; stairs++) {
    yield stair(size, stairs);
    for (const point of points) yield smallDropped(size, point, stair(size, stairs));
  }
}

/** U^(eps) of [FS] before another function: under `least` counts nothing, over `size - least` counts all. */
function smallDropped(size: number, least: number, then: LengthFunction): LengthFunction {
  return (length) => (length > size - least ? 1 : length < least ? 0 : then(length));
}

/** u^(k) of [FS]. Whole arithmetic decides whether (k + 1) x is whole. */
function stair(size: number, stairs: number): LengthFunction {
  return (length) => {
    const scaled = (stairs + 1) * length;
    return scaled % size === 0 ? length / size : Math.floor(scaled / size) / stairs;
  };
}

/** f_2^k of [CCM]: lengths in whole steps, those over half by what they leave. */
function steps(size: number, step: number): LengthFunction {
  const all = Math.floor(size / step);
  return (length) => {
    if (2 * length === size) return 0.5;
    return 2 * length < size ? Math.floor(length / step) / all : 1 - Math.floor((size - length) / step) / all;
  };
}

/** f_1^k of [CCM]: how many medium pieces a length takes the room of. */
function* headCount(size: number, least: number, pieceLengths: readonly number[]): Generator<LengthFunction> {
  const medium = pieceLengths.filter((length) => length >= least && 2 * length <= size);
  medium.sort((one, two) => one - two);
  const mostWithin = (room: number): number => {
    let used = 0;
    const tooMany = medium.findIndex((length) => {
      used += length;
      return used > room;
    });
    return tooMany < 0 ? medium.length : tooMany;
  };
  const all = mostWithin(size);
  if (all === 0) return;
  yield (length) => {
    if (2 * length > size) return 1 - mostWithin(size - length) / all;
    return length < least ? 0 : 1 / all;
  };
}

/** Parameters (1 to half the size) at which some function changes at one of the lengths. */
function turningPoints(size: number, lengths: readonly number[]): readonly number[] {
  const points = new Set<number>();
  for (const length of lengths) {
    const rest = size - length;
    for (const point of [
      length,
      rest + 1,
      rest,
      length + 1,
      Math.floor(length / 2),
      Math.floor(length / 3),
    ]) {
      if (point >= 1 && 2 * point <= size) points.add(point);
    }
  }
  return [...points].sort((one, two) => one - two);
}

// Lengths as whole numbers, so that sums of strips compare exactly: three strips of 0.1 fill 0.3.
// The unit is the largest power of ten in which every given length is whole; lengths finer than the finest unit
// are rounded to the safe side (parts up, sheets down).

/** Largest whole-unit length that the search's 32-bit fields can hold with room for a sum of two. */
const LENGTH_LIMIT = 2 ** 29;
const MOST_DECIMALS = 6;
/** Binary noise of a decimal after scaling, in whole units; far below what any rule shows. */
const NOISE_UNITS = 1e-4;

export type WholeUnits = {
  readonly perUnit: number;
  /** For what must fit: parts, kerf, trim. */
  readonly up: (length: number) => number;
  /** For what must hold: sheets. */
  readonly down: (length: number) => number;
};

export function wholeUnits(lengths: readonly number[]): WholeUnits {
  const longest = lengths.reduce((most, length) => Math.max(most, length), 0);
  let decimals = 0;
  while (decimals < MOST_DECIMALS && longest * 10 ** (decimals + 1) < LENGTH_LIMIT) {
    const scale = 10 ** decimals;
    if (lengths.every((length) => isWhole(length * scale))) break;
    decimals += 1;
  }
  const perUnit = 10 ** decimals;
  return {
    perUnit,
    up: (length) => Math.ceil(length * perUnit - NOISE_UNITS),
    down: (length) => Math.floor(length * perUnit + NOISE_UNITS),
  };
}

function isWhole(value: number): boolean {
  return Math.abs(value - Math.round(value)) < NOISE_UNITS;
}

// Small dense complex systems by LU with partial pivoting, in flat arrays that are used again: a response solves
// hundreds of them while a hand is on a slider, a search millions. The factors are kept, so that a second right-hand
// side (the slope over frequency) costs a substitution only.

const SINGULAR_RATIO_SQUARED = 1e-28; // a pivot 1e-14 of its column is rounding, not physics

/** Complex numbers in a row, real and imaginary parts apart. */
export type ComplexList = { readonly re: Float64Array; readonly im: Float64Array };

/**
 * `size` rows of `size` coefficients, row after row. Rows and columns must be of like size: whoever fills it picks
 * units so. Once factorised it holds the factors, with one over each pivot on the diagonal.
 */
export type LinearSystem = ComplexList & {
  readonly size: number;
  /** Which row of the question stands at each place after pivoting. */
  readonly order: Int32Array;
  /** By column, squared: what a pivot must exceed. */
  readonly leastPivots: Float64Array;
};

export function complexList(length: number): ComplexList {
  return { re: new Float64Array(length), im: new Float64Array(length) };
}

export function emptySystem(size: number): LinearSystem {
  return {
    ...complexList(size * size),
    size,
    order: new Int32Array(size),
    leastPivots: new Float64Array(size),
  };
}

/** A cell that is there: the index is computed from the size. */
export function at(cells: Float64Array, index: number): number {
  return cells[index] ?? 0;
}

/** The same of whole numbers; apart, so that the compiled code of each knows one kind of list. */
export function wholeAt(cells: Int32Array, index: number): number {
  return cells[index] ?? 0;
}

/** Turns the coefficients to factors, in place. False where the system is singular to rounding. */
export function factorise(system: LinearSystem): boolean {
  const { size, re, im, leastPivots } = system;
  readScales(system);
  for (let column = 0; column < size; column++) {
    const row = pivotRow(system, column);
    const sizeSquared = squaredAt(re, im, row * size + column);
    if (!(sizeSquared > at(leastPivots, column))) return false;
    if (row !== column) swapRows(system, column, row);
    const pivot = column * size + column;
    re[pivot] = at(re, pivot) / sizeSquared;
    im[pivot] = -at(im, pivot) / sizeSquared;
    for (let below = column + 1; below < size; below++) clearBelow(re, im, size, column, below);
  }
  return true;
}

/** The unknowns for one right-hand side, from the factors. `right` and `unknowns` are two different lists. */
export function substitute(system: LinearSystem, right: ComplexList, unknowns: ComplexList): void {
  const { size, re, im, order } = system;
  const { re: rightRe, im: rightIm } = right;
  const { re: unknownRe, im: unknownIm } = unknowns;
  for (let row = 0; row < size; row++) {
    let sumRe = at(rightRe, wholeAt(order, row));
    let sumIm = at(rightIm, wholeAt(order, row));
    for (let k = 0; k < row; k++) {
      const a = at(re, row * size + k);
      const b = at(im, row * size + k);
      const c = at(unknownRe, k);
      const d = at(unknownIm, k);
      sumRe -= a * c - b * d;
      sumIm -= a * d + b * c;
    }
    unknownRe[row] = sumRe;
    unknownIm[row] = sumIm;
  }
  for (let row = size - 1; row >= 0; row--) {
    let sumRe = at(unknownRe, row);
    let sumIm = at(unknownIm, row);
    for (let k = row + 1; k < size; k++) {
      const a = at(re, row * size + k);
      const b = at(im, row * size + k);
      const c = at(unknownRe, k);
      const d = at(unknownIm, k);
      sumRe -= a * c - b * d;
      sumIm -= a * d + b * c;
    }
    const a = at(re, row * size + row);
    const b = at(im, row * size + row);
    unknownRe[row] = a * sumRe - b * sumIm;
    unknownIm[row] = a * sumIm + b * sumRe;
  }
}

function squaredAt(re: Float64Array, im: Float64Array, cell: number): number {
  return at(re, cell) * at(re, cell) + at(im, cell) * at(im, cell);
}

function readScales({ size, re, im, order, leastPivots }: LinearSystem): void {
  for (let column = 0; column < size; column++) {
    order[column] = column;
    let largest = 0;
    for (let cell = column; cell < size * size; cell += size) {
      const squared = squaredAt(re, im, cell);
      if (squared > largest) largest = squared;
    }
    leastPivots[column] = largest * SINGULAR_RATIO_SQUARED;
  }
}

function pivotRow({ size, re, im }: LinearSystem, column: number): number {
  let best = column;
  let largest = squaredAt(re, im, column * size + column);
  for (let row = column + 1; row < size; row++) {
    const squared = squaredAt(re, im, row * size + column);
    if (squared <= largest) continue;
    best = row;
    largest = squared;
  }
  return best;
}

/** Factors to the left go along: they belong to the row. */
function swapRows({ size, re, im, order }: LinearSystem, a: number, b: number): void {
  for (let column = 0; column < size; column++) {
    const i = a * size + column;
    const j = b * size + column;
    const heldRe = at(re, i);
    const heldIm = at(im, i);
    re[i] = at(re, j);
    im[i] = at(im, j);
    re[j] = heldRe;
    im[j] = heldIm;
  }
  const held = wholeAt(order, a);
  order[a] = wholeAt(order, b);
  order[b] = held;
}

/** Takes a multiple of row `column` from `row` and keeps the multiple in the cell that it clears. */
function clearBelow(re: Float64Array, im: Float64Array, size: number, column: number, row: number): void {
  const source = column * size;
  const target = row * size;
  const a = at(re, target + column);
  const b = at(im, target + column);
  const c = at(re, source + column);
  const d = at(im, source + column);
  const factorRe = a * c - b * d;
  const factorIm = a * d + b * c;
  re[target + column] = factorRe;
  im[target + column] = factorIm;
  for (let k = column + 1; k < size; k++) {
    const sourceRe = at(re, source + k);
    const sourceIm = at(im, source + k);
    re[target + k] = at(re, target + k) - (factorRe * sourceRe - factorIm * sourceIm);
    im[target + k] = at(im, target + k) - (factorRe * sourceIm + factorIm * sourceRe);
  }
}

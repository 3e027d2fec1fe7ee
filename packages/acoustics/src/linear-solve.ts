// Small dense complex systems by Gaussian elimination with partial pivoting, in flat arrays: a response solves
// about a thousand of them while a hand is on a slider.
import type { Complex } from './complex.ts';

const SINGULAR_RATIO = 1e-14; // a pivot this small beside its column is rounding, not physics

/**
 * `size` rows of `size` coefficients and the right-hand side, row after row, real and imaginary parts apart. Rows and
 * columns must be of like size: whoever fills it picks units so.
 */
export type LinearSystem = {
  readonly size: number;
  readonly re: number[];
  readonly im: number[];
};

export function emptySystem(size: number): LinearSystem {
  const cells = size * (size + 1);
  return { size, re: new Array<number>(cells).fill(0), im: new Array<number>(cells).fill(0) };
}

/** Adds to a coefficient; column `size` is the right-hand side. */
export function addTo({ size, re, im }: LinearSystem, row: number, column: number, value: Complex): void {
  const cell = row * (size + 1) + column;
  re[cell] = at(re, cell) + value.re;
  im[cell] = at(im, cell) + value.im;
}

/** A cell that is there: the index is computed from the size. */
function at(cells: number[], index: number): number {
  return cells[index] ?? 0;
}

/** The unknowns, or null where the system is singular to rounding. Works in place. */
export function solveLinear(system: LinearSystem): Complex[] | null {
  const { size } = system;
  const least = smallestPivots(system);
  for (let column = 0; column < size; column++) {
    const pivot = largestBelow(system, column);
    if (!(pivot.sizeSquared > (least[column] ?? 0))) return null;
    swapRows(system, column, pivot.row);
    for (let row = column + 1; row < size; row++) clearBelow(system, column, row);
  }
  return substituteBack(system);
}

/** By column, squared: what a pivot must exceed. */
function smallestPivots({ size, re, im }: LinearSystem): number[] {
  const least: number[] = [];
  for (let column = 0; column < size; column++) {
    let largest = 0;
    for (let cell = column; cell < re.length; cell += size + 1) {
      largest = Math.max(largest, at(re, cell) ** 2 + at(im, cell) ** 2);
    }
    least.push(largest * SINGULAR_RATIO ** 2);
  }
  return least;
}

function largestBelow({ size, re, im }: LinearSystem, column: number): { row: number; sizeSquared: number } {
  let best = { row: column, sizeSquared: -1 };
  for (let row = column; row < size; row++) {
    const cell = row * (size + 1) + column;
    const sizeSquared = at(re, cell) ** 2 + at(im, cell) ** 2;
    if (sizeSquared > best.sizeSquared) best = { row, sizeSquared };
  }
  return best;
}

function swapRows({ size, re, im }: LinearSystem, a: number, b: number): void {
  if (a === b) return;
  for (let column = 0; column <= size; column++) {
    const [i, j] = [a * (size + 1) + column, b * (size + 1) + column];
    const [heldRe, heldIm] = [at(re, i), at(im, i)];
    re[i] = at(re, j);
    im[i] = at(im, j);
    re[j] = heldRe;
    im[j] = heldIm;
  }
}

/** Takes a multiple of row `column` from `row`, so that its cell under the pivot is gone. */
function clearBelow({ size, re, im }: LinearSystem, column: number, row: number): void {
  const source = column * (size + 1);
  const target = row * (size + 1);
  const factor = quotient(re, im, target + column, source + column);
  for (let k = column + 1; k <= size; k++) {
    const [sourceRe, sourceIm] = [at(re, source + k), at(im, source + k)];
    re[target + k] = at(re, target + k) - (factor.re * sourceRe - factor.im * sourceIm);
    im[target + k] = at(im, target + k) - (factor.re * sourceIm + factor.im * sourceRe);
  }
}

function quotient(re: number[], im: number[], over: number, under: number): Complex {
  const [a, b, c, d] = [at(re, over), at(im, over), at(re, under), at(im, under)];
  const squared = c * c + d * d;
  return { re: (a * c + b * d) / squared, im: (b * c - a * d) / squared };
}

function substituteBack({ size, re, im }: LinearSystem): Complex[] {
  const right = size; // column
  const unknowns: Complex[] = [];
  for (let row = size - 1; row >= 0; row--) {
    const start = row * (size + 1);
    const answer = quotient(re, im, start + right, start + row);
    unknowns.unshift(answer);
    for (let above = 0; above < row; above++) {
      const cell = above * (size + 1) + row;
      const target = above * (size + 1) + right;
      re[target] = at(re, target) - (at(re, cell) * answer.re - at(im, cell) * answer.im);
      im[target] = at(im, target) - (at(re, cell) * answer.im + at(im, cell) * answer.re);
    }
  }
  return unknowns;
}

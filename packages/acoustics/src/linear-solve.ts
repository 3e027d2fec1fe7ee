// Small dense complex systems by Gaussian elimination with partial pivoting.
import { type Complex, divide, magnitude, multiply, subtract, ZERO } from './complex.ts';

const SINGULAR_RATIO = 1e-14; // a pivot this small beside its column is rounding, not physics

/**
 * Solves `rows` x = `right` in place of both; null where the matrix is singular to rounding. Rows and columns must be
 * of like size: the caller picks units so.
 */
export function solveLinear(rows: Complex[][], right: Complex[]): Complex[] | null {
  const size = rows.length;
  const columnSizes = rows.map((_, column) => Math.max(...rows.map((row) => magnitude(row[column] ?? ZERO))));
  for (let column = 0; column < size; column++) {
    const pivot = bringPivotUp(rows, right, column);
    if (!(magnitude(pivot) > SINGULAR_RATIO * (columnSizes[column] ?? 0))) return null;
    for (let below = column + 1; below < size; below++) {
      subtractRow(rows, right, column, below, pivot);
    }
  }
  return substituteBack(rows, right);
}

function bringPivotUp(rows: Complex[][], right: Complex[], column: number): Complex {
  let best = column;
  let bestSize = -1;
  for (let row = column; row < rows.length; row++) {
    const size = magnitude(rows[row]?.[column] ?? ZERO);
    if (size > bestSize) [best, bestSize] = [row, size];
  }
  swap(rows, column, best);
  swap(right, column, best);
  return rows[column]?.[column] ?? ZERO;
}

function swap<T>(list: T[], i: number, j: number): void {
  const [a, b] = [list[i], list[j]];
  if (i === j || a === undefined || b === undefined) return;
  list[i] = b;
  list[j] = a;
}

function subtractRow(rows: Complex[][], right: Complex[], from: number, below: number, pivot: Complex): void {
  const source = rows[from];
  const target = rows[below];
  if (source === undefined || target === undefined) return;
  const factor = divide(target[from] ?? ZERO, pivot);
  for (let column = from; column < source.length; column++) {
    target[column] = subtract(target[column] ?? ZERO, multiply(factor, source[column] ?? ZERO));
  }
  right[below] = subtract(right[below] ?? ZERO, multiply(factor, right[from] ?? ZERO));
}

function substituteBack(rows: readonly Complex[][], right: readonly Complex[]): Complex[] {
  const answer: Complex[] = right.map(() => ZERO);
  for (let row = rows.length - 1; row >= 0; row--) {
    let sum = right[row] ?? ZERO;
    for (let column = row + 1; column < rows.length; column++) {
      sum = subtract(sum, multiply(rows[row]?.[column] ?? ZERO, answer[column] ?? ZERO));
    }
    answer[row] = divide(sum, rows[row]?.[row] ?? ZERO);
  }
  return answer;
}

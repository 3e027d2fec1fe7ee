// Smoothing over a part of an octave, and levels in dB as mean squares.
// Each row counts by the share of an octave that it stands for, so that dense rows don't outweigh sparse ones.
import { octavesPerRow } from './curve.ts';

/** Mean over 1/`parts` octave round each row. `frequenciesHz` rise. */
export function smoothed(
  frequenciesHz: readonly number[],
  values: readonly number[],
  parts: number,
): number[] {
  const half = 2 ** (1 / (2 * parts));
  const shares = octavesPerRow(frequenciesHz);
  let [from, to] = [0, 0];
  let [sum, weight] = [0, 0];
  return frequenciesHz.map((hz, i) => {
    while (to < frequenciesHz.length && (frequenciesHz[to] ?? 0) <= hz * half) {
      sum += (values[to] ?? 0) * (shares[to] ?? 0);
      weight += shares[to] ?? 0;
      to++;
    }
    while ((frequenciesHz[from] ?? 0) < hz / half) {
      sum -= (values[from] ?? 0) * (shares[from] ?? 0);
      weight -= shares[from] ?? 0;
      from++;
    }
    return to - from < 2 || weight <= 0 ? (values[i] ?? 0) : sum / weight;
  });
}

/** Levels smoothed by their mean square: what an ear or an analyser adds up. */
export function smoothedDb(
  frequenciesHz: readonly number[],
  levelsDb: readonly number[],
  parts: number,
): number[] {
  // About the highest level, so that squares of large levels don't overflow.
  const topDb = Math.max(...levelsDb);
  const squares = levelsDb.map((db) => 10 ** ((db - topDb) / 10));
  return smoothed(frequenciesHz, squares, parts).map(
    (square) => topDb + 10 * Math.log10(Math.max(square, LEAST_SQUARE)),
  );
}

const LEAST_SQUARE = 1e-30; // 300 dB down: no logarithm of what rounding left below nothing

/** Mean square of levels at one frequency, dB. */
export function meanDb(levelsDb: readonly number[]): number {
  const topDb = Math.max(...levelsDb);
  const mean = levelsDb.reduce((sum, db) => sum + 10 ** ((db - topDb) / 10), 0) / levelsDb.length;
  return topDb + 10 * Math.log10(mean);
}

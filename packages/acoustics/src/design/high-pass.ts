// A loudspeaker as a high-pass sⁿ/D(s) with D normalised to natural frequency 1: level, peak, delay, and how long a
// step rings. R. H. Small, "Closed-Box Loudspeaker Systems" and "Vented-Box Loudspeaker Systems", J. Audio Eng. Soc.
// 20-21, 1972-73, give the polynomials. Inductance is left out.
import { add, type Complex, complex, divide, magnitude, multiply } from '../complex.ts';
import { evaluate, realRoots } from '../real-roots.ts';

export type HighPass = {
  readonly naturalHz: number;
  /** Of D, constant first; the first and the last are 1. */
  readonly coefficients: readonly number[];
};

export function secondOrderHighPass(resonanceHz: number, q: number): HighPass {
  return { naturalHz: resonanceHz, coefficients: [1, 1 / q, 1] };
}

/** Level beside the flat part, dB. */
export function highPassDb({ naturalHz, coefficients }: HighPass, frequencyHz: number): number {
  const x = frequencyHz / naturalHz;
  const order = coefficients.length - 1;
  return 20 * (order * Math.log10(x) - Math.log10(magnitude(polynomialAt(coefficients, complex(0, x)))));
}

/** Group delay, ms: the phase of D turns by Re(D'/D) for each step of normalised frequency. */
export function highPassDelayMs({ naturalHz, coefficients }: HighPass, frequencyHz: number): number {
  const s = complex(0, frequencyHz / naturalHz);
  const slope = coefficients.slice(1).map((coefficient, k) => coefficient * (k + 1));
  const turn = divide(polynomialAt(slope, s), polynomialAt(coefficients, s)).re;
  return (turn * 1e3) / (2 * Math.PI * naturalHz);
}

/** Highest rise above the flat part; `frequencyHz` null and 0 dB where there is none. */
export function highPassPeak({ naturalHz, coefficients }: HighPass): {
  readonly db: number;
  readonly frequencyHz: number | null;
} {
  const inverse = inversePower(coefficients);
  const slope = inverse.slice(1).map((coefficient, k) => coefficient * (k + 1));
  const best = realRoots(slope)
    .filter((y) => y > 0)
    .map((y) => ({ db: -10 * Math.log10(evaluate(inverse, y)), frequencyHz: naturalHz / Math.sqrt(y) }))
    .reduce((top, next) => (next.db > top.db ? next : top), { db: LEAST_RISE_DB, frequencyHz: 0 });
  return best.frequencyHz === 0 ? { db: 0, frequencyHz: null } : best;
}

const LEAST_RISE_DB = 1e-6; // a rise below this is rounding in a flattest response

/** 1/|H|² as a polynomial in y = 1/x², constant (1) first. */
function inversePower(coefficients: readonly number[]): number[] {
  const even = coefficients.filter((_, k) => k % 2 === 0).map((c, k) => c * (-1) ** k);
  const odd = coefficients.filter((_, k) => k % 2 === 1).map((c, k) => c * (-1) ** k);
  const power = new Array<number>(coefficients.length).fill(0);
  even.forEach((a, i) => {
    for (const [j, b] of even.entries()) power[i + j] = (power[i + j] ?? 0) + a * b;
  });
  odd.forEach((a, i) => {
    for (const [j, b] of odd.entries()) power[i + j + 1] = (power[i + j + 1] ?? 0) + a * b;
  });
  return power.reverse();
}

function polynomialAt(coefficients: readonly number[], s: Complex): Complex {
  return coefficients.reduceRight<Complex>((sum, c) => add(multiply(sum, s), complex(c)), complex(0));
}

const SETTLED_SHARE = 0.1; // of the step's first jump: 20 dB down
const STEP = 0.02; // of normalised time; small beside the fastest pole of any alignment
const LONGEST = 600; // of normalised time: the softest alignment has died down long before
const STILL = SETTLED_SHARE / 10; // all of a state this small: it never comes back to a tenth

/** From a step at the input until its sound stays within a tenth of its first jump, ms. */
export function settleMs({ naturalHz, coefficients }: HighPass): number {
  const advance = stateStep(coefficients);
  let state = firstState(coefficients);
  let settled = 0;
  for (let time = STEP; time < LONGEST; time += STEP) {
    const before = Math.abs(state[0] ?? 0);
    state = advance.map((row) => row.reduce((sum, cell, k) => sum + cell * (state[k] ?? 0), 0));
    const now = Math.abs(state[0] ?? 0);
    if (now > SETTLED_SHARE) settled = time;
    else if (before > SETTLED_SHARE) settled = time - STEP * ((SETTLED_SHARE - now) / (before - now));
    else if (state.every((value) => Math.abs(value) < STILL)) break;
  }
  return (settled * 1e3) / (2 * Math.PI * naturalHz);
}

/** The step response and its derivatives at the first instant: 1, then by the recurrence that D gives. */
function firstState(coefficients: readonly number[]): number[] {
  const order = coefficients.length - 1;
  const state = [1];
  for (let k = 1; k < order; k++) {
    let next = 0;
    for (let j = 1; j <= k; j++) next -= (coefficients[order - j] ?? 0) * (state[k - j] ?? 0);
    state.push(next);
  }
  return state;
}

type Matrix = readonly (readonly number[])[];

/** exp(A STEP) to the fourth order of Taylor's series, A the companion matrix of D. */
function stateStep(coefficients: readonly number[]): Matrix {
  const order = coefficients.length - 1;
  const companion = Array.from({ length: order }, (_, row) =>
    Array.from({ length: order }, (_, column) => {
      if (row === order - 1) return -STEP * (coefficients[column] ?? 0);
      return column === row + 1 ? STEP : 0;
    }),
  );
  const identity = companion.map((row, i) => row.map((_, j) => (i === j ? 1 : 0)));
  let term: Matrix = identity;
  let sum: Matrix = identity;
  for (let k = 1; k <= 4; k++) {
    term = product(term, companion).map((row) => row.map((cell) => cell / k));
    sum = sum.map((row, i) => row.map((cell, j) => cell + (term[i]?.[j] ?? 0)));
  }
  return sum;
}

function product(a: Matrix, b: Matrix): Matrix {
  return a.map((row) => row.map((_, j) => row.reduce((sum, cell, k) => sum + cell * (b[k]?.[j] ?? 0), 0)));
}

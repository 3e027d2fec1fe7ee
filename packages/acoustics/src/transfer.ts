// Transfer functions as ratios of real polynomials in u = j f / f0: what every filter and the cabin shelf are made of.
// Their delay comes from the slopes of the polynomials themselves.
import { type Complex, divide } from './complex.ts';
import { at } from './linear-solve.ts';

export type RationalTransfer = {
  readonly referenceHz: number;
  /** Constant term first. */
  readonly numerator: readonly number[];
  readonly denominator: readonly number[];
};

/** Places in the gains that `addTransfer` adds to. */
export const GAIN_DB = 0;
export const PHASE_RAD = 1;
export const DELAY_S = 2;
export const GAIN_FIGURES = 3;

/** Gain and phase at a frequency above 0. */
export function transferAt(
  { referenceHz, numerator, denominator }: RationalTransfer,
  frequencyHz: number,
): Complex {
  const x = frequencyHz / referenceHz;
  return divide(
    { re: evenPart(numerator, x), im: oddPart(numerator, x) },
    { re: evenPart(denominator, x), im: oddPart(denominator, x) },
  );
}

/** Adds what one transfer does at a frequency to `gains`: levels, phases and delays of a chain add up. */
export function addTransfer(transfer: RationalTransfer, frequencyHz: number, gains: Float64Array): void {
  const x = frequencyHz / transfer.referenceHz;
  const { numerator, denominator } = transfer;
  const numeratorRe = evenPart(numerator, x);
  const numeratorIm = oddPart(numerator, x);
  const denominatorRe = evenPart(denominator, x);
  const denominatorIm = oddPart(denominator, x);
  const above = numeratorRe * numeratorRe + numeratorIm * numeratorIm;
  const below = denominatorRe * denominatorRe + denominatorIm * denominatorIm;
  const turnAbove = numeratorRe * oddSlope(numerator, x) - numeratorIm * evenSlope(numerator, x);
  const turnBelow = denominatorRe * oddSlope(denominator, x) - denominatorIm * evenSlope(denominator, x);
  gains[GAIN_DB] = at(gains, GAIN_DB) + 10 * Math.log10(above / below);
  gains[PHASE_RAD] =
    at(gains, PHASE_RAD) +
    Math.atan2(
      numeratorIm * denominatorRe - numeratorRe * denominatorIm,
      numeratorRe * denominatorRe + numeratorIm * denominatorIm,
    );
  gains[DELAY_S] =
    at(gains, DELAY_S) - (turnAbove / above - turnBelow / below) / (2 * Math.PI * transfer.referenceHz);
}

// A polynomial at u = j x is E(x) + j O(x): even powers make the real part, odd ones the imaginary part, and the sign
// turns with every second power.

function evenPart(coefficients: readonly number[], x: number): number {
  let sum = 0;
  let power = 1;
  for (let k = 0; k < coefficients.length; k += 2) {
    sum += (coefficients[k] ?? 0) * power;
    power *= -x * x;
  }
  return sum;
}

function oddPart(coefficients: readonly number[], x: number): number {
  let sum = 0;
  let power = x;
  for (let k = 1; k < coefficients.length; k += 2) {
    sum += (coefficients[k] ?? 0) * power;
    power *= -x * x;
  }
  return sum;
}

function evenSlope(coefficients: readonly number[], x: number): number {
  let sum = 0;
  let power = -x;
  for (let k = 2; k < coefficients.length; k += 2) {
    sum += k * (coefficients[k] ?? 0) * power;
    power *= -x * x;
  }
  return sum;
}

function oddSlope(coefficients: readonly number[], x: number): number {
  let sum = 0;
  let power = 1;
  for (let k = 1; k < coefficients.length; k += 2) {
    sum += k * (coefficients[k] ?? 0) * power;
    power *= -x * x;
  }
  return sum;
}

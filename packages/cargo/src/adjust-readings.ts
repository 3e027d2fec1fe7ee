// Least squares over all dimensions of a form, the redundant ones included. Condition adjustment: corrections x to the
// readings and y to the checks with J x - y = r, least in units of their ± (E. M. Mikhail and G. Gracie, Analysis and
// Adjustment of Survey Measurements, 1981), a few Gauss-Newton rounds. Covariance of the adjusted readings: U - U Jᵀ N⁻¹ J U
// with N = J U Jᵀ + Uc, in the scale of the ± (whatever share of readings lies within its ±, the same share does here).
import type { AdjustedReading, CheckDimension, SectionForm } from '@gusset/contracts/cargo';
import { construct } from './forms/construct.ts';
import type { DimensionValues } from './forms/construction.ts';
import type { TakenValue } from './readings.ts';

export type Adjustment = {
  /** Readings that build the section, in this order everywhere. */
  readonly keys: readonly string[];
  /** What is added to each: mm for a length, radians for an angle. */
  readonly corrections: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  /** Slope of each check (rows) against each reading, at the adjusted values. */
  readonly slopes: readonly (readonly number[])[];
};

const ROUNDS = 8;
/** A reading given as exact still gives way a little, or the conditions might have no answer: mm, radians. */
const LEAST_PLUS_MINUS = { length: 1e-3, angle: 1e-6 } as const;
const SLOPE_STEP = 1e-4;

/** Weight of each dimension: one over the square of this, by key. */
export function sigmasOf(form: SectionForm, used: ReadonlyMap<string, TakenValue>): DimensionValues {
  return new Map(
    form.dimensions.map(({ key, unit }) => [
      key,
      Math.max(LEAST_PLUS_MINUS[unit], used.get(key)?.plusMinus ?? 0),
    ]),
  );
}

/** `checks` as measured against what `used` makes of them; without any, nothing is corrected. */
export function adjustmentOf(
  form: SectionForm,
  used: ReadonlyMap<string, TakenValue>,
  checks: readonly CheckDimension[],
): Adjustment {
  const checkKeys = new Set(form.dimensions.filter((it) => it.need === 'check').map((it) => it.key));
  const keys = [...used.keys()].filter((key) => !checkKeys.has(key));
  const sigmas = sigmasOf(form, used);
  const readingSigma = keys.map((key) => sigmas.get(key) ?? 0);
  const checkSigma = checks.map(({ key }) => sigmas.get(key) ?? 0);
  let corrections: readonly number[] = keys.map(() => 0);
  let slopes: readonly (readonly number[])[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const now = corrected(used, keys, corrections);
    const derived = construct(form, now).derived;
    slopes = checks.map((check) => keys.map((key) => slopeOf(form, now, check.key, key)));
    const wanted = checks.map(
      (check, row) => check.measuredMm - (derived.get(check.key) ?? 0) + product(slopes[row], corrections),
    );
    const forces = solved(normalMatrix(slopes, readingSigma, checkSigma), wanted);
    const weighted = weightedRows(slopes, readingSigma);
    corrections = keys.map((_, i) =>
      product(
        forces,
        weighted.map((row) => row[i] ?? 0),
      ),
    );
  }
  return { keys, corrections, slopes, covariance: covarianceOf(slopes, readingSigma, checkSigma) };
}

/** The values that the section then stands on. */
export function adjustedValues(
  used: ReadonlyMap<string, TakenValue>,
  { keys, corrections }: Adjustment,
): DimensionValues {
  return corrected(used, keys, corrections);
}

/** Every dimension before and after, in the order of the form. */
export function adjustedReadings(
  form: SectionForm,
  used: ReadonlyMap<string, TakenValue>,
  checks: readonly CheckDimension[],
  adjustment: Adjustment,
): AdjustedReading[] {
  const { keys, covariance, slopes } = adjustment;
  const values = adjustedValues(used, adjustment);
  const { derived } = construct(form, values);
  const sigmas = sigmasOf(form, used);
  return form.dimensions.flatMap((dimension): AdjustedReading[] => {
    const { key, unit } = dimension;
    const taken = used.get(key);
    if (taken === undefined) return [];
    const row = checks.findIndex((check) => check.key === key);
    const index = keys.indexOf(key);
    if (row === -1 && index === -1) return [];
    const adjusted = row === -1 ? (values.get(key) ?? taken.value) : (derived.get(key) ?? taken.value);
    const variance =
      row === -1 ? (covariance[index]?.[index] ?? 0) : quadratic(covariance, slopes[row] ?? []);
    const residual = taken.value - adjusted;
    return [
      {
        key,
        unit,
        isCheck: row !== -1,
        measured: taken.value,
        adjusted,
        residual,
        timesPlusMinus: Math.abs(residual) / (sigmas.get(key) ?? 1),
        plusMinus: taken.plusMinus,
        adjustedPlusMinus: Math.min(taken.plusMinus, Math.sqrt(Math.max(0, variance))),
      },
    ];
  });
}

/** gᵀ C g. */
export function quadratic(matrix: readonly (readonly number[])[], vector: readonly number[]): number {
  return product(
    vector,
    matrix.map((row) => product(row, vector)),
  );
}

function corrected(
  used: ReadonlyMap<string, TakenValue>,
  keys: readonly string[],
  corrections: readonly number[],
): Map<string, number> {
  const values = new Map([...used].map(([key, taken]) => [key, taken.value]));
  for (const [i, key] of keys.entries()) values.set(key, (values.get(key) ?? 0) + (corrections[i] ?? 0));
  return values;
}

function product(a: readonly number[] = [], b: readonly number[] = []): number {
  return a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);
}

/** J U. */
function weightedRows(slopes: readonly (readonly number[])[], readingSigma: readonly number[]): number[][] {
  return slopes.map((row) => row.map((slope, i) => slope * (readingSigma[i] ?? 0) ** 2));
}

/** J U Jᵀ + Uc. */
function normalMatrix(
  slopes: readonly (readonly number[])[],
  readingSigma: readonly number[],
  checkSigma: readonly number[],
): number[][] {
  const weighted = weightedRows(slopes, readingSigma);
  return slopes.map((row, i) =>
    weighted.map((other, j) => product(row, other) + (i === j ? (checkSigma[i] ?? 0) ** 2 : 0)),
  );
}

function covarianceOf(
  slopes: readonly (readonly number[])[],
  readingSigma: readonly number[],
  checkSigma: readonly number[],
): number[][] {
  const weighted = weightedRows(slopes, readingSigma);
  const normal = normalMatrix(slopes, readingSigma, checkSigma);
  // Column j of N⁻¹ J U.
  const columns = readingSigma.map((_, j) =>
    solved(
      normal,
      weighted.map((row) => row[j] ?? 0),
    ),
  );
  return readingSigma.map((sigma, i) =>
    readingSigma.map((_, j) => {
      const taken = product(
        weighted.map((row) => row[i] ?? 0),
        columns[j],
      );
      return (i === j ? sigma * sigma : 0) - taken;
    }),
  );
}

function slopeOf(form: SectionForm, values: DimensionValues, check: string, key: string): number {
  const value = values.get(key) ?? 0;
  const at = (moved: number) => construct(form, new Map(values).set(key, moved)).derived.get(check) ?? 0;
  return (at(value + SLOPE_STEP) - at(value - SLOPE_STEP)) / (2 * SLOPE_STEP);
}

/** Gauss elimination with row exchange; the matrix is positive definite because each check has a ± of its own. */
function solved(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, index) => [...row, right[index] ?? 0]);
  const size = rows.length;
  for (let column = 0; column < size; column += 1) {
    const rest = rows.slice(column).sort((a, b) => Math.abs(b[column] ?? 0) - Math.abs(a[column] ?? 0));
    rows.splice(column, rest.length, ...rest);
    const pivot = rows[column] ?? [];
    for (const row of rows.slice(column + 1)) {
      const factor = (row[column] ?? 0) / (pivot[column] ?? 1);
      for (let i = column; i <= size; i += 1) row[i] = (row[i] ?? 0) - factor * (pivot[i] ?? 0);
    }
  }
  const answer = new Array<number>(size).fill(0);
  for (let index = size - 1; index >= 0; index -= 1) {
    const row = rows[index] ?? [];
    const known = answer.reduce((sum, value, i) => (i > index ? sum + value * (row[i] ?? 0) : sum), 0);
    answer[index] = ((row[size] ?? 0) - known) / (row[index] ?? 1);
  }
  return answer;
}

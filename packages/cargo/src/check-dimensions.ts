// Redundant dimensions: the residual of each against its ±, and what least squares would change in the readings.
// Condition adjustment: corrections x to the readings and y to the checks with J x - y = r, least in units of their ±
// (E. M. Mikhail and G. Gracie, Analysis and Adjustment of Survey Measurements, 1981), a few Gauss-Newton rounds.
import type { CheckDimension, ReadingCorrection, SectionForm } from '@gusset/contracts/cargo';
import { construct } from './forms/construct.ts';
import type { TakenValue } from './readings.ts';
import { type Spread, worstOf } from './spread.ts';

export function checksOf(
  derived: ReadonlyMap<string, number>,
  taken: ReadonlyMap<string, TakenValue>,
  spread: Spread,
): CheckDimension[] {
  const checks: CheckDimension[] = [];
  for (const [key, derivedMm] of derived) {
    const measured = taken.get(key);
    if (measured === undefined) continue;
    const residualMm = measured.value - derivedMm;
    const allowedMm = measured.plusMinus + worstOf(spread.scalars.get(`derived:${key}`) ?? []);
    const agrees = Math.abs(residualMm) <= allowedMm;
    checks.push({ key, measuredMm: measured.value, derivedMm, residualMm, allowedMm, agrees });
  }
  return checks;
}

const ROUNDS = 8;
/** A reading given as exact still gives way a little, or the conditions might have no answer: mm or radians. */
const LEAST_PLUS_MINUS = 1e-3;
const SLOPE_STEP = 1e-4;

/** Empty where every check agrees. Largest correction, in its own ±, first. */
export function correctionsOf(
  form: SectionForm,
  used: ReadonlyMap<string, TakenValue>,
  checks: readonly CheckDimension[],
): ReadingCorrection[] {
  if (checks.every((check) => check.agrees)) return [];
  const checkKeys = new Set(form.dimensions.filter((it) => it.need === 'check').map((it) => it.key));
  const keys = [...used.keys()].filter((key) => !checkKeys.has(key));
  const sigma = (key: string) => Math.max(LEAST_PLUS_MINUS, used.get(key)?.plusMinus ?? 0);
  let corrections: readonly number[] = keys.map(() => 0);
  for (let round = 0; round < ROUNDS; round += 1) {
    const now = new Map([...used].map(([key, taken]) => [key, taken.value]));
    for (const [i, key] of keys.entries()) now.set(key, (now.get(key) ?? 0) + (corrections[i] ?? 0));
    const derived = derivedAt(form, now);
    const slopes = checks.map((check) => keys.map((key) => slopeOf(form, now, check.key, key)));
    const wanted = checks.map(
      (check, row) => check.measuredMm - (derived.get(check.key) ?? 0) + product(slopes[row], corrections),
    );
    corrections = adjusted(
      slopes,
      wanted,
      keys.map(sigma),
      checks.map(({ key }) => sigma(key)),
    );
  }
  return listed(form, new Map(keys.map((key, i) => [key, corrections[i] ?? 0])), sigma);
}

function product(a: readonly number[] = [], b: readonly number[] = []): number {
  return a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);
}

/** One linear round: forces from (J U Jᵀ + Uc) f = r, corrections U Jᵀ f. */
function adjusted(
  slopes: readonly (readonly number[])[],
  wanted: readonly number[],
  readingSigma: readonly number[],
  checkSigma: readonly number[],
): number[] {
  const weighted = slopes.map((row) => row.map((slope, i) => slope * (readingSigma[i] ?? 0) ** 2));
  const normal = slopes.map((row, i) =>
    weighted.map((other, j) => product(row, other) + (i === j ? (checkSigma[i] ?? 0) ** 2 : 0)),
  );
  const forces = solved(normal, wanted);
  return readingSigma.map((_, i) =>
    product(
      forces,
      weighted.map((row) => row[i] ?? 0),
    ),
  );
}

function derivedAt(form: SectionForm, values: ReadonlyMap<string, number>): ReadonlyMap<string, number> {
  return construct(form, values).derived;
}

function slopeOf(form: SectionForm, values: ReadonlyMap<string, number>, check: string, key: string): number {
  const value = values.get(key) ?? 0;
  const above = derivedAt(form, new Map(values).set(key, value + SLOPE_STEP)).get(check) ?? 0;
  const below = derivedAt(form, new Map(values).set(key, value - SLOPE_STEP)).get(check) ?? 0;
  return (above - below) / (2 * SLOPE_STEP);
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

function listed(
  form: SectionForm,
  corrections: ReadonlyMap<string, number>,
  sigma: (key: string) => number,
): ReadingCorrection[] {
  const units = new Map(form.dimensions.map((dimension) => [dimension.key, dimension.unit]));
  return [...corrections]
    .map(([key, by]) => ({
      key,
      by,
      unit: units.get(key) ?? ('length' as const),
      timesPlusMinus: Math.abs(by) / sigma(key),
    }))
    .filter((it) => it.timesPlusMinus > LISTED_FROM)
    .sort((a, b) => b.timesPlusMinus - a.timesPlusMinus || (a.key < b.key ? -1 : 1));
}

/** A correction of a hundredth of the reading's own ± says nothing. */
const LISTED_FROM = 0.01;

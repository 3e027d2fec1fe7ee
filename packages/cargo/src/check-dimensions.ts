// Redundant dimensions: the residual of each against its ±, and what least squares would change in the readings.
import type { CheckDimension, ReadingCorrection, SectionForm } from '@gusset/contracts/cargo';
import { adjustmentOf, sigmasOf } from './adjust-readings.ts';
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

/** Empty where every check agrees. Largest correction, in its own ±, first. */
export function correctionsOf(
  form: SectionForm,
  used: ReadonlyMap<string, TakenValue>,
  checks: readonly CheckDimension[],
): ReadingCorrection[] {
  if (checks.every((check) => check.agrees)) return [];
  const { keys, corrections } = adjustmentOf(form, used, checks);
  const sigmas = sigmasOf(form, used);
  const units = new Map(form.dimensions.map((dimension) => [dimension.key, dimension.unit]));
  return keys
    .map((key, i): ReadingCorrection => {
      const by = corrections[i] ?? 0;
      return {
        key,
        by,
        unit: units.get(key) ?? 'length',
        timesPlusMinus: Math.abs(by) / (sigmas.get(key) ?? 1),
      };
    })
    .filter((it) => it.timesPlusMinus > LISTED_FROM)
    .sort((a, b) => b.timesPlusMinus - a.timesPlusMinus || (a.key < b.key ? -1 : 1));
}

/** A correction of a hundredth of the reading's own ± says nothing. */
const LISTED_FROM = 0.01;

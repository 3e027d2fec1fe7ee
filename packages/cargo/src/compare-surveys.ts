// Two sets of readings of one form, dimension by dimension: two surveys of a model, or a car against its model.
import type { DimensionComparison, Measurement, SectionForm } from '@gusset/contracts/cargo';
import { readingsOf, type TakenValue } from './readings.ts';

/**
 * In the order of the form; dimensions that neither has are left out. Several readings of one dimension count as the
 * cavity would use them. Readings the form does not take are left out too: `buildCavity` refuses them by name.
 */
export function compareSurveys(
  form: SectionForm,
  first: readonly Measurement[],
  second: readonly Measurement[],
): DimensionComparison[] {
  const [one, other] = [readingsOf(form, first).taken, readingsOf(form, second).taken];
  return form.dimensions.flatMap(({ key, letter, label, unit }) => {
    const [a, b] = [one.get(key) ?? null, other.get(key) ?? null];
    if (a === null && b === null) return [];
    return [{ key, letter, label, unit, first: a, second: b, ...verdictOf(a, b) }];
  });
}

/** Apart by more than both ± together: the spaces differ, or one reading is wrong. */
function verdictOf(
  a: TakenValue | null,
  b: TakenValue | null,
): Pick<DimensionComparison, 'difference' | 'allowed' | 'verdict'> {
  if (a === null || b === null) {
    return { difference: null, allowed: null, verdict: a === null ? 'only-second' : 'only-first' };
  }
  const difference = b.value - a.value;
  const allowed = a.plusMinus + b.plusMinus;
  return { difference, allowed, verdict: Math.abs(difference) <= allowed + ROUNDING ? 'agrees' : 'differs' };
}

/** Of sums of typed figures: mm or radians. */
const ROUNDING = 1e-9;

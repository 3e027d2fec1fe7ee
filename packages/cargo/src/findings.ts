// Contradictions between dimensions, as findings with the numbers in them.
import type { CavityFinding, CheckDimension } from '@gusset/contracts/cargo';
import type { Construction } from './forms/construction.ts';
import { type Spread, worstOf } from './spread.ts';

/** An opening larger than the space behind it by more than the ± explain. */
export function comparisonFindings(construction: Construction, spread: Spread): CavityFinding[] {
  return construction.comparisons.flatMap((comparison) => {
    const byMm = comparison.openingMm - comparison.cavityMm;
    const allowedMm = worstOf(spread.scalars.get(`compare:${comparison.code}`) ?? []);
    return byMm > allowedMm ? [{ ...comparison, byMm }] : [];
  });
}

export function checkFindings(checks: readonly CheckDimension[]): CavityFinding[] {
  return checks
    .filter((check) => !check.agrees)
    .map(({ key, measuredMm, derivedMm, residualMm, allowedMm }) => ({
      code: 'check-disagrees',
      key,
      measuredMm,
      derivedMm,
      byMm: residualMm,
      allowedMm,
    }));
}

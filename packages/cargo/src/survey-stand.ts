// What the walls of a survey stand on: the readings as taken, or the values reconciled over all dimensions.
import type {
  AdjustedReading,
  CheckDimension,
  CornerSpread,
  Measurement,
  SectionForm,
} from '@gusset/contracts/cargo';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { adjustedReadings, adjustedValues, adjustmentOf } from './adjust-readings.ts';
import { checksOf } from './check-dimensions.ts';
import {
  ellipseOf,
  independent,
  longAxisMm,
  type ReadingCovariance,
  worstAtCorner,
} from './corner-spread.ts';
import { construct } from './forms/construct.ts';
import type { Construction, DimensionValues } from './forms/construction.ts';
import { type OutlineWall, outlineOf } from './outline.ts';
import { fieldOf } from './readings.ts';
import { type Spread, spreadOf } from './spread.ts';
import { type AdmittedSurvey, admittedSurvey, brokenOutline } from './survey-door.ts';

export type Stand = {
  readonly construction: Construction;
  readonly outline: readonly OutlineWall[];
  readonly spread: Spread;
  /** Of the readings as taken: reconciling them does not make a contradiction go away. */
  readonly checks: readonly CheckDimension[];
  /** Null = on the readings as taken. */
  readonly reconciled: {
    readonly adjusted: readonly AdjustedReading[];
    readonly covariance: ReadingCovariance;
    readonly steps: DimensionValues;
  } | null;
};

/** Refused where the reconciled values leave no section although the readings do. */
export function standOf(
  form: SectionForm,
  admitted: AdmittedSurvey,
  { reconciles = false }: { readonly reconciles?: boolean },
): Stand | Refusal {
  const { readings, used, values, construction, outline } = admitted;
  const ownSteps = new Map([...used].map(([key, taken]) => [key, taken.plusMinus]));
  const spread = spreadOf(form, values, ownSteps);
  const checks = checksOf(construction.derived, readings.taken, spread);
  if (!reconciles || checks.length === 0) return { construction, outline, spread, checks, reconciled: null };
  const adjustment = adjustmentOf(form, used, checks);
  const adjusted = adjustedValues(used, adjustment);
  const built = construct(form, adjusted);
  const impossible = built.impossible[0];
  if (impossible !== undefined) return refuse(fieldOf(impossible.key), impossible);
  const around = outlineOf(built);
  const broken = brokenOutline(form, adjusted, around);
  if (broken !== null) return broken;
  // The true value lies within ± of the reading, so within ± and correction of what the walls stand on.
  const steps = new Map(
    adjustment.keys.map((key, i) => [
      key,
      (used.get(key)?.plusMinus ?? 0) + Math.abs(adjustment.corrections[i] ?? 0),
    ]),
  );
  return {
    construction: built,
    outline: around,
    spread: spreadOf(form, adjusted, steps),
    checks,
    reconciled: {
      adjusted: adjustedReadings(form, used, checks, adjustment),
      covariance: { keys: adjustment.keys, matrix: adjustment.covariance },
      steps,
    },
  };
}

const NOTHING_AROUND = { obstructions: [], keepFree: [] };

/**
 * Every dimension before and after least squares over all of them, weighted by their ±: what a shop may take over. Null
 * where no redundant dimension was taken. Refused as `buildCavity` refuses.
 */
export function reconcileSurvey(
  form: SectionForm,
  measurements: readonly Measurement[],
): readonly AdjustedReading[] | null | Refusal {
  const admitted = admittedSurvey(form, measurements, NOTHING_AROUND);
  if (isRefusal(admitted)) return admitted;
  const stand = standOf(form, admitted, { reconciles: true });
  if (isRefusal(stand)) return stand;
  return stand.reconciled === null ? null : stand.reconciled.adjusted;
}

/** ± of every corner of the section, in the order of the walls: likely as a covariance, and worst. */
export function cornerSpreads(
  form: SectionForm,
  measurements: readonly Measurement[],
  options: { readonly reconciles?: boolean } = {},
): readonly CornerSpread[] | Refusal {
  const admitted = admittedSurvey(form, measurements, NOTHING_AROUND);
  if (isRefusal(admitted)) return admitted;
  const stand = standOf(form, admitted, options);
  if (isRefusal(stand)) return stand;
  const own = new Map([...admitted.used].map(([key, { plusMinus }]) => [key, plusMinus]));
  const { steps, covariance } = stand.reconciled ?? { steps: own, covariance: independent(own) };
  return stand.outline.map(({ start }) => {
    const ellipse = ellipseOf(stand.spread, steps, covariance, start.id);
    const likelyMm = longAxisMm(ellipse);
    return {
      cornerId: start.id,
      at: start.at,
      ...ellipse,
      likelyMm,
      worstMm: worstAtCorner(stand.spread, start.id),
    };
  });
}

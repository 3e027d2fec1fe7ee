// The likely ± of a corner as a covariance: where readings were reconciled, their errors are no longer independent.
import type { PointMm } from '@gusset/contracts/geometry';
import { quadratic } from './adjust-readings.ts';
import type { DimensionValues } from './forms/construction.ts';
import { dot, lengthOf } from './plane/vector.ts';
import type { Spread, WallEnd } from './spread.ts';

/** Errors of the readings taken together, in the scale of their ±. */
export type ReadingCovariance = {
  readonly keys: readonly string[];
  readonly matrix: readonly (readonly number[])[];
};

/** Readings that know nothing of each other. */
export function independent(plusMinus: ReadonlyMap<string, number>): ReadingCovariance {
  const keys = [...plusMinus.keys()];
  return {
    keys,
    matrix: keys.map((key, i) => keys.map((_, j) => (i === j ? (plusMinus.get(key) ?? 0) ** 2 : 0))),
  };
}

export type Ellipse = { readonly xxMm2: number; readonly xyMm2: number; readonly yyMm2: number };

/** Covariance of a corner that `spread` found by moving readings by `steps`. */
export function ellipseOf(
  spread: Spread,
  steps: DimensionValues,
  covariance: ReadingCovariance,
  cornerId: string,
): Ellipse {
  const { x, y } = slopesOf(spread, steps, covariance.keys, cornerId);
  const [xxMm2, yyMm2] = [quadratic(covariance.matrix, x), quadratic(covariance.matrix, y)];
  const sum = quadratic(
    covariance.matrix,
    x.map((it, i) => it + (y[i] ?? 0)),
  );
  return { xxMm2: Math.max(0, xxMm2), xyMm2: (sum - xxMm2 - yyMm2) / 2, yyMm2: Math.max(0, yyMm2) };
}

/** Half the long axis, mm. */
export function longAxisMm({ xxMm2, xyMm2, yyMm2 }: Ellipse): number {
  const middle = (xxMm2 + yyMm2) / 2;
  return Math.sqrt(Math.max(0, middle + Math.hypot((xxMm2 - yyMm2) / 2, xyMm2)));
}

/** Likely ± of a wall square to itself, mm: of its less sure end; a jutting end counts in every direction. */
export function likelyAcross(
  spread: Spread,
  steps: DimensionValues,
  covariance: ReadingCovariance,
  ends: readonly WallEnd[],
  normal: PointMm,
): number {
  return Math.max(
    ...ends.map(({ cornerId, juts }) => {
      if (juts) return longAxisMm(ellipseOf(spread, steps, covariance, cornerId));
      const { x, y } = slopesOf(spread, steps, covariance.keys, cornerId);
      const across = x.map((it, i) => dot({ xMm: it, yMm: y[i] ?? 0 }, normal));
      return Math.sqrt(Math.max(0, quadratic(covariance.matrix, across)));
    }),
  );
}

/** Every reading against it, mm. */
export function worstAtCorner(spread: Spread, cornerId: string): number {
  const ways = [...(spread.corners.get(cornerId)?.values() ?? [])];
  return ways.reduce((sum, each) => sum + Math.max(...each.map(lengthOf)), 0);
}

/** Every reading against it in one direction, mm. */
export function worstAlong(spread: Spread, cornerId: string, along: PointMm): number {
  const ways = [...(spread.corners.get(cornerId)?.values() ?? [])];
  return ways.reduce((sum, each) => sum + Math.max(...each.map((way) => Math.abs(dot(way, along)))), 0);
}

/** How a corner follows each reading: mm for a mm, or for a radian. */
function slopesOf(
  spread: Spread,
  steps: DimensionValues,
  keys: readonly string[],
  cornerId: string,
): { readonly x: number[]; readonly y: number[] } {
  const byKey = spread.corners.get(cornerId);
  const slopes = keys.map((key): PointMm => {
    const step = steps.get(key) ?? 0;
    const [up, down] = byKey?.get(key) ?? [];
    if (up === undefined || step === 0) return { xMm: 0, yMm: 0 };
    const back = down ?? { xMm: -up.xMm, yMm: -up.yMm };
    return { xMm: (up.xMm - back.xMm) / (2 * step), yMm: (up.yMm - back.yMm) / (2 * step) };
  });
  return { x: slopes.map(({ xMm }) => xMm), y: slopes.map(({ yMm }) => yMm) };
}

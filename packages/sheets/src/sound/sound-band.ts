// Where the sheet looks, and the few readings of a curve that several of its figures need.
import type { Stretch } from '@gusset/contracts/sound';

/** Where a trunk or boot system plays: the band that verdicts look at. */
export const BAND = { lowHz: 20, highHz: 120 };

/** Even over the octaves, as a chart reads them. */
export const CURVES = { lowHz: 10, highHz: 500, count: 180 };

/** Indices of the points from `lowHz` to `highHz`, both included. */
export function pointsBetween(
  frequenciesHz: readonly number[],
  { lowHz, highHz }: { readonly lowHz: number; readonly highHz: number },
): readonly number[] {
  return frequenciesHz.flatMap((hz, i) => (hz >= lowHz && hz <= highHz ? [i] : []));
}

/** Highest value of a curve in the band. */
export function highestInBand(frequenciesHz: readonly number[], curve: readonly number[]): number {
  return Math.max(...pointsBetween(frequenciesHz, BAND).map((i) => curve[i] ?? 0));
}

/** Runs of neighbouring points that `is` true of, lowest first. */
export function stretchesWhere(
  frequenciesHz: readonly number[],
  is: (index: number) => boolean,
): readonly Stretch[] {
  const stretches: { fromHz: number; toHz: number }[] = [];
  let open: { fromHz: number; toHz: number } | null = null;
  for (const [i, hz] of frequenciesHz.entries()) {
    if (!is(i)) {
      open = null;
      continue;
    }
    if (open === null) {
      open = { fromHz: hz, toHz: hz };
      stretches.push(open);
    }
    open.toHz = hz;
  }
  return stretches;
}

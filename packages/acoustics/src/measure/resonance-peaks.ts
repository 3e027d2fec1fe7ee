// Peaks and dips of an impedance curve, found past the noise of a sweep and placed between its rows.
import type { SweepColumns } from '@gusset/contracts/measurement';
import { firstAtOrAbove } from './curve.ts';
import { smoothed } from './smoothing.ts';

/** Peaks of resonance lie here; above, a curve only rises with the coil. */
const HIGHEST_HZ = 500;
const SMOOTHING = 24; // parts of an octave: calms rows, leaves peaks
/** A peak stands this far above the dips on both sides; less is ripple. */
const LEAST_RISE = 1.12;
/** Rows this near to the top carry the parabola that places it. */
const CROWN = 0.93;

export type Extreme = { readonly frequencyHz: number; readonly ohm: number };

/** Peaks below 500 Hz that stand clear of what lies beside them, from low to high. */
export function resonancePeaks(columns: SweepColumns): Extreme[] {
  const { frequenciesHz, values } = below(columns, HIGHEST_HZ);
  const calm = smoothed(frequenciesHz, values, SMOOTHING);
  const tops: number[] = [];
  let lowest = calm[0] ?? 0; // since the last peak
  let top: number | null = null;
  for (const [i, ohm] of calm.entries()) {
    const highest = top === null ? 0 : (calm[top] ?? 0);
    if (top !== null && ohm < highest / LEAST_RISE) {
      tops.push(top);
      top = null;
      lowest = ohm;
    } else if (top === null ? ohm > lowest * LEAST_RISE : ohm > highest) {
      top = i;
    } else if (top === null) {
      lowest = Math.min(lowest, ohm);
    }
  }
  return tops.map((at) => crown(frequenciesHz, values, calm, at));
}

/** The lowest place between two frequencies. */
export function dipBetween(columns: SweepColumns, lowHz: number, highHz: number): Extreme {
  const { frequenciesHz, values } = below(columns, HIGHEST_HZ);
  const from = firstAtOrAbove(frequenciesHz, lowHz);
  const to = firstAtOrAbove(frequenciesHz, highHz);
  const upsideDown = values.map((ohm) => 1 / ohm);
  const calm = smoothed(frequenciesHz, upsideDown, SMOOTHING);
  const at = calm.reduce(
    (best, value, i) => (i >= from && i < to && value > (calm[best] ?? 0) ? i : best),
    from,
  );
  const { frequencyHz, ohm } = crown(frequenciesHz, upsideDown, calm, at);
  return { frequencyHz, ohm: 1 / ohm };
}

function below({ frequenciesHz, values }: SweepColumns, highestHz: number) {
  const rows = firstAtOrAbove(frequenciesHz, highestHz);
  return { frequenciesHz: frequenciesHz.slice(0, rows), values: values.slice(0, rows) };
}

/** Top of the parabola through the rows near it, in logarithms of both. */
function crown(
  frequenciesHz: readonly number[],
  values: readonly number[],
  calm: readonly number[],
  at: number,
): Extreme {
  const edge = (calm[at] ?? 0) * CROWN;
  // Sharp peaks on wide rows: one row on each side at least.
  let [from, to] = [Math.max(at - 1, 0), Math.min(at + 1, calm.length - 1)];
  while (from > 0 && (calm[from - 1] ?? 0) >= edge) from--;
  while (to < calm.length - 1 && (calm[to + 1] ?? 0) >= edge) to++;
  const centre = Math.log(frequenciesHz[at] ?? 1);
  const width = Math.max(Math.log((frequenciesHz[to] ?? 1) / (frequenciesHz[from] ?? 1)), 1e-6);
  const x = frequenciesHz.slice(from, to + 1).map((hz) => (Math.log(hz) - centre) / width);
  const y = values.slice(from, to + 1).map(Math.log);
  const parabola = parabolaThrough(x, y);
  const plain = { frequencyHz: frequenciesHz[at] ?? 0, ohm: values[at] ?? 0 };
  if (parabola === null || parabola.curvature >= 0) return plain;
  const peak = -parabola.slope / (2 * parabola.curvature);
  if (Math.abs(peak) > 1) return plain;
  return {
    frequencyHz: Math.exp(centre + peak * width),
    ohm: Math.exp(parabola.level + parabola.slope * peak + parabola.curvature * peak ** 2),
  };
}

/** Least squares by the normal equations; null where there are fewer than three places. */
function parabolaThrough(x: readonly number[], y: readonly number[]) {
  if (x.length < 3) return null;
  const moment = (power: number) => x.reduce((sum, value) => sum + value ** power, 0);
  const mixed = (power: number) => x.reduce((sum, value, i) => sum + value ** power * (y[i] ?? 0), 0);
  const [s0, s1, s2, s3, s4] = [x.length, moment(1), moment(2), moment(3), moment(4)];
  const [t0, t1, t2] = [mixed(0), mixed(1), mixed(2)];
  const whole = determinant(s0, s1, s2, s1, s2, s3, s2, s3, s4);
  if (whole === 0) return null;
  return {
    level: determinant(t0, s1, s2, t1, s2, s3, t2, s3, s4) / whole,
    slope: determinant(s0, t0, s2, s1, t1, s3, s2, t2, s4) / whole,
    curvature: determinant(s0, s1, t0, s1, s2, t1, s2, s3, t2) / whole,
  };
}

/** Of three rows of three. */
function determinant(
  ...m: readonly [number, number, number, number, number, number, number, number, number]
) {
  const [a, b, c, d, e, f, g, h, i] = m;
  return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
}

// The engine beside the fixture: what a test checks and what `compare.ts` prints are the same differences.
import { readFileSync } from 'node:fs';
import type { ResponseResult, SoundSystemInput } from '@gusset/contracts/acoustics';

export type CurveName =
  | 'splDb'
  | 'phaseRad'
  | 'groupDelayMs'
  | 'impedanceOhm'
  | 'impedancePhaseRad'
  | 'currentArms'
  | 'realPowerWatts'
  | 'apparentPowerVa'
  | 'excursionMm'
  | 'innerExcursionMm'
  | 'radiatorExcursionMm'
  | 'portSpeedMps'
  | 'rearPortSpeedMps';

type Answer = { readonly [Name in CurveName]: readonly number[] | null } & {
  readonly id: string;
  readonly input: SoundSystemInput;
};
type Step = {
  readonly id: string;
  readonly input: SoundSystemInput;
  readonly timesMs: readonly number[];
  readonly stepPa: readonly number[];
};
export type Fixture = { readonly answers: readonly Answer[]; readonly steps: readonly Step[] };

/** Written by make-truth.ts. */
export function readFixture(): Fixture {
  return JSON.parse(readFileSync(new URL('./ngspice.json', import.meta.url), 'utf8'));
}

/** How a difference is counted: in the curve's own unit, or as a share of the value. */
type Count = 'absolute' | 'relative' | 'turn';

/**
 * Widest difference allowed. What is left is the rounding of the fixture, and where Bessel sections are in play the
 * four digits of their printed table.
 */
export const TOLERANCE: Readonly<
  Record<CurveName, { readonly count: Count; readonly allowed: number; readonly unit: string }>
> = {
  splDb: { count: 'absolute', allowed: 0.05, unit: 'dB' },
  phaseRad: { count: 'turn', allowed: 0.002, unit: 'rad' },
  groupDelayMs: { count: 'absolute', allowed: 0.05, unit: 'ms' },
  impedanceOhm: { count: 'relative', allowed: 0.002, unit: '' },
  impedancePhaseRad: { count: 'turn', allowed: 0.002, unit: 'rad' },
  currentArms: { count: 'relative', allowed: 0.002, unit: '' },
  realPowerWatts: { count: 'relative', allowed: 0.002, unit: '' },
  apparentPowerVa: { count: 'relative', allowed: 0.002, unit: '' },
  excursionMm: { count: 'relative', allowed: 0.005, unit: '' },
  innerExcursionMm: { count: 'relative', allowed: 0.005, unit: '' },
  radiatorExcursionMm: { count: 'relative', allowed: 0.005, unit: '' },
  portSpeedMps: { count: 'relative', allowed: 0.005, unit: '' },
  rearPortSpeedMps: { count: 'relative', allowed: 0.005, unit: '' },
};
export const CURVES = Object.keys(TOLERANCE) as CurveName[]; // keys of a record typed by CurveName

/** Differences of one curve, as `TOLERANCE` counts them; null where neither has it, NaN where only one has. */
export function differences(name: CurveName, answer: Answer, result: ResponseResult): number[] | null {
  const [expected, got] = [answer[name], result[name]];
  if (expected === null && got === null) return null;
  if (expected === null || got === null || got.length !== expected.length) return [Number.NaN];
  const { count } = TOLERANCE[name];
  return expected.map((value, i) => {
    const apart = Math.abs((got[i] ?? Number.NaN) - value);
    if (count === 'turn') return Math.abs(apart - 2 * Math.PI * Math.round(apart / (2 * Math.PI)));
    return count === 'relative' ? apart / Math.abs(value) : apart;
  });
}

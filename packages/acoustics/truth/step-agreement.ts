// A step in time beside the fixture. The edge itself is out of any band: the comparison starts when the window has
// stopped ringing.
import type { TimeResponse } from '@gusset/contracts/acoustics';
import type { Fixture } from './agreement.ts';

export const STEP_AFTER_MS = 4;
export const STEP_TOLERANCE = 0.001; // share of the largest pressure

/** By time of the fixture, as a share of the largest pressure; NaN where the engine has no sample at that time. */
export function stepDifferences(step: Fixture['steps'][number], result: TimeResponse): number[] {
  const largest = Math.max(...step.stepPa.map(Math.abs));
  const placeOf = new Map(result.timesMs.map((timeMs, i) => [Math.round(timeMs * 1e3), i]));
  return step.timesMs.flatMap((timeMs, i) => {
    if (timeMs < STEP_AFTER_MS) return [];
    const got = result.stepPa[placeOf.get(Math.round(timeMs * 1e3)) ?? -1] ?? Number.NaN;
    return [Math.abs(got - (step.stepPa[i] ?? Number.NaN)) / largest];
  });
}

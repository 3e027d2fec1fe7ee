// The trial box that plays in the car, as the form holds it: whole once a driver, its air and a voltage are given.
import type { SweepView, TrialBox } from '@gusset/contracts/measurement';

export type TrialDraft = {
  readonly driverId: string | null;
  readonly net: TrialBox['net'] | null;
  readonly tuning: TrialBox['tuning'];
  readonly drive: TrialBox['drive'] | null;
};

const EMPTY: TrialDraft = { driverId: null, net: null, tuning: null, drive: null };

/** As last time in this car: the same box usually plays again. */
export function startTrial(sweeps: readonly SweepView[]): TrialDraft {
  return sweeps.find(({ conditions }) => conditions.trial !== null)?.conditions.trial ?? EMPTY;
}

/** Null while something is missing. */
export function wholeTrial({ driverId, net, tuning, drive }: TrialDraft): TrialBox | null {
  return driverId === null || net === null || drive === null ? null : { driverId, net, tuning, drive };
}

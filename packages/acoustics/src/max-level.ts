// How hard a system may be driven at each frequency: power that the coils take, travel that cones and radiators have.
// Travel is linear in voltage. Pe is of a whole driver, all its coils (IEC 60268-5 or the maker's own figure).
import type { LimitCause, SoundSystem } from '@gusset/contracts/acoustics';
import { arrayResistanceOhm } from './circuit-q.ts';
import type { Travel } from './travel.ts';

const LEAST_TRAVEL = 1e-30; // mm per volt: far below any real one, so that no limit is infinite

export type Loudest = { readonly volts: number; readonly cause: LimitCause };

/** The most volts into the circuit at each frequency, and what stops there; null where no limit is stated. */
export function loudestVolts(system: SoundSystem, travel: Travel): Loudest[] | null {
  const { xmaxMm, peWatts } = system.driver;
  const { enclosure, array } = system;
  const rdcOhm = arrayResistanceOhm(system.driver, array);
  const thermalVolts = peWatts === null ? null : Math.sqrt(array.count * peWatts * rdcOhm);
  const radiatorMm = enclosure.kind === 'passive-radiator' ? enclosure.radiator.xmaxMm : null;
  const candidates = [
    { cause: 'thermal', limit: thermalVolts, perVolt: system.frequenciesHz.map(() => 1) },
    { cause: 'excursion', limit: xmaxMm, perVolt: travel.excursion },
    { cause: 'inner-excursion', limit: xmaxMm, perVolt: travel.inner },
    { cause: 'radiator-excursion', limit: radiatorMm, perVolt: travel.radiator },
  ] as const;
  const limits = candidates.flatMap(({ cause, limit, perVolt }) =>
    limit === null || perVolt === null ? [] : [{ cause, limit, perVolt }],
  );
  if (limits.length === 0) return null;
  return system.frequenciesHz.map((_, i) =>
    limits
      .map(({ cause, limit, perVolt }) => ({
        cause,
        volts: limit / Math.max(perVolt[i] ?? 0, LEAST_TRAVEL),
      }))
      .reduce((least, next) => (next.volts < least.volts ? next : least)),
  );
}

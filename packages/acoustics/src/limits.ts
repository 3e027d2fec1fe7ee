// How hard a system may be driven: power that the coils take, volts and amperes that the amplifier has, travel that
// cones and radiators have. Everything is linear in voltage. Pe is of a whole driver, all its coils (IEC 60268-5 or
// the maker's own figure).
import type { Drive, LimitCause, SoundSystem } from '@gusset/contracts/acoustics';
import { arrayResistanceOhm } from './circuit-q.ts';

export type VoltageLimit = { readonly volts: number; readonly cause: LimitCause };

/** Peak, one way, mm; null = not stated or not there. */
export type TravelLimits = { readonly coneMm: number | null; readonly radiatorMm: number | null };

/** The most volts at any frequency, by the rated power into the array or by the amplifier; null = neither is stated. */
export function driveLimits({ driver, array, source }: SoundSystem): VoltageLimit | null {
  const thermalVolts =
    driver.peWatts === null
      ? Number.POSITIVE_INFINITY
      : Math.sqrt(array.count * driver.peWatts * arrayResistanceOhm(driver, array));
  const { maxVoltageVrms } = source;
  if (maxVoltageVrms !== null && maxVoltageVrms < thermalVolts) {
    return { volts: maxVoltageVrms, cause: 'amplifier-voltage' };
  }
  return driver.peWatts === null ? null : { volts: thermalVolts, cause: 'thermal' };
}

export function travelLimits({ driver, enclosure }: SoundSystem): TravelLimits {
  return {
    coneMm: driver.xmaxMm,
    radiatorMm: enclosure.kind === 'passive-radiator' ? enclosure.radiator.xmaxMm : null,
  };
}

/** The voltages that levels are compared at, and how far each lies above the one asked for. */
export function drivesOf(system: SoundSystem): Drive[] {
  const given = system.source.voltageVrms;
  const full = driveLimits(system);
  const at = (drive: Drive['drive'], voltageVrms: number): Drive => ({
    drive,
    voltageVrms,
    aboveDb: 20 * Math.log10(voltageVrms / given),
  });
  return [
    at('one-watt', Math.sqrt(arrayResistanceOhm(system.driver, system.array))),
    at('given', given),
    ...(full === null ? [] : [at('full-power', full.volts)]),
  ];
}

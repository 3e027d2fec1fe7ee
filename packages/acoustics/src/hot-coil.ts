// What heat takes: the coils' resistance rises with their temperature, and with it the electrical Q. An estimate: one
// heat resistance from coil to air, long after the start, no cooling by the cone's own wind, BL as cold.
//   Re(T) = Re (1 + a dT), a = 0.0039 per K (copper);  Qes goes with Re
//   dT = Rth P, P = share V²/(N Rdc(T)): a quadratic in dT, because a hot coil takes less
// The source's whole voltage is taken to heat the coils: filters and the rise of the impedance are left out, so the
// rise is on the high side. Where no heat resistance is stated, it is taken to be the one that brings the coils to 150 K
// over the air at the rated power: a rule of thumb, as is the rise beyond which coils are said to fail.
import {
  firstRefusal,
  type HotCoilEstimate,
  type HotCoilSetting,
  type HotCoilSettingInput,
  hotCoilSettingSchema,
  type SoundSystem,
  type SoundSystemInput,
  soundSystemSchema,
} from '@gusset/contracts/acoustics';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { arrayResistanceOhm } from './circuit-q.ts';
import { responseOf } from './response.ts';

const PER_KELVIN = 0.0039; // copper, about 20 °C
const RATED_RISE_K = 150;
const COIL_STANDS_K = 200; // about where the glues of common coils give way

/** `system` cold and hot. Refused where nothing says how warm the coils get. */
export function estimateHotCoil(
  input: SoundSystemInput,
  setting: HotCoilSettingInput = {},
): HotCoilEstimate | Refusal {
  const parsed = soundSystemSchema.safeParse(input);
  if (!parsed.success) return firstRefusal(parsed.error, input);
  const asked = hotCoilSettingSchema.safeParse(setting);
  if (!asked.success) return firstRefusal(asked.error, setting);
  const system = parsed.data;
  const heat = heatOf(system, asked.data);
  if (isRefusal(heat)) return heat;
  const cold = responseOf(system);
  if (isRefusal(cold)) return cold;
  const growth = 1 + PER_KELVIN * heat.riseK;
  const { driver } = system;
  const hotReOhm = driver.reOhm * growth;
  const hot = responseOf({ ...system, driver: { ...driver, reOhm: hotReOhm, qes: driver.qes * growth } });
  if (isRefusal(hot)) return hot;
  return {
    ...heat,
    coilCelsius: system.air.temperatureC + heat.riseK,
    coldReOhm: driver.reOhm,
    hotReOhm,
    isBeyondCoil: heat.riseK > COIL_STANDS_K,
    compressionDb: cold.splDb.map((db, i) => db - (hot.splDb[i] ?? db)),
    hot,
  };
}

type Heat = Pick<HotCoilEstimate, 'basis' | 'riseK' | 'coilWatts'>;

function heatOf(system: SoundSystem, setting: HotCoilSetting): Heat | Refusal {
  if (setting.riseK !== null) return { basis: 'given-rise', riseK: setting.riseK, coilWatts: null };
  const { driver, array, source } = system;
  const stated = setting.thermalResistanceKPerW;
  const kelvinPerWatt = stated ?? (driver.peWatts === null ? null : ratedResistance(driver.peWatts));
  if (kelvinPerWatt === null) {
    return refuse('thermalResistanceKPerW', {
      allowed: 'a rise, a thermal resistance, or a driver with a rated power',
      got: null,
      why: 'nothing says how warm the coils get',
    });
  }
  const coldWatts =
    (setting.averageShare * source.voltageVrms ** 2) / (array.count * arrayResistanceOhm(driver, array));
  const riseK = riseOf(kelvinPerWatt * coldWatts);
  return {
    basis: stated === null ? 'rated-power' : 'stated-resistance',
    riseK,
    coilWatts: coldWatts / (1 + PER_KELVIN * riseK),
  };
}

/** K/W that bring the coils to the rated rise where the cold coils would take the rated power. */
function ratedResistance(peWatts: number): number {
  return (RATED_RISE_K * (1 + PER_KELVIN * RATED_RISE_K)) / peWatts;
}

/** dT (1 + a dT) = `coldRiseK`, the rise of a coil that kept its cold resistance. In the form that keeps its digits. */
function riseOf(coldRiseK: number): number {
  return (2 * coldRiseK) / (1 + Math.sqrt(1 + 4 * PER_KELVIN * coldRiseK));
}

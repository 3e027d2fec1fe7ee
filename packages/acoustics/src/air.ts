// Dry air as an ideal gas: density, speed of sound, and the stiffness that a box has from it.
import type { AirConditions } from '@gusset/contracts/acoustics';

const GAS_CONSTANT = 287.058; // J/(kg K), dry air
const HEAT_CAPACITY_RATIO = 1.4; // gamma, no unit
const ZERO_CELSIUS_K = 273.15;

export type Air = {
  readonly densityKgPerM3: number;
  readonly soundSpeedMps: number;
  /** rho0 c² = gamma p: how hard it is to squeeze; depends on pressure only. */
  readonly stiffnessPa: number;
};

export function airAt({ temperatureC, pressurePa }: AirConditions): Air {
  const temperatureK = temperatureC + ZERO_CELSIUS_K;
  return {
    densityKgPerM3: pressurePa / (GAS_CONSTANT * temperatureK),
    soundSpeedMps: Math.sqrt(HEAT_CAPACITY_RATIO * GAS_CONSTANT * temperatureK),
    stiffnessPa: HEAT_CAPACITY_RATIO * pressurePa,
  };
}

/** The air that driver data are stated for: 20 °C, 101 325 Pa. */
export const REFERENCE_AIR: Air = airAt({ temperatureC: 20, pressurePa: 101_325 });

/** Dry pressure at an altitude, Pa (ISO 2533 standard atmosphere, up to 11 km). */
export function pressureAtAltitudePa(altitudeM: number): number {
  return 101_325 * (1 - 2.25577e-5 * altitudeM) ** 5.25588;
}

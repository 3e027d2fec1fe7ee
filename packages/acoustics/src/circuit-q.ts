// Q of drivers on their source: amplifier and cable resistance weaken the electrical damping.
import type { DriverArray, DriverParameters } from '@gusset/contracts/acoustics';
import { driverElements, totalQ } from './driver-elements.ts';
import { wireCoils } from './voice-coil.ts';

/** Direct-current resistance of the array at its terminals, ohm. */
export function arrayResistanceOhm(driver: DriverParameters, array: DriverArray): number {
  const coil = wireCoils(driver, driverElements(driver), array.coilWiring);
  return (coil.resistanceOhm * array.seriesPerString) / array.parallelStrings;
}

/** Qts with `seriesOhm` of amplifier and cable before the array, and with the coils that are driven. */
export function qtsInCircuit(driver: DriverParameters, array: DriverArray, seriesOhm: number): number {
  const drivenCoils = array.coilWiring === 'single' ? 1 : driver.coils;
  const qes = driver.qes * (driver.coils / drivenCoils);
  return totalQ(driver.qms, qes * (1 + seriesOhm / arrayResistanceOhm(driver, array)));
}

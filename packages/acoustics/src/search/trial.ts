// One driver, so many of it, on this amplifier: what is the same for every box that they are tried in.
import type { DriverArray, SearchDriver } from '@gusset/contracts/acoustics';
import { REFERENCE_AIR } from '../air.ts';
import { arrayResistanceOhm } from '../circuit-q.ts';
import { driverElements } from '../driver-elements.ts';
import { blockedImpedance, wireCoils } from '../voice-coil.ts';
import { SEARCH_FREQUENCIES_HZ } from './aims.ts';
import type { WiredArray } from './array-wiring.ts';

/** Air in a port beyond a tenth of the speed of sound tears off the walls: noise and lost output. */
export const PORT_SPEED_LIMIT_MPS = REFERENCE_AIR.soundSpeedMps / 10;

export type Trial = {
  readonly driver: SearchDriver;
  readonly count: number;
  readonly wired: WiredArray;
  readonly costMinor: number | null;
  /** Of amplifier and heat, at the array's terminals. */
  readonly mostVolts: number;
  readonly xmaxM: number;
  readonly motors: MotorTable;
};

/** By frequency: mechanical impedance of one cone with its motor's braking, and the force of one volt at its coil. */
export type MotorTable = {
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly forceN: Float64Array;
  /** Every cone together, m². */
  readonly areaM2: number;
};

/** What the maker states of the limits; without both nothing is tried. */
export type DriverLimits = { readonly xmaxMm: number; readonly peWatts: number };

export function trialOf(driver: SearchDriver, wired: WiredArray, { xmaxMm, peWatts }: DriverLimits): Trial {
  const { array, watts } = wired;
  const rdcOhm = arrayResistanceOhm(driver.parameters, array);
  return {
    driver,
    count: array.count,
    wired,
    costMinor: driver.costMinor === null ? null : driver.costMinor * array.count,
    mostVolts: Math.sqrt(Math.min(watts, array.count * peWatts) * rdcOhm),
    xmaxM: xmaxMm / 1e3,
    motors: motorTable(driver, array),
  };
}

function motorTable({ parameters }: SearchDriver, array: DriverArray): MotorTable {
  const elements = driverElements(parameters);
  const coil = wireCoils(parameters, elements, array.coilWiring);
  const points = SEARCH_FREQUENCIES_HZ.length;
  const [re, im, forceN] = [new Float64Array(points), new Float64Array(points), new Float64Array(points)];
  SEARCH_FREQUENCIES_HZ.forEach((frequencyHz, i) => {
    const omega = 2 * Math.PI * frequencyHz;
    const reactance = omega * elements.mmsKg - 1 / (omega * elements.cmsMPerN);
    const blocked = blockedImpedance(coil, omega);
    const squared = blocked.re ** 2 + blocked.im ** 2;
    re[i] = elements.rmsNsPerM + (coil.blTm ** 2 * blocked.re) / squared;
    im[i] = reactance - (coil.blTm ** 2 * blocked.im) / squared;
    forceN[i] = coil.blTm / Math.sqrt(squared) / array.seriesPerString;
  });
  return { re, im, forceN, areaM2: elements.sdM2 * array.count };
}

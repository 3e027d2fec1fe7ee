// The moving parts of a driver as mechanical elements, from its small-signal parameters.
// R. H. Small, "Direct-Radiator Loudspeaker System Analysis", J. Audio Eng. Soc. 20(5), 1972.
// fs, Qms, Qes and Vas hold at the reference air; the elements stay what they are in any other air.
import type { DriverParameters } from '@gusset/contracts/acoustics';
import { REFERENCE_AIR } from './air.ts';

const CM2_PER_M2 = 1e4;
const LITRES_PER_M3 = 1e3;

export type DriverElements = {
  /** Piston area, m². */
  readonly sdM2: number;
  /** Moving mass with its air load, kg. */
  readonly mmsKg: number;
  /** Suspension compliance, m/N. */
  readonly cmsMPerN: number;
  /** Mechanical resistance, N s/m. */
  readonly rmsNsPerM: number;
  /** Force factor of one coil, T m. */
  readonly blTm: number;
  readonly qts: number;
  /** Half-space reference efficiency, a ratio. */
  readonly referenceEfficiency: number;
};

export function driverElements(driver: DriverParameters): DriverElements {
  const omegaS = 2 * Math.PI * driver.fsHz;
  const sdM2 = driver.sdCm2 / CM2_PER_M2;
  const vasM3 = driver.vasLitres / LITRES_PER_M3;
  const cmsMPerN = vasM3 / (REFERENCE_AIR.stiffnessPa * sdM2 ** 2);
  const mmsKg = 1 / (omegaS ** 2 * cmsMPerN);
  return {
    sdM2,
    mmsKg,
    cmsMPerN,
    rmsNsPerM: (omegaS * mmsKg) / driver.qms,
    blTm: Math.sqrt((omegaS * mmsKg * driver.reOhm) / (driver.coils * driver.qes)),
    qts: totalQ(driver.qms, driver.qes),
    referenceEfficiency:
      (4 * Math.PI ** 2 * driver.fsHz ** 3 * vasM3) / (REFERENCE_AIR.soundSpeedMps ** 3 * driver.qes),
  };
}

/** Two Qs that damp one resonance together. */
export function totalQ(qms: number, qes: number): number {
  return (qms * qes) / (qms + qes);
}

// Passive radiators: a cone and a suspension with no motor, alike, sharing one chamber.
// R. H. Small, "Passive-Radiator Loudspeaker Systems", J. Audio Eng. Soc. 22(8), 1974.
import type { PassiveRadiator } from '@gusset/contracts/acoustics';
import { REFERENCE_AIR } from './air.ts';

export type RadiatorElements = {
  /** All of them together, m². */
  readonly areaM2: number;
  /** Acoustic elements of all together: Pa s²/m³, Pa s/m³, m³/Pa. */
  readonly acousticMass: number;
  readonly acousticResistance: number;
  readonly acousticCompliance: number;
  /** Resonance with the added mass on no box: the notch. */
  readonly notchRadPerS: number;
};

export function radiatorElements(radiator: PassiveRadiator): RadiatorElements {
  const omegaP = 2 * Math.PI * radiator.fsHz;
  const sdM2 = radiator.sdCm2 / 1e4;
  const cmpMPerN = radiator.vasLitres / 1e3 / (REFERENCE_AIR.stiffnessPa * sdM2 ** 2);
  const bareKg = 1 / (omegaP ** 2 * cmpMPerN);
  const movingKg = bareKg + radiator.addedMassGrams / 1e3;
  const perArea = radiator.count * sdM2 ** 2;
  return {
    areaM2: radiator.count * sdM2,
    acousticMass: movingKg / perArea,
    acousticResistance: (omegaP * bareKg) / radiator.qms / perArea,
    acousticCompliance: cmpMPerN * perArea,
    notchRadPerS: 1 / Math.sqrt(movingKg * cmpMPerN),
  };
}

/** Tuning of a chamber of compliance `cabM3PerPa` with these radiators, rad/s. */
export function radiatorTuningRadPerS(elements: RadiatorElements, cabM3PerPa: number): number {
  return elements.notchRadPerS * Math.sqrt(1 + elements.acousticCompliance / cabM3PerPa);
}

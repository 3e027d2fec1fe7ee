// Air in a chamber: compliance, leak and absorption. Losses are constant resistances (Small), fixed by their Q at the
// chamber's own tuning `referenceRadPerS`.
import type { Chamber } from '@gusset/contracts/acoustics';
import type { Air } from './air.ts';
import { type Complex, complex, reciprocal } from './complex.ts';

export type ChamberElements = {
  /** Cab, m³/Pa. */
  readonly compliance: number;
  /** Rab in series with the compliance, Pa s/m³; 0 = none. */
  readonly absorption: number;
  /** 1/Ral to the outside, m³/(Pa s); 0 = tight. */
  readonly leak: number;
};

/** Net air with the apparent growth by fibre, m³. */
export function apparentVolumeM3(chamber: Chamber): number {
  return (chamber.netLitres * chamber.fillFactor) / 1e3;
}

export function chamberCompliance(chamber: Chamber, air: Air): number {
  return apparentVolumeM3(chamber) / air.stiffnessPa;
}

export function chamberElements(chamber: Chamber, air: Air, referenceRadPerS: number): ChamberElements {
  const compliance = chamberCompliance(chamber, air);
  return {
    compliance,
    absorption: chamber.qa === null ? 0 : 1 / (referenceRadPerS * compliance * chamber.qa),
    leak: chamber.ql === null ? 0 : (referenceRadPerS * compliance) / chamber.ql,
  };
}

/** Into the air itself, leak not counted, m³/(Pa s). */
export function squeezeAdmittance(chamber: ChamberElements, omega: number): Complex {
  return reciprocal(complex(chamber.absorption, -1 / (omega * chamber.compliance)));
}

// Coils of one driver, wired together. They share one flux (perfect coupling), so in series they act as one coil
// of twice the turns. Lossy inductance by the two-inductor form: s Le + (s L2 parallel R2).
import type { CoilWiring, DriverParameters } from '@gusset/contracts/acoustics';
import { type Complex, complex } from './complex.ts';
import type { DriverElements } from './driver-elements.ts';

export type VoiceCoil = {
  /** Of the coils as wired. */
  readonly resistanceOhm: number;
  readonly blTm: number;
  readonly leH: number;
  /** Lossy part; null = none. */
  readonly lossy: { readonly l2H: number; readonly r2Ohm: number } | null;
};

const MH_PER_H = 1e3;

export function wireCoils(driver: DriverParameters, elements: DriverElements, wiring: CoilWiring): VoiceCoil {
  const turns = wiring === 'series' ? driver.coils : 1;
  const sharing = wiring === 'parallel' ? driver.coils : 1;
  const { l2Mh, r2Ohm } = driver;
  return {
    resistanceOhm: (driver.reOhm * turns) / sharing,
    blTm: elements.blTm * turns,
    leH: (driver.leMh / MH_PER_H) * turns ** 2,
    lossy:
      l2Mh === null || r2Ohm === null
        ? null
        : { l2H: (l2Mh / MH_PER_H) * turns ** 2, r2Ohm: r2Ohm * turns ** 2 },
  };
}

/** Impedance of the coil held still, ohm. */
export function blockedImpedance(coil: VoiceCoil, omega: number): Complex {
  const leOhm = omega * coil.leH;
  if (coil.lossy === null) return complex(coil.resistanceOhm, leOhm);
  const l2Ohm = omega * coil.lossy.l2H;
  const { r2Ohm } = coil.lossy;
  const share = (l2Ohm * r2Ohm) / (l2Ohm ** 2 + r2Ohm ** 2);
  return complex(coil.resistanceOhm + share * l2Ohm, leOhm + share * r2Ohm);
}

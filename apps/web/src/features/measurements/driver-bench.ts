// What the meter and the tape say beside a driver's sweep, as the form holds it.
import type { CoilWiring, DriverDataSheet } from '@gusset/contracts/acoustics';
import type { DriverBench } from '@gusset/contracts/measurement';

export type Bench = {
  /** As measured at the terminals; null = left to the fit. */
  readonly reOhm: number | null;
  readonly sdCm2: number | null;
  readonly coils: 1 | 2;
  readonly wiring: CoilWiring;
};

/** Cone area and coils off the sheet; the resistance is left to the fit until a meter says. */
export function startBench({ sdCm2, coils }: Pick<DriverDataSheet, 'sdCm2' | 'coils'>): Bench {
  return { reOhm: null, sdCm2, coils, wiring: coils === 2 ? 'series' : 'single' };
}

export function benchOf({ reOhm, sdCm2, coils, wiring }: Bench): DriverBench {
  return { reOhm, sdCm2, coils, wiring: coils === 1 ? 'single' : wiring };
}

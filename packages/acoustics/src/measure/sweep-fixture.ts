// Sweeps with known answers for the tests: closed-form circuits written out here anew, and seeded noise on top.
import type { SweepColumns } from '@gusset/contracts/measurement';
import { frequencyGrid } from '../frequency-grid.ts';
import { seededNoise } from './seeded-noise.ts';

export type Motor = {
  readonly fsHz: number;
  readonly qms: number;
  readonly qes: number;
  readonly reOhm: number;
  readonly leMh: number;
};

/** Free air: Re + jwLe + Res/(1 + jQms(f/fs - fs/f)). */
export function freeAirSweep(motor: Motor, options: SweepOptions = {}): SweepColumns {
  return sweepOf((hz) => {
    const motional = (motor.reOhm * motor.qms) / motor.qes;
    const x = motor.qms * (hz / motor.fsHz - motor.fsHz / hz);
    return [
      motor.reOhm + motional / (1 + x * x),
      2 * Math.PI * hz * motor.leMh * 1e-3 - (motional * x) / (1 + x * x),
    ];
  }, options);
}

export type SweepOptions = {
  readonly lowHz?: number;
  readonly highHz?: number;
  readonly count?: number;
  /** Standard deviation of the magnitude, a share, and of the phase, radians. */
  readonly noise?: number;
  readonly seed?: number;
  readonly phase?: boolean;
};

export function sweepOf(
  impedance: (frequencyHz: number) => readonly [number, number],
  { lowHz = 8, highHz = 1_000, count = 300, noise = 0, seed = 7, phase = true }: SweepOptions = {},
): SweepColumns {
  const draw = seededNoise(seed);
  const frequenciesHz = frequencyGrid({ lowHz, highHz, count });
  const points = frequenciesHz.map(impedance);
  return {
    frequenciesHz,
    values: points.map(([re, im]) => Math.hypot(re, im) * (1 + noise * draw())),
    phaseRad: phase ? points.map(([re, im]) => Math.atan2(im, re) + noise * draw()) : null,
  };
}

// A driver's figures from impedance sweeps: what is asked and what comes back.
import { z } from 'zod';
import type { DriverDataSheet } from '../acoustics/index.ts';
import { coilCountSchema, coilWiringSchema } from '../acoustics/index.ts';
import { quantity } from '../acoustics/quantity.ts';
import { DRIVER_RANGES } from '../acoustics/ranges.ts';
import { idSchema } from '../common/index.ts';

/** What the meter and the tape say beside the sweeps. */
export const driverBenchSchema = z.strictObject({
  /** Direct-current resistance at the terminals as wired, cold; null = taken from the fit. */
  reOhm: quantity(0.05, 400, 'Ω').nullable(),
  /** To the middle of the surround; needed for Vas. */
  sdCm2: DRIVER_RANGES.sdCm2.nullable(),
  coils: coilCountSchema,
  wiring: coilWiringSchema,
});
export type DriverBench = z.infer<typeof driverBenchSchema>;

export const fitDriverSchema = z.strictObject({
  driverId: idSchema,
  freeAirId: idSchema,
  /** A sweep with added mass or in a known box; null = no Vas, Mms and BL from measuring. */
  secondId: idSchema.nullable(),
  bench: driverBenchSchema,
});
export type FitDriverInput = z.infer<typeof fitDriverSchema>;

/** One figure of a fit with one standard deviation, both in the figure's unit. */
export type Fitted = { readonly value: number; readonly plusMinus: number };

/** Motional figures of one sweep. Resistance and inductance at the terminals, coils as wired. */
export type MotorFit = {
  readonly fsHz: Fitted;
  readonly qms: Fitted;
  /** Of the coils driven. */
  readonly qes: Fitted;
  readonly reOhm: Fitted;
  /** True where the resistance was measured and held. */
  readonly reHeld: boolean;
  readonly leMh: Fitted;
  readonly l2Mh: Fitted | null;
  readonly r2Ohm: Fitted | null;
  /** Root mean square of measured over fitted, percent of the magnitude. */
  readonly residualPercent: number;
  /** Of the fit, at `frequenciesHz`: for the drawing. */
  readonly curve: { readonly frequenciesHz: readonly number[]; readonly ohm: readonly number[] };
};

/** The classic reading of the peak: r0 = Zmax/Re, f1 and f2 where |Z| = Re sqrt(r0). */
export type PeakReading = {
  readonly fsHz: number;
  readonly peakOhm: number;
  readonly lowerHz: number;
  readonly upperHz: number;
  /** sqrt(f1 f2): on fs where nothing but the resonance is in the way. */
  readonly geometricHz: number;
  readonly qms: number;
  readonly qes: number;
  readonly qts: number;
};

export type Agreement = {
  readonly field: 'fsHz' | 'qms' | 'qes' | 'qts';
  readonly byFit: number;
  readonly byPeak: number;
  /** Of the peak's over the fit's. */
  readonly percent: number;
};

export type DriverFromSweeps = {
  readonly fit: MotorFit;
  /** Null where the sweep does not reach down to half the peak on both sides. */
  readonly peak: PeakReading | null;
  readonly agreement: readonly Agreement[];
  /** From the second sweep. */
  readonly moving: {
    readonly by: 'added-mass' | 'known-box';
    /** Resonance of the second sweep. */
    readonly resonanceHz: Fitted;
    /** Null where the piston area that it needs was not given. */
    readonly vasLitres: Fitted | null;
    readonly mmsGrams: Fitted | null;
  } | null;
  /** For the catalogue: what the sweeps say and nothing else; null = not measured. */
  readonly figures: Pick<
    DriverDataSheet,
    'fsHz' | 'qms' | 'qes' | 'vasLitres' | 'reOhm' | 'sdCm2' | 'leMh' | 'l2Mh' | 'r2Ohm'
  >;
  readonly cautions: readonly DriverFitCaution[];
};

export type DriverFitCaution =
  /** Peak reading and fit differ by more than two instruments should. */
  | { readonly code: 'readings-differ'; readonly field: Agreement['field']; readonly percent: number }
  /** The second resonance is too near the first for a good Vas: aim at three quarters, or a third above. */
  | { readonly code: 'little-shift'; readonly ratio: number }
  | { readonly code: 'poor-fit'; readonly residualPercent: number };

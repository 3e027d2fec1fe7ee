// A built box by its impedance, beside its drawing.
import { z } from 'zod';
import { idSchema } from '../common/index.ts';
import type { Fitted } from './driver-fit.ts';

export const compareBuiltBoxSchema = z.strictObject({
  jobId: idSchema,
  sweepId: idSchema,
  /** The same box with its port blocked, for the three-peak check; null = none taken. */
  blockedId: idSchema.nullable(),
});
export type CompareBuiltBoxInput = z.infer<typeof compareBuiltBoxSchema>;

/** One figure as drawn and as built; `beyond` = by more than its tolerance and twice the fit's own doubt. */
export type BuiltDifference = {
  readonly code: 'net-volume' | 'tuning' | 'port-length' | 'leak-q' | 'resonance' | 'system-q' | 'free-air';
  readonly drawn: number | null;
  readonly built: Fitted;
  readonly unit: 'litres' | 'Hz' | 'mm' | '';
  /** Built less drawn, in `unit`; null where the drawing states none. */
  readonly difference: number | null;
  readonly beyond: boolean;
};

export type BuiltBoxFit = {
  readonly kind: 'closed' | 'vented';
  readonly differences: readonly BuiltDifference[];
  readonly residualPercent: number;
  /** At `frequenciesHz`: drawn with the stated driver, and fitted to the sweep; ohm. */
  readonly curves: {
    readonly frequenciesHz: readonly number[];
    readonly drawnOhm: readonly number[];
    readonly fittedOhm: readonly number[];
  };
  /** Net litres read per percent of the driver's free-air resonance, closed boxes: what the driver's drift can do. */
  readonly litresPerResonancePercent: number | null;
  readonly threePeaks: ThreePeaks | null;
};

/** Tuning from the peaks of the open and the blocked box: fb² = fL² + fH² - fC². */
export type ThreePeaks = {
  readonly lowerHz: number;
  readonly minimumHz: number;
  readonly upperHz: number;
  readonly blockedHz: number;
  readonly tuningHz: number;
  /** Of the fitted tuning over this one. */
  readonly percent: number;
};

// What one car does to the sound: measured at the seat less what the trial box gives near its cone.
import { z } from 'zod';
import type { Cabin } from '../acoustics/index.ts';
import { quantity } from '../acoustics/quantity.ts';
import { FREQUENCY_HZ } from '../acoustics/ranges.ts';
import { idSchema, shortTextSchema } from '../common/index.ts';
import { firingDirectionSchema } from './sweep.ts';

/** Parts of an octave that a curve can be smoothed over. */
export const SMOOTHINGS = [1, 3, 6, 12, 24] as const;
export const smoothingSchema = z.literal(SMOOTHINGS, { error: '1/1, 1/3, 1/6, 1/12 or 1/24 octave' });
export type Smoothing = z.infer<typeof smoothingSchema>;

export const transferSettingSchema = z
  .strictObject({
    smoothing: smoothingSchema.default(6),
    /** Where the trial box and the microphone can be believed. */
    lowHz: FREQUENCY_HZ.default(20),
    highHz: FREQUENCY_HZ.default(200),
    /** Least signal above noise anywhere in that band. */
    leastSnrDb: quantity(3, 60, 'dB').default(10),
    /** Without a sweep near the cone, the level is set so that the mean here is 0 dB. */
    matchLowHz: FREQUENCY_HZ.default(120),
    matchHighHz: FREQUENCY_HZ.default(200),
  })
  .refine(({ lowHz, highHz }) => highHz >= 2 * lowHz, {
    error: 'at least an octave above the lower end',
    path: ['highHz'],
  })
  .refine(({ matchLowHz, matchHighHz }) => matchHighHz > matchLowHz, {
    error: 'above the lower end of the band',
    path: ['matchHighHz'],
  });
export type TransferSetting = z.infer<typeof transferSettingSchema>;

/** Why a sweep does not count. */
export type SweepRejection =
  | { readonly code: 'noisy'; readonly snrDb: number; readonly atHz: number; readonly leastDb: number }
  | {
      readonly code: 'short';
      readonly lowHz: number;
      readonly highHz: number;
      readonly neededLowHz: number;
      readonly neededHighHz: number;
    }
  | { readonly code: 'noise-short'; readonly lowHz: number; readonly highHz: number };

export const transferCurveSchema = z.strictObject({
  /** `spreadDb`: highest less lowest of the sweeps that were averaged. */
  points: z
    .array(z.strictObject({ frequencyHz: z.number(), gainDb: z.number(), spreadDb: z.number() }))
    .min(2)
    .max(2_000),
  /** Outside of these the curve is held level: a guess, and drawn as one. */
  validLowHz: z.number(),
  validHighHz: z.number(),
  smoothing: smoothingSchema,
  /** Where the level comes from, and what was added to the measured one. */
  level: z.strictObject({ by: z.enum(['near-cone', 'band']), offsetDb: z.number() }),
  /** Lowest signal above noise of the sweeps used; null = no noise was measured. */
  worstSnrDb: z.number().nullable(),
});
export type TransferCurve = z.infer<typeof transferCurveSchema>;

/** Each sweep by itself, ready to lay over the others; rejected ones keep their curve. */
export type OverlaidSweep = {
  readonly id: string;
  /** Calibrated, smoothed and set to one level, dB. */
  readonly levelDb: readonly number[];
  readonly worstSnrDb: number | null;
  readonly rejection: SweepRejection | null;
};

export type TransferAnswer = {
  readonly frequenciesHz: readonly number[];
  /** The trial box in half space at one metre, dB. */
  readonly predictedDb: readonly number[];
  readonly sweeps: readonly OverlaidSweep[];
  /** Null where every sweep was rejected. */
  readonly transfer: TransferCurve | null;
};

export const workOutTransferSchema = z.strictObject({
  modelId: idSchema,
  /** Sweeps in the car, of one place and direction or of several to look at together. */
  sweepIds: z.array(idSchema).min(1, 'Choose a sweep.').max(24),
  setting: transferSettingSchema.prefault({}),
});
export type WorkOutTransferInput = z.infer<typeof workOutTransferSchema>;

export const keepTransferSchema = workOutTransferSchema.extend({
  place: shortTextSchema.pipe(z.string().min(1, 'Say where the box stood.')),
  direction: firingDirectionSchema,
  /** Why this place and direction. */
  reason: shortTextSchema.pipe(z.string().min(1, 'Say why this place and direction were chosen.')),
});
export type KeepTransferInput = z.infer<typeof keepTransferSchema>;

/** A revision of the car's transfer as it is kept with the vehicle model. */
export type CarTransferView = {
  readonly id: string;
  /** 1, 2, 3 within the model; the highest counts. */
  readonly revision: number;
  readonly place: string;
  readonly direction: z.infer<typeof firingDirectionSchema>;
  readonly reason: string;
  readonly curve: TransferCurve;
  readonly sweepIds: readonly string[];
  readonly keptBy: string;
  readonly keptAt: string;
};

/** The cabin that the sound engine takes. */
export function cabinOfTransfer({ points }: Pick<TransferCurve, 'points'>): Cabin {
  return { kind: 'curve', points: points.map(({ frequencyHz, gainDb }) => ({ frequencyHz, gainDb })) };
}

// What stands before the drivers: filters of the processor, limits of the amplifier.
import { z } from 'zod';
import { typedFigureSchema } from './typed.ts';

export const FILTER_ALIGNMENTS = ['butterworth', 'linkwitz-riley', 'bessel'] as const;
export const FILTER_ALIGNMENT_WORDS: Record<(typeof FILTER_ALIGNMENTS)[number], string> = {
  butterworth: 'Butterworth',
  'linkwitz-riley': 'Linkwitz-Riley',
  bessel: 'Bessel',
};

/** High-pass or low-pass; the slope is 6 dB an octave for each order. */
export const soundPassSchema = z.strictObject({
  alignment: z.enum(FILTER_ALIGNMENTS),
  order: z.number().int().min(1).max(8),
  corner: typedFigureSchema(1, 20_000).nullable(),
});
export type SoundPass = z.infer<typeof soundPassSchema>;

/** One band of a parametric equaliser. */
export const soundBandSchema = z.strictObject({
  centre: typedFigureSchema(1, 20_000).nullable(),
  gainDb: typedFigureSchema(-40, 40).nullable(),
  q: typedFigureSchema(0.05, 50).nullable(),
});
export type SoundBand = z.infer<typeof soundBandSchema>;

/** Most bands of a parametric equaliser on this sheet. */
export const BAND_LIMIT = 8;

export const soundAmplifierSchema = z.strictObject({
  /** Most it can give, rms; null = not stated, so that nothing but the power counts. */
  maxVolts: typedFigureSchema(0.1, 1_000).nullable(),
  maxAmps: typedFigureSchema(0.1, 1_000).nullable(),
  /** Its own output resistance; null = none. */
  outputOhm: typedFigureSchema(0, 100).nullable(),
  /** Both conductors of the loudspeaker cable together; null = none. */
  cableOhm: typedFigureSchema(0, 100).nullable(),
});
export type SoundAmplifier = z.infer<typeof soundAmplifierSchema>;

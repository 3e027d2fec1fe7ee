// What the design helpers share: a system without its frequencies, and the band that is looked at.
import { z } from 'zod';
import type { DeepReadonly } from './deep-readonly.ts';
import { quantity } from './quantity.ts';
import { soundSystemSchema } from './system.ts';

/** A sound system as `solveResponse` takes it; the helper picks the frequencies. */
export const designSystemSchema = soundSystemSchema.omit({ frequenciesHz: true });
export type DesignSystemInput = DeepReadonly<z.input<typeof designSystemSchema>>;
export type DesignSystem = DeepReadonly<z.infer<typeof designSystemSchema>>;

const LEAST_BAND_RATIO = 1.2; // narrower than a minor third is a tone and not a band

export const designBandSchema = z
  .strictObject({
    lowHz: quantity(5, 500, 'Hz').default(20),
    highHz: quantity(6, 1_000, 'Hz').default(120),
  })
  .refine(({ lowHz, highHz }) => highHz >= LEAST_BAND_RATIO * lowHz, {
    error: `at least ${LEAST_BAND_RATIO} times lowHz`,
    path: ['highHz'],
  });
export type DesignBand = DeepReadonly<z.infer<typeof designBandSchema>>;

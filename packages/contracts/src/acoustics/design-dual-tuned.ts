// A bandpass box with both chambers vented has no useful closed design: it is looked for by the circuit.
import { z } from 'zod';
import type { DeepReadonly } from './deep-readonly.ts';
import type { BandFigures } from './design-aims.ts';
import { designBandSchema, designSystemSchema } from './design-system.ts';
import type { Enclosure } from './enclosure.ts';
import { quantity, wholeNumber } from './quantity.ts';
import { CHAMBER_RANGES, PORT_RANGES } from './ranges.ts';

export const dualTunedSearchSchema = z
  .strictObject({
    /** A dual-tuned bandpass box; mouths, ends and losses are kept, volumes and tunings are what is looked for. */
    system: designSystemSchema,
    /** Net, both chambers together. */
    litres: z.strictObject({ leastLitres: CHAMBER_RANGES.netLitres, mostLitres: CHAMBER_RANGES.netLitres }),
    /** Of the rear chamber, the lower one. The front is looked for from 1.2 to 4 times that. */
    rearTuning: z
      .strictObject({ leastHz: PORT_RANGES.tuningHz, mostHz: PORT_RANGES.tuningHz })
      .prefault({ leastHz: 15, mostHz: 80 }),
    band: designBandSchema.prefault({ lowHz: 30, highHz: 80 }),
    /** Longest port that would be built, along its middle. */
    mostPortMm: PORT_RANGES.lengthMm.default(800),
    /** dB of unevenness that a dB of level is worth: 0 looks for the evenest alone. */
    levelWeight: quantity(0, 2, 'dB/dB').default(0.1),
    seed: wholeNumber(0, 4_294_967_295).default(1),
  })
  .refine(({ litres }) => litres.leastLitres < litres.mostLitres, {
    error: 'more than the least volume',
    path: ['litres', 'mostLitres'],
  })
  .refine(({ rearTuning }) => rearTuning.leastHz < rearTuning.mostHz, {
    error: 'more than the lowest tuning',
    path: ['rearTuning', 'mostHz'],
  });
export type DualTunedSearchInput = DeepReadonly<z.input<typeof dualTunedSearchSchema>>;
export type DualTunedSearchQuestion = DeepReadonly<z.infer<typeof dualTunedSearchSchema>>;

export type DualTunedDesign = BandFigures & {
  readonly rearLitres: number;
  readonly frontLitres: number;
  readonly rearTuningHz: number;
  readonly frontTuningHz: number;
  readonly rearPortLengthMm: number;
  readonly frontPortLengthMm: number;
  /** Mean level of the band without limits, dB. */
  readonly meanDb: number;
  /** Unevenness less the level's worth, dB: what the search brings down. */
  readonly score: number;
  /** Ready for a system. */
  readonly enclosure: Extract<Enclosure, { readonly kind: 'dual-tuned-bandpass' }>;
};

export type DualTunedSearch = {
  readonly best: DualTunedDesign;
  /** Level of the best, cabin included, at the given voltage. */
  readonly curve: { readonly frequenciesHz: readonly number[]; readonly splDb: readonly number[] };
  /** Boxes that were solved. */
  readonly solved: number;
  readonly seed: number;
};

// What heat in the coils takes from a system: the question and the answer. An estimate throughout.
import { z } from 'zod';
import type { DeepReadonly } from './deep-readonly.ts';
import { quantity } from './quantity.ts';
import { responseResultSchema } from './result.ts';

export const hotCoilSettingSchema = z.strictObject({
  /** Rise of the coils over the air, where it is known; null = worked out from the power. */
  riseK: quantity(0, 400, 'K').nullable().default(null),
  /** Coil to air, of one driver, as its maker states it; null = guessed from the rated power. */
  thermalResistanceKPerW: quantity(0.01, 100, 'K/W').nullable().default(null),
  /** Average power over that of a steady tone at the source's voltage: 1 for a tone, music 0.05 to 0.3. */
  averageShare: quantity(0.001, 1, '').default(1),
});
export type HotCoilSettingInput = DeepReadonly<z.input<typeof hotCoilSettingSchema>>;
export type HotCoilSetting = DeepReadonly<z.infer<typeof hotCoilSettingSchema>>;

export const hotCoilEstimateSchema = z.strictObject({
  /** What the rise rests on: given, or from a stated or a guessed thermal resistance. */
  basis: z.enum(['given-rise', 'stated-resistance', 'rated-power']),
  riseK: z.number(),
  coilCelsius: z.number(),
  /** Of one coil. */
  coldReOhm: z.number(),
  hotReOhm: z.number(),
  /** Heat in one driver's coils in the long run, W; null where the rise was given. */
  coilWatts: z.number().nullable(),
  /** Beyond what the glue of most coils stands: the estimate is of a driver that is failing. */
  isBeyondCoil: z.boolean(),
  /** Level lost to the heat, dB, parallel to the frequencies; below 0 where the hot system is louder. */
  compressionDb: z.array(z.number()),
  /** Everything once more, hot. */
  hot: responseResultSchema,
});
export type HotCoilEstimate = DeepReadonly<z.infer<typeof hotCoilEstimateSchema>>;

// What a system does in time: the question and the answer.
import { z } from 'zod';
import type { DeepReadonly } from './deep-readonly.ts';
import { quantity } from './quantity.ts';

export const timeSettingSchema = z.strictObject({
  /** Counted from the instant of the step. */
  durationMs: quantity(10, 2_000, 'ms').default(200),
  /** Kept whole up to here, faded out over the octave above: the model has no more to say up there. */
  flatToHz: quantity(50, 10_000, 'Hz').default(1_000),
});
export type TimeSettingInput = DeepReadonly<z.input<typeof timeSettingSchema>>;
export type TimeSetting = DeepReadonly<z.infer<typeof timeSettingSchema>>;

const curve = z.array(z.number());

/** Pressure at the listening distance over time; lists run parallel to `timesMs`. */
export const timeResponseSchema = z.strictObject({
  /** From shortly before the step, which stands at 0. */
  timesMs: curve,
  sampleMs: z.number(),
  /** Pa, for a step of the source's volts at 0 ms. */
  stepPa: curve,
  /** Pa/s: how the step's pressure changes; the answer to an impulse of the source's volts times one second. */
  impulsePaPerS: curve,
  flatToHz: z.number(),
  goneByHz: z.number(),
  /** Length of the record that was transformed; what rings on beyond it would fold back. */
  recordMs: z.number(),
  /** False where the system still rings at the end of the longest record: read the curves with care. */
  isSettled: z.boolean(),
});
export type TimeResponse = DeepReadonly<z.infer<typeof timeResponseSchema>>;

// What stands round a driver when a box is sized for it: the question behind the alignments.
import { z } from 'zod';
import type { DeepReadonly } from './deep-readonly.ts';
import { driverParametersSchema } from './driver.ts';
import { quantity } from './quantity.ts';
import { CHAMBER_RANGES, LOSS_Q, SOURCE_RANGES } from './ranges.ts';
import { airSchema, driverArraySchema, SINGLE_DRIVER } from './system.ts';

const lossQ = LOSS_Q.nullable().default(null);

export const boxSettingSchema = z.strictObject({
  array: driverArraySchema.default(SINGLE_DRIVER),
  fillFactor: CHAMBER_RANGES.fillFactor.default(1),
  /** Q of the leaks; null = tight. */
  ql: lossQ,
  /** Q of the absorption; null = none. */
  qa: lossQ,
  /** Amplifier output and cable together. */
  seriesOhm: SOURCE_RANGES.outputOhm.default(0),
  air: airSchema.prefault({}),
});
/** Left out = one driver, no loss, no series resistance, reference air. */
export type BoxSettingInput = DeepReadonly<z.input<typeof boxSettingSchema>>;

export const closedBoxSchema = boxSettingSchema.extend({
  driver: driverParametersSchema,
  netLitres: CHAMBER_RANGES.netLitres,
});
export type ClosedBox = DeepReadonly<z.infer<typeof closedBoxSchema>>;

export const closedBoxTargetSchema = boxSettingSchema.extend({
  driver: driverParametersSchema,
  qtc: quantity(0.1, 5, ''),
});

/** Families of vented responses, by definition in the acoustics package. */
export const ventedFamilySchema = z.enum(['chebyshev', 'sub-chebyshev', 'quasi-third-order', 'twin']);
export type VentedFamily = z.infer<typeof ventedFamilySchema>;

export const ventedTargetSchema = boxSettingSchema.extend({
  driver: driverParametersSchema,
  family: ventedFamilySchema,
});

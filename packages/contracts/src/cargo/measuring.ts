// How a dimension of a vehicle was taken: the reading, its ± and who held the tape.
import { z } from 'zod';
import { MEASURING_METHODS } from './measuring-methods.ts';

export const measuringMethodSchema = z.enum(MEASURING_METHODS);

export const dimensionKeySchema = z
  .string()
  .min(1)
  .max(40)
  .regex(/^[a-zA-Z][a-zA-Z0-9-]*$/);

const taken = {
  /** Which lettered dimension of the form this is. */
  key: dimensionKeySchema,
  /** What the person typed, kept beside the value: `19 5/8"`. */
  typed: z.string().max(40),
  method: measuringMethodSchema,
  takenBy: z.string().min(1).max(80),
  takenAt: z.iso.datetime({ offset: true }),
};

export const lengthMeasurementSchema = z.strictObject({
  ...taken,
  valueMm: z.number().min(-20_000).max(20_000),
  /** Null = the default of the method, soft trim counted. */
  plusMinusMm: z.number().min(0).max(200).nullable(),
});

export const angleMeasurementSchema = z.strictObject({
  ...taken,
  valueRad: z.number().min(-4).max(4),
  plusMinusRad: z.number().min(0).max(0.5).nullable(),
});

/** One reading. The same key may come several times: the reading that leaves less room is used. */
export const measurementSchema = z.union([lengthMeasurementSchema, angleMeasurementSchema]);
export type LengthMeasurement = Readonly<z.infer<typeof lengthMeasurementSchema>>;
export type AngleMeasurement = Readonly<z.infer<typeof angleMeasurementSchema>>;
export type Measurement = LengthMeasurement | AngleMeasurement;

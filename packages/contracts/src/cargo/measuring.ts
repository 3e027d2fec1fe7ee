// How a dimension of a vehicle was taken: the reading, its ± and who held the tape.
import { z } from 'zod';

export const MEASURING_METHODS = [
  'tape',
  'steel-rule',
  'caliper',
  'laser',
  'straightedge-offsets',
  'card-template',
  'scribed-template',
  'scan',
] as const;
export const measuringMethodSchema = z.enum(MEASURING_METHODS);
export type MeasuringMethod = z.infer<typeof measuringMethodSchema>;

/**
 * Default ± of one length reading by method, mm. Shop estimates on top of the class II tape formula
 * ±(0.3 + 0.2 L) mm, L in metres: hook wear and curve sag included. A scan is taken at its wide end.
 */
export const DEFAULT_PLUS_MINUS_MM: Readonly<Record<MeasuringMethod, number>> = {
  tape: 1.5,
  'steel-rule': 0.5,
  caliper: 0.1,
  laser: 2,
  'straightedge-offsets': 2,
  'card-template': 3,
  'scribed-template': 1.5,
  scan: 3,
};

/** Carpet and foam give way under the tape: added to every length that ends on soft trim, mm. */
export const SOFT_TRIM_PLUS_MINUS_MM = 3;

const DEGREE_RAD = Math.PI / 180;

/** Default ± of one angle by method, radians: a degree by hand, half a degree from a scribed template or a scan. */
export const DEFAULT_PLUS_MINUS_RAD: Readonly<Record<MeasuringMethod, number>> = {
  tape: DEGREE_RAD,
  'steel-rule': DEGREE_RAD,
  caliper: DEGREE_RAD,
  laser: DEGREE_RAD,
  'straightedge-offsets': DEGREE_RAD,
  'card-template': DEGREE_RAD,
  'scribed-template': DEGREE_RAD / 2,
  scan: DEGREE_RAD / 2,
};

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

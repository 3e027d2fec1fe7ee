// The ways to take a dimension and what each may be off. No schema here: the box in the car is drawn live, and its page
// need not send the validator.

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
export type MeasuringMethod = (typeof MEASURING_METHODS)[number];

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

// Numbers with a unit and a range. The range is written once: zod enforces it, the message repeats it, and a
// refusal shows it at the field.
import { z } from 'zod';

/** A finite number from `min` to `max`, both allowed. */
export function quantity(min: number, max: number, unit: string) {
  const range = unit === '' ? `${min} to ${max}` : `${min} to ${max} ${unit}`;
  return z
    .number({ error: `a number, ${range}` })
    .min(min, { error: range })
    .max(max, { error: range })
    .describe(range);
}

/** A whole number from `min` to `max`, both allowed. */
export function wholeNumber(min: number, max: number) {
  const range = `a whole number, ${min} to ${max}`;
  return z.int({ error: range }).min(min, { error: range }).max(max, { error: range }).describe(range);
}

// What was typed stands beside its value, so that a sheet shows again what a person wrote.
import { z } from 'zod';

const typedSchema = z.string().max(60);

/** Litres with their text. */
export const typedLitresSchema = z.strictObject({
  litres: z.number().min(0.5).max(2_000),
  typed: typedSchema,
});
export type TypedLitres = z.infer<typeof typedLitresSchema>;

/** Watts with their text. */
export const typedWattsSchema = z.strictObject({
  watts: z.number().min(0.1).max(20_000),
  typed: typedSchema,
});

/** A figure in the unit that its field prints, with its text. */
export function typedOf(range: z.ZodNumber) {
  return z.strictObject({ value: range, typed: typedSchema });
}

/** The same from `min` to `max`, both allowed. */
export function typedFigureSchema(min: number, max: number) {
  return typedOf(z.number().min(min).max(max));
}
export type TypedFigureValue = { readonly value: number; readonly typed: string };

// Small schemas that many contracts share: texts, ids, dates, money, paging.
import { z } from 'zod';

/** Whole text that PostgreSQL can hold and a screen can show: no NUL, no half surrogates, stored composed (NFC). */
function cleanText(maxLength: number) {
  return z
    .string()
    .max(maxLength, `At most ${maxLength} characters fit here.`)
    .refine(
      (text) => !text.includes('\u0000') && text.isWellFormed(),
      'Some characters here cannot be stored.',
    )
    .transform((text) => text.normalize('NFC').trim());
}

/** A name of a person or thing: 1 to 120 characters. */
export const nameSchema = cleanText(120).pipe(z.string().min(1, 'Type a name.'));
/** A short optional text. */
export const shortTextSchema = cleanText(200);
/** Notes: up to 10,000 characters. */
export const notesSchema = cleanText(10_000);
/** E-mail, or empty where there is none. */
export const emailOrEmptySchema = z.union([
  z.literal(''),
  z.email('Type an address such as name@example.com.').max(254),
]);

export const idSchema = z.uuid();
export type Id = z.infer<typeof idSchema>;

/** A calendar day of the shop, `2026-11-24`, 1970 to 2100. */
export const shopDateSchema = z.iso
  .date('Give a day such as 2026-11-24.')
  .refine((day) => day >= '1970-01-01' && day <= '2100-12-31', 'Days from 1970 to 2100 are accepted.');
export type ShopDate = z.infer<typeof shopDateSchema>;

/** An instant, ISO 8601 in UTC. */
export const instantSchema = z.iso.datetime();

/** Whole minor units (cents); no shop's job costs more than a hundred million of them. */
export const minorUnitsSchema = z.number().int().min(-1_000_000_000).max(1_000_000_000);
export const priceMinorSchema = z.number().int().min(0, 'A price cannot be below zero.').max(1_000_000_000);
/** Hundredths of a percent: 2000 = 20 %; half steps for taxes such as 8.875 % (887.5). */
export const basisPointsSchema = z.number().min(0).max(100_000).multipleOf(0.01);

/** The version a person saw; the server refuses to overwrite a newer one. */
export const versionSchema = z.number().int().min(1).max(2_000_000_000);

/** A page of a list: sorted by one shown column, then by id. */
export const pageSchema = z.strictObject({
  limit: z.number().int().min(1).max(200).default(50),
  offset: z.number().int().min(0).max(1_000_000).default(0),
  search: cleanText(200).default(''),
  descending: z.boolean().default(false),
  archived: z.boolean().default(false),
});
export type Page = z.infer<typeof pageSchema>;

/** A length as it was typed: the value in mm, the text, and the unit that the field had then. */
export function typedLengthSchema(minMm: number, maxMm: number) {
  return z.strictObject({
    mm: z.number().min(minMm).max(maxMm),
    typed: z.string().max(60),
    unit: z.enum(['mm', 'in']),
  });
}
export type TypedLengthValue = { readonly mm: number; readonly typed: string; readonly unit: 'mm' | 'in' };

/** Made by the client when a form opens; the same key never takes effect twice. */
export const idempotencyKeySchema = z.uuid();

import { z } from 'zod';
import { nameSchema } from '../common/index.ts';
import { lengthUnitSchema } from './settings.ts';

/** An IANA zone that this machine knows. */
export const timeZoneSchema = z
  .string()
  .max(60)
  .refine(isTimeZone, 'Choose a time zone such as Europe/Berlin.');

/** Three letters of ISO 4217 that `Intl` knows. */
export const currencySchema = z
  .string()
  .regex(/^[A-Z]{3}$/, 'Choose a currency, such as EUR.')
  .refine((code) => Intl.supportedValuesOf('currency').includes(code), 'That currency is not known.');

export const foundShopSchema = z.strictObject({
  name: nameSchema,
  ownerName: nameSchema,
  timeZone: timeZoneSchema,
  currency: currencySchema,
  locale: z.string().min(2).max(35).default('en-GB'),
  lengthUnit: lengthUnitSchema,
});
export type FoundShopInput = z.infer<typeof foundShopSchema>;

function isTimeZone(zone: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone });
    return true;
  } catch {
    return false; // RangeError: the only thing this constructor throws for a zone
  }
}

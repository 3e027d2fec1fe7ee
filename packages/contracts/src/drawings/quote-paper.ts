// What a customer's quote says on paper. The objects are strict: a cost, a margin or a supplier's price has no field
// here and is refused, so it cannot reach the customer by mistake.
import { z } from 'zod';
import { minorUnitsSchema, nameSchema, notesSchema, shortTextSchema } from '../common/index.ts';
import { currencySchema } from '../shop/index.ts';
import { paperSizeSchema } from './paper.ts';

const addressLinesSchema = z.array(shortTextSchema).max(8);

export const quotePaperLineSchema = z.strictObject({
  description: nameSchema,
  /** Second, smaller row; empty = none. */
  detail: z.string().max(500),
  /** `2`, `3.5 h`, `1 set`; empty = not counted. */
  quantity: shortTextSchema,
  /** Null = not shown. */
  unitPriceMinor: minorUnitsSchema.nullable(),
  amountMinor: minorUnitsSchema,
});
export type QuotePaperLine = Readonly<z.infer<typeof quotePaperLineSchema>>;

export const quotePaperSchema = z
  .strictObject({
    paper: paperSizeSchema,
    locale: z.string().min(2).max(35),
    currency: currencySchema,
    shop: z.strictObject({
      name: nameSchema,
      lines: addressLinesSchema,
      /** Registration that the law wants on quotes; empty = none. */
      taxNumber: shortTextSchema,
    }),
    number: shortTextSchema,
    version: z.number().int().min(1).max(999),
    /** Days as the shop writes them. */
    issued: shortTextSchema,
    validUntil: shortTextSchema,
    customer: z.strictObject({ name: nameSchema, lines: addressLinesSchema }),
    vehicle: shortTextSchema,
    job: shortTextSchema,
    scope: z.array(z.string().max(1_000)).max(30),
    sections: z
      .array(z.strictObject({ title: shortTextSchema, lines: z.array(quotePaperLineSchema).min(1).max(200) }))
      .min(1)
      .max(20),
    /** True = the prices above hold the tax already. */
    taxIncluded: z.boolean(),
    subtotalMinor: minorUnitsSchema,
    /** One row per rate. */
    taxes: z
      .array(
        z.strictObject({
          /** `VAT 20 %`. */
          name: shortTextSchema,
          baseMinor: minorUnitsSchema,
          amountMinor: minorUnitsSchema,
        }),
      )
      .max(10),
    totalMinor: minorUnitsSchema,
    deposit: z.strictObject({ amountMinor: minorUnitsSchema, due: shortTextSchema }).nullable(),
    terms: z.array(z.string().max(2_000)).max(30),
    note: notesSchema,
    /** Where the customer approves it; empty = not by link. */
    approveUrl: z.union([z.literal(''), z.url({ protocol: /^https?$/ }).max(500)]),
  })
  .superRefine((quote, context) => {
    const lines = quote.sections.flatMap(({ lines }) => lines);
    const sum = lines.reduce((total, { amountMinor }) => total + amountMinor, 0);
    if (sum !== quote.subtotalMinor) {
      context.addIssue({
        code: 'custom',
        path: ['subtotalMinor'],
        message: `The lines add up to ${sum}, not to ${quote.subtotalMinor}.`,
      });
    }
    const tax = quote.taxIncluded
      ? 0
      : quote.taxes.reduce((total, { amountMinor }) => total + amountMinor, 0);
    if (quote.subtotalMinor + tax !== quote.totalMinor) {
      context.addIssue({
        code: 'custom',
        path: ['totalMinor'],
        message: `Subtotal and tax add up to ${quote.subtotalMinor + tax}, not to ${quote.totalMinor}.`,
      });
    }
  });
/** All that a customer's quote says, in the shop's minor units of money. */
export type QuotePaper = Readonly<z.infer<typeof quotePaperSchema>>;

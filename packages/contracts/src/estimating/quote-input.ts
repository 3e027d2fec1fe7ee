// What a quote is priced from: lines with quantities and rates, supplies, discount, taxes, deposit. Money is whole
// minor units of one currency; rates are basis points (10,000 = the whole).
import { isCurrency } from '@gusset/units';
import { z } from 'zod';
import { priceMinorSchema } from '../common/index.ts';
import { LINE_KINDS } from './line-kinds.ts';

/** Most lines on one quote. */
export const QUOTE_LINES_LIMIT = 500;

export const currencySchema = z.string().refine(isCurrency, 'Give an ISO 4217 code such as USD.');

/** Basis points to a hundredth: 8.875 % is 887.5, as some sales taxes are. At most 1000 %. */
export const rateBasisPointsSchema = z
  .number()
  .min(0)
  .max(100_000)
  .refine((rate) => Math.abs(rate * 100 - Math.round(rate * 100)) < RATE_NOISE, 'At most 0.0001 % is kept.');

/** What floating point may be off in `rate * 100` at 1000 %. */
const RATE_NOISE = 1e-6;

export const lineKindSchema = z.enum(LINE_KINDS);

/** Where a part comes from. Customer's and sponsor's are listed at 0 and are never a purchase. */
export const partSourceSchema = z.enum(['stock', 'buy', 'customer', 'sponsor']);
export type PartSource = z.infer<typeof partSourceSchema>;

const lineKeySchema = z.string().min(1).max(60);
const taxCodeKeySchema = z.string().min(1).max(12);

/** How many, to six decimals: 1.25 sheets, 0.35 L. */
export const quantitySchema = z
  .number()
  .min(0)
  .max(100_000)
  .refine((quantity) => Number(quantity.toFixed(6)) === quantity, 'At most six decimals are kept.');

const unitSchema = z.string().min(1).max(20);

export const linePricingSchema = z.discriminatedUnion('by', [
  /** A price for each. */
  z.strictObject({
    by: z.literal('price'),
    quantity: quantitySchema,
    unit: unitSchema,
    unitCostMinor: priceMinorSchema,
    unitPriceMinor: priceMinorSchema,
  }),
  /** What it costs and a share on top. */
  z.strictObject({
    by: z.literal('markup'),
    quantity: quantitySchema,
    unit: unitSchema,
    unitCostMinor: priceMinorSchema,
    markupBasisPoints: rateBasisPointsSchema,
  }),
  /** Working time at an hourly rate. */
  z.strictObject({
    by: z.literal('hours'),
    minutes: z.number().int().min(0).max(525_600),
    hourlyCostMinor: priceMinorSchema,
    hourlyRateMinor: priceMinorSchema,
  }),
]);
export type LinePricing = Readonly<z.infer<typeof linePricingSchema>>;

/** What a line is left out of: the discount, every tax, or the total (an option shown with its price). */
export const lineExclusionSchema = z.enum(['discount', 'tax', 'total']);
export type LineExclusion = z.infer<typeof lineExclusionSchema>;

export const quoteLineSchema = z.strictObject({
  /** Stays with the line from version to version, so that versions can be compared. */
  key: lineKeySchema,
  kind: lineKindSchema,
  description: z.string().min(1).max(300),
  /** Null for work and fees, which come from nowhere. */
  source: partSourceSchema.nullable(),
  pricing: linePricingSchema,
  /** Null = by the kind of the line; a list = these and no others; an empty list = none. */
  taxCodes: z.array(taxCodeKeySchema).max(6).nullable(),
  excludeFrom: z.array(lineExclusionSchema).max(3),
});
export type QuoteLine = Readonly<z.infer<typeof quoteLineSchema>>;

/** Glue, screws, tape and the like as a share of labour, before discount. */
export const suppliesRuleSchema = z.strictObject({
  description: z.string().min(1).max(300),
  shareOfLabourBasisPoints: rateBasisPointsSchema,
  /** Null = no cap. */
  capMinor: priceMinorSchema.nullable(),
  /** What the supplies cost the shop, as a share of what is charged for them. */
  costBasisPoints: rateBasisPointsSchema,
});
export type SuppliesRule = Readonly<z.infer<typeof suppliesRuleSchema>>;

export const discountSchema = z.discriminatedUnion('by', [
  z.strictObject({
    by: z.literal('percent'),
    rateBasisPoints: rateBasisPointsSchema.max(10_000),
    on: z.array(lineKindSchema).min(1).max(LINE_KINDS.length),
  }),
  z.strictObject({
    by: z.literal('amount'),
    amountMinor: priceMinorSchema,
    on: z.array(lineKindSchema).min(1).max(LINE_KINDS.length),
  }),
]);
export type Discount = Readonly<z.infer<typeof discountSchema>>;

/** A tax and the kinds of line it falls on. Two taxes on one kind stand side by side, neither on top of the other. */
export const quoteTaxSchema = z.strictObject({
  code: taxCodeKeySchema,
  name: z.string().min(1).max(120),
  rateBasisPoints: rateBasisPointsSchema,
  appliesTo: z.array(lineKindSchema).max(LINE_KINDS.length),
});
export type QuoteTax = Readonly<z.infer<typeof quoteTaxSchema>>;

export const depositRuleSchema = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('none') }),
  z.strictObject({ by: z.literal('percent'), rateBasisPoints: rateBasisPointsSchema.max(10_000) }),
  z.strictObject({ by: z.literal('amount'), amountMinor: priceMinorSchema }),
  /** What the parts and materials to be bought come to on this quote, tax in: never the shop's own cost. */
  z.strictObject({ by: z.literal('parts') }),
]);
export type DepositRule = Readonly<z.infer<typeof depositRuleSchema>>;

export const quoteInputSchema = z.strictObject({
  currency: currencySchema,
  lines: z.array(quoteLineSchema).max(QUOTE_LINES_LIMIT),
  supplies: suppliesRuleSchema.nullable(),
  discount: discountSchema.nullable(),
  taxes: z.array(quoteTaxSchema).max(12),
  /** True: the prices typed hold the tax already. */
  pricesIncludeTax: z.boolean(),
  /** Tax rounded on each line, or once for each rate on the sum. */
  taxRounding: z.enum(['per-line', 'per-document']),
  deposit: depositRuleSchema,
  validDays: z.number().int().min(1).max(365),
  /** Below this share of the net price the quote carries a warning; null = no floor. */
  marginFloorBasisPoints: rateBasisPointsSchema.nullable(),
  /** What the price leaves out, in words for the customer. */
  exclusions: z.array(z.string().min(1).max(500)).max(40),
});
export type QuoteInput = Readonly<z.infer<typeof quoteInputSchema>>;

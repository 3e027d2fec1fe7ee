// What pricing answers. `PricedQuote` holds costs and margins; `CustomerQuote` has no place for them, and the two
// can't be taken for one another: `costs` tells.
import { z } from 'zod';
import { currencySchema, lineKindSchema, partSourceSchema, rateBasisPointsSchema } from './quote-input.ts';

const minorSchema = z.number().int().min(Number.MIN_SAFE_INTEGER).max(Number.MAX_SAFE_INTEGER);
const notNegativeSchema = z.number().int().min(0).max(Number.MAX_SAFE_INTEGER);

const customerLineShape = {
  key: z.string(),
  kind: lineKindSchema,
  description: z.string(),
  source: partSourceSchema.nullable(),
  /** Hours for work, to six decimals. */
  quantity: z.number().min(0),
  unit: z.string(),
  /** Working time; null where the line is not priced by the hour. */
  minutes: z.number().int().min(0).nullable(),
  /** Null where a markup gives no whole price for each: then the paper shows the line's price alone. */
  unitPriceMinor: notNegativeSchema.nullable(),
  /** Quantity times price as stated: tax in it where prices include tax. */
  listMinor: notNegativeSchema,
  /** This line's part of the discount, as stated. */
  discountMinor: notNegativeSchema,
  /** After discount, without tax. */
  netMinor: notNegativeSchema,
  /** Every tax on this line; their sum is `taxMinor`. */
  taxCodes: z.array(z.string()),
  taxMinor: notNegativeSchema,
  /** What the line comes to: net and tax. */
  grossMinor: notNegativeSchema,
  /** False for an option: shown with its price, not in any total. */
  counted: z.boolean(),
};

export const customerLineSchema = z.strictObject(customerLineShape);
export type CustomerLine = Readonly<z.infer<typeof customerLineSchema>>;

export const pricedLineSchema = z.strictObject({
  ...customerLineShape,
  costMinor: notNegativeSchema,
  /** Net less cost. */
  marginMinor: minorSchema,
  /** Share of net; null where net is 0. */
  marginBasisPoints: z.number().int().nullable(),
  /** Declared value of a customer's or sponsor's part: off the books, for insurance and the obligations list. */
  suppliedValueMinor: notNegativeSchema,
});
export type PricedLine = Readonly<z.infer<typeof pricedLineSchema>>;

const customerKindShape = {
  kind: lineKindSchema,
  listMinor: notNegativeSchema,
  discountMinor: notNegativeSchema,
  netMinor: notNegativeSchema,
  taxMinor: notNegativeSchema,
  grossMinor: notNegativeSchema,
};
const customerKindTotalSchema = z.strictObject(customerKindShape);
export const kindTotalSchema = z.strictObject({
  ...customerKindShape,
  costMinor: notNegativeSchema,
  marginMinor: minorSchema,
});
export type KindTotal = Readonly<z.infer<typeof kindTotalSchema>>;

export const taxTotalSchema = z.strictObject({
  code: z.string(),
  name: z.string(),
  rateBasisPoints: rateBasisPointsSchema,
  /** Net of the lines that carry this tax. */
  taxableMinor: notNegativeSchema,
  taxMinor: notNegativeSchema,
});
export type TaxTotal = Readonly<z.infer<typeof taxTotalSchema>>;

const customerTotalsShape = {
  listMinor: notNegativeSchema,
  discountMinor: notNegativeSchema,
  netMinor: notNegativeSchema,
  taxMinor: notNegativeSchema,
  /** What the customer pays in all. */
  grandMinor: notNegativeSchema,
  depositMinor: notNegativeSchema,
  balanceMinor: notNegativeSchema,
  labourMinutes: z.number().int().min(0),
};
const customerTotalsSchema = z.strictObject(customerTotalsShape);
export const quoteTotalsSchema = z.strictObject({
  ...customerTotalsShape,
  costMinor: notNegativeSchema,
  /** Part of the cost that has to be bought for this job. */
  purchasesMinor: notNegativeSchema,
  marginMinor: minorSchema,
  marginBasisPoints: z.number().int().nullable(),
});
export type QuoteTotals = Readonly<z.infer<typeof quoteTotalsSchema>>;

/** What the shop should look at before the quote leaves it. The sentence is made in the view. */
export const quoteWarningSchema = z.discriminatedUnion('code', [
  z.strictObject({
    code: z.literal('price-below-cost'),
    lineKey: z.string(),
    netMinor: notNegativeSchema,
    costMinor: notNegativeSchema,
  }),
  z.strictObject({
    code: z.literal('margin-below-floor'),
    marginBasisPoints: z.number().int(),
    floorBasisPoints: rateBasisPointsSchema,
  }),
  /** More discount was asked than there is to take it from. */
  z.strictObject({
    code: z.literal('discount-cut-back'),
    askedMinor: notNegativeSchema,
    givenMinor: notNegativeSchema,
  }),
  /** A customer's or sponsor's part came with a price; it is listed at 0. */
  z.strictObject({ code: z.literal('supplied-part-price-dropped'), lineKey: z.string() }),
]);
export type QuoteWarning = Readonly<z.infer<typeof quoteWarningSchema>>;

const quoteShape = {
  currency: currencySchema,
  pricesIncludeTax: z.boolean(),
  taxRounding: z.enum(['per-line', 'per-document']),
  taxes: z.array(taxTotalSchema),
  validDays: z.number().int(),
  exclusions: z.array(z.string()),
};

export const pricedQuoteSchema = z.strictObject({
  costs: z.literal('shown'),
  ...quoteShape,
  lines: z.array(pricedLineSchema),
  byKind: z.array(kindTotalSchema),
  totals: quoteTotalsSchema,
  warnings: z.array(quoteWarningSchema),
});
/** For the people of the shop who may see costs. */
export type PricedQuote = Readonly<z.infer<typeof pricedQuoteSchema>>;

export const customerQuoteSchema = z.strictObject({
  costs: z.literal('hidden'),
  ...quoteShape,
  lines: z.array(customerLineSchema),
  byKind: z.array(customerKindTotalSchema),
  totals: customerTotalsSchema,
});
/** For customers and technicians: nothing in it says what anything cost the shop. */
export type CustomerQuote = Readonly<z.infer<typeof customerQuoteSchema>>;

const changedValueSchema = z.strictObject({
  field: z.string(),
  before: z.union([z.string(), z.number(), z.boolean(), z.null()]),
  after: z.union([z.string(), z.number(), z.boolean(), z.null()]),
});
export type ChangedValue = Readonly<z.infer<typeof changedValueSchema>>;

const namedLineSchema = z.strictObject({
  key: z.string(),
  kind: lineKindSchema,
  description: z.string(),
  quantity: z.number(),
  unit: z.string(),
  grossMinor: notNegativeSchema,
  counted: z.boolean(),
});

export const quoteComparisonSchema = z.strictObject({
  currency: currencySchema,
  added: z.array(namedLineSchema),
  removed: z.array(namedLineSchema),
  changed: z.array(
    z.strictObject({ key: z.string(), description: z.string(), changes: z.array(changedValueSchema).min(1) }),
  ),
  /** Totals that differ, by their name in the quote. */
  totals: z.array(changedValueSchema),
  /** After less before: what a change order adds to or takes off the job. */
  grandDifferenceMinor: minorSchema,
  labourDifferenceMinutes: z.number().int(),
});
export type QuoteComparison = Readonly<z.infer<typeof quoteComparisonSchema>>;

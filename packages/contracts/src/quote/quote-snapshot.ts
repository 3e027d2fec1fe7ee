// The frozen picture of a quote: all that the customer reads, as it stood when the quote was made. Strict, so that a
// cost or a margin has no place in it. Stored with its SHA-256; an approval names that hash.
import { z } from 'zod';
import { instantSchema, minorUnitsSchema, nameSchema, notesSchema, shopDateSchema } from '../common/index.ts';
import { paperSizeSchema } from '../drawings/index.ts';
import { currencySchema } from '../shop/index.ts';

const textSchema = z.string().max(500);

/** A drawing's scene as `@gusset/drawings` makes it, kept as data: drawn the same on screen, paper and in ten years. */
export const frozenDrawingSchema = z.strictObject({
  title: z.string().max(200),
  description: z.string().max(1_000),
  widthPt: z.number().positive().max(2_000),
  heightPt: z.number().positive().max(2_000),
  layers: z.array(z.unknown()).max(40),
});
export type FrozenDrawing = Readonly<z.infer<typeof frozenDrawingSchema>>;

export const snapshotLineSchema = z.strictObject({
  description: nameSchema,
  /** Second, smaller row; empty = none. */
  detail: textSchema,
  /** `2`, `3.5 h`; empty = not counted. */
  quantity: z.string().max(40),
  /** Null = not shown. */
  unitPriceMinor: minorUnitsSchema.nullable(),
  /** As stated: with tax in it where prices hold the tax. */
  amountMinor: minorUnitsSchema,
});
export type SnapshotLine = Readonly<z.infer<typeof snapshotLineSchema>>;

export const quoteSnapshotSchema = z.strictObject({
  /** Rises when the shape of this changes. */
  format: z.literal(1),
  /** `2417/2`: the job and the version. */
  number: z.string().min(1).max(40),
  version: z.number().int().min(1).max(999),
  /** Which issue of the price sheet it was made from: `B`. */
  priceRevision: z.string().max(8),
  madeAt: instantSchema,
  locale: z.string().min(2).max(35),
  timeZone: z.string().min(1).max(60),
  paper: paperSizeSchema,
  shop: z.strictObject({
    name: nameSchema,
    lines: z.array(textSchema).max(12),
    phone: textSchema,
    email: textSchema,
    taxNumber: textSchema,
  }),
  customer: z.strictObject({ name: nameSchema, lines: z.array(textSchema).max(12) }),
  vehicle: textSchema,
  job: z.strictObject({ number: z.number().int(), title: nameSchema }),
  issuedOn: shopDateSchema,
  validUntil: shopDateSchema,
  /** Null = not planned yet. */
  promisedOn: shopDateSchema.nullable(),
  scope: notesSchema,
  exclusions: z.array(textSchema).max(40),
  terms: notesSchema,
  /** What may hurt somebody, in words. */
  cautions: z.array(z.string().max(1_000)).max(6),
  drawings: z.strictObject({
    section: frozenDrawingSchema.nullable(),
    whole: frozenDrawingSchema.nullable(),
  }),
  currency: currencySchema,
  sections: z
    .array(z.strictObject({ title: nameSchema, lines: z.array(snapshotLineSchema).min(1).max(200) }))
    .min(1)
    .max(20),
  /** True = the prices above hold the tax already. */
  taxIncluded: z.boolean(),
  subtotalMinor: minorUnitsSchema,
  taxes: z
    .array(z.strictObject({ name: textSchema, baseMinor: minorUnitsSchema, amountMinor: minorUnitsSchema }))
    .max(10),
  totalMinor: minorUnitsSchema,
  depositMinor: minorUnitsSchema,
  balanceMinor: minorUnitsSchema,
});
export type QuoteSnapshot = Readonly<z.infer<typeof quoteSnapshotSchema>>;

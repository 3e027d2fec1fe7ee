// Sheet 07, Parts: what the job needs, from the design and by hand, and where each comes from. Quantities and part
// ids only: prices are read when the price sheet is worked out, so who sees this sheet sees no money.
import { z } from 'zod';
import { idSchema, shopDateSchema, shortTextSchema } from '../common/index.ts';
import { partSourceSchema, quantitySchema } from '../estimating/index.ts';
import { partGroupSchema } from '../planning/index.ts';

export const partUnitSchema = z.enum(['each', 'sheet', 'm', 'm2', 'litre', 'kg', 'pack']);

/** A key that stays with a line: `sheet:<part id>`, `driver:<part id>`, `hand:<uuid>`. */
const lineKeySchema = z.string().min(1).max(60);

const lineShape = {
  key: lineKeySchema,
  /** The catalogue part; null = something that the catalogue does not know. */
  partId: idSchema.nullable(),
  description: shortTextSchema,
  /** How the price sheet files it. */
  kind: z.enum(['material', 'part']),
  /** Which tasks wait for it. */
  group: partGroupSchema,
  quantity: quantitySchema,
  unit: partUnitSchema,
  source: partSourceSchema,
  supplierId: idSchema.nullable(),
  /** Sponsor's loans: when they go back. */
  returnDueOn: shopDateSchema.nullable(),
  note: shortTextSchema,
};

/** What a person decided about a line that the design asks for; null = as the design says. */
export const partsOverrideSchema = z.strictObject({
  key: lineKeySchema,
  quantity: quantitySchema.nullable(),
  /** Why the quantity differs from the worked-out one. */
  reason: shortTextSchema,
  partId: idSchema.nullable(),
  source: partSourceSchema.nullable(),
  supplierId: idSchema.nullable(),
  returnDueOn: shopDateSchema.nullable(),
  leftOut: z.boolean(),
});
export type PartsOverride = z.infer<typeof partsOverrideSchema>;

export const partsInputSchema = z.strictObject({
  handLines: z.array(z.strictObject(lineShape)).max(200),
  overrides: z.array(partsOverrideSchema).max(200),
  /** Parts of the brief that were taken up or turned down: their keys. */
  settledBriefKeys: z.array(z.string().max(40)).max(40),
});
export type PartsInput = z.infer<typeof partsInputSchema>;

export const partsLineSchema = z.strictObject({
  ...lineShape,
  /** Where the quantity comes from, in words: `3 sheets from the layout, rev B`. */
  because: z.string().max(300),
  /** The worked-out quantity where a person changed it. */
  workedOutQuantity: quantitySchema.nullable(),
});
export type PartsLine = z.infer<typeof partsLineSchema>;

export type PartsResult = { readonly lines: readonly PartsLine[] };

export { type PartFact, type PartsFacts, usualSource } from './parts-facts.ts';

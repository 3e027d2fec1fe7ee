// Sheet 08, Price: labour from the task template with editable hours, the parts of sheet 07 at catalogue prices,
// supplies, discount, taxes, deposit. The tasks without money go on to the plan.
import { z } from 'zod';
import { nameSchema, notesSchema, priceMinorSchema, shortTextSchema } from '../common/index.ts';
import {
  depositRuleSchema,
  discountSchema,
  lineKindSchema,
  type PricedQuote,
  quantitySchema,
} from '../estimating/index.ts';
import { partGroupSchema, taskPhaseSchema, taskPrerequisiteSchema } from '../planning/index.ts';
import { bayKindSchema, skillSchema } from '../shop/index.ts';

/** One task of this job, as priced and planned. */
export const jobTaskSpecSchema = z.strictObject({
  key: z.string().min(1).max(60),
  title: nameSchema,
  skill: skillSchema,
  minutes: z.number().int().min(0).max(60_000),
  prerequisites: z.array(taskPrerequisiteSchema).max(20),
  bayKind: bayKindSchema.nullable(),
  vehicleOnSite: z.boolean(),
  breakable: z.boolean(),
  needsParts: z.array(partGroupSchema).max(7),
  phase: taskPhaseSchema,
});
export type JobTaskSpec = z.infer<typeof jobTaskSpecSchema>;

/** A line that the parts sheet does not hold: subcontracted work, a fee, delivery. */
export const extraLineSchema = z.strictObject({
  key: z.string().min(1).max(60),
  kind: z.enum(['subcontract', 'other']),
  description: nameSchema,
  quantity: quantitySchema,
  unitCostMinor: priceMinorSchema,
  unitPriceMinor: priceMinorSchema,
});

/** A price that differs from the catalogue's for this job. */
export const priceOverrideSchema = z.strictObject({
  lineKey: z.string().min(1).max(60),
  unitPriceMinor: priceMinorSchema,
  reason: shortTextSchema,
});

export const priceInputSchema = z.strictObject({
  /** Null = the template has not been taken yet. */
  tasks: z.array(jobTaskSpecSchema).max(120).nullable(),
  extraLines: z.array(extraLineSchema).max(60),
  priceOverrides: z.array(priceOverrideSchema).max(200),
  discount: discountSchema.nullable(),
  /** Tax codes of single kinds of line that differ from the shop's; null = not taxed. */
  taxCodeByKind: z.partialRecord(lineKindSchema, z.string().max(12).nullable()),
  /** Null = as the shop sets it. */
  deposit: depositRuleSchema.nullable(),
  validDays: z.number().int().min(1).max(365).nullable(),
  /** What the customer gets, in words. */
  scope: notesSchema,
  exclusions: z.array(shortTextSchema).max(40),
  /** Null = the shop's terms. */
  terms: notesSchema.nullable(),
});
export type PriceInput = z.infer<typeof priceInputSchema>;

export type PriceResult = {
  readonly quote: PricedQuote;
  /** For the plan: no money in here. */
  readonly tasks: readonly JobTaskSpec[];
  readonly scope: string;
  readonly terms: string;
  readonly labourMinutes: number;
};

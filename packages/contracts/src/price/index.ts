// Sheet 08, Price: labour from the task template with editable hours, the parts of sheet 07 at catalogue prices,
// supplies, discount, taxes, deposit. The tasks without money go on to the plan.
import { z } from 'zod';
import { nameSchema, notesSchema, priceMinorSchema, shortTextSchema } from '../common/index.ts';
import {
  depositRuleSchema,
  discountSchema,
  type LineKind,
  lineKindSchema,
  type PricedQuote,
  quantitySchema,
} from '../estimating/index.ts';
import { partGroupSchema, taskPhaseSchema, taskPrerequisiteSchema } from '../planning/index.ts';
import { bayKindSchema, type Skill, skillSchema } from '../shop/index.ts';

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

export type ExtraLine = z.infer<typeof extraLineSchema>;

/** A price that differs from the catalogue's for this job. */
export const priceOverrideSchema = z.strictObject({
  lineKey: z.string().min(1).max(60),
  unitPriceMinor: priceMinorSchema,
  reason: shortTextSchema,
});

export type PriceOverride = z.infer<typeof priceOverrideSchema>;

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

/** Something to settle before the customer sees the price. The sentence is the screen's. */
export type PriceNote =
  /** The customer would read prices and not what they are for. */
  | { readonly code: 'no-scope' }
  /** Nothing says what it costs the customer: the catalogue has no price and nobody typed one. */
  | { readonly code: 'no-price'; readonly lineKey: string; readonly description: string }
  /** A price was typed for a line that is not on the parts sheet any more. */
  | { readonly code: 'price-for-nothing'; readonly lineKey: string }
  /** A task waits for one that is not on the list; that wait is left out. */
  | { readonly code: 'wait-left-out'; readonly taskKey: string; readonly missingKey: string };

export type PriceResult = {
  readonly quote: PricedQuote;
  /** For the plan: no money in here. */
  readonly tasks: readonly JobTaskSpec[];
  readonly scope: string;
  readonly terms: string;
  readonly labourMinutes: number;
  readonly notes: readonly PriceNote[];
};

/** What the sheets that read this one get of it: nobody needs to see money to plan. */
export type SharedPriceResult = Pick<PriceResult, 'tasks' | 'labourMinutes'>;

/** What a part costs and sells for, as the catalogue said when the sheet was worked out. */
export type PartPrice = {
  readonly partId: string;
  readonly name: string;
  readonly buyPriceMinor: number;
  /** 0 = not set: the shop's markup on the cost. */
  readonly sellPriceMinor: number;
};

export type PriceFacts = {
  readonly currency: string;
  /** The parts that the parts sheet names and the catalogue knows, by id. */
  readonly partPrices: readonly PartPrice[];
  readonly rates: {
    readonly labourRateMinor: number;
    readonly labourRateBySkillMinor: Readonly<Partial<Record<Skill, number>>>;
    /** What an hour costs the shop: the mean of those who can do it. */
    readonly hourlyCostMinor: number;
    readonly hourlyCostBySkillMinor: Readonly<Partial<Record<Skill, number>>>;
    readonly materialMarkupBasisPoints: number;
    readonly partMarkupBasisPoints: number;
    readonly marginFloorBasisPoints: number;
    readonly suppliesPercentOfLabourBasisPoints: number;
    readonly suppliesCapMinor: number;
    readonly customerPartFeeMinor: number;
  };
  readonly taxes: {
    readonly codes: readonly {
      readonly code: string;
      readonly name: string;
      readonly rateBasisPoints: number;
    }[];
    readonly codeByKind: Readonly<Record<LineKind, string | null>>;
    readonly pricesIncludeTax: boolean;
    readonly rounding: 'per-line' | 'per-document';
  };
  readonly depositBasisPoints: number;
  readonly validDays: number;
  readonly terms: string;
};

// The records a shop keeps: what a form sends when one is made or changed. Ids, versions and times are added around.
import { z } from 'zod';
import {
  emailOrEmptySchema,
  idSchema,
  nameSchema,
  notesSchema,
  priceMinorSchema,
  shopDateSchema,
  shortTextSchema,
} from '../common/index.ts';
import { bayKindSchema, skillSchema } from '../shop/index.ts';
import { partFiguresSchemas } from './part-figures.ts';

export const customerInputSchema = z.strictObject({
  name: nameSchema,
  phone: shortTextSchema.default(''),
  email: emailOrEmptySchema.default(''),
  address: notesSchema.default(''),
  notes: notesSchema.default(''),
});
export type CustomerInput = z.infer<typeof customerInputSchema>;

export const BODY_STYLES = ['saloon', 'hatch', 'estate', 'coupe', 'van', 'pickup', 'suv'] as const;
const yearSchema = z.number().int().min(1900).max(2100).nullable().default(null);

export const vehicleModelInputSchema = z
  .strictObject({
    make: nameSchema,
    model: nameSchema,
    yearFrom: yearSchema,
    yearTo: yearSchema,
    body: z.enum(BODY_STYLES),
    powertrain: z.enum(['combustion', 'hybrid', 'electric', 'unknown']).default('unknown'),
    /** "Occupants and cargo" of the placard, kg; null = not read yet. */
    payloadKg: z.number().positive().max(5_000).nullable().default(null),
    /** Longest inside length of the cabin, m: where cabin gain begins. */
    longestCabinM: z.number().min(0.5).max(12).nullable().default(null),
    notes: notesSchema.default(''),
  })
  .refine((model) => model.yearFrom === null || model.yearTo === null || model.yearFrom <= model.yearTo, {
    message: 'The last year cannot be before the first.',
    path: ['yearTo'],
  });
export type VehicleModelInput = z.infer<typeof vehicleModelInputSchema>;

export const vehicleInputSchema = z.strictObject({
  customerId: idSchema,
  modelId: idSchema,
  plate: shortTextSchema.default(''),
  year: yearSchema,
  colour: shortTextSchema.default(''),
  notes: notesSchema.default(''),
});
export type VehicleInput = z.infer<typeof vehicleInputSchema>;

export const supplierInputSchema = z.strictObject({
  name: nameSchema,
  kind: z.enum(['supplier', 'sponsor']).default('supplier'),
  contact: shortTextSchema.default(''),
  email: emailOrEmptySchema.default(''),
  phone: shortTextSchema.default(''),
  leadDays: z.number().int().min(0).max(365).default(3),
  terms: notesSchema.default(''),
});
export type SupplierInput = z.infer<typeof supplierInputSchema>;

export const personInputSchema = z.strictObject({
  name: nameSchema,
  email: emailOrEmptySchema.default(''),
  phone: shortTextSchema.default(''),
  skills: z.array(skillSchema).max(10),
  hourlyCostMinor: priceMinorSchema.default(0),
});
export type PersonInput = z.infer<typeof personInputSchema>;

export const leaveInputSchema = z
  .strictObject({
    personId: idSchema,
    fromOn: shopDateSchema,
    toOn: shopDateSchema,
    note: shortTextSchema.default(''),
  })
  .refine((leave) => leave.fromOn <= leave.toOn, {
    message: 'Leave cannot end before it starts.',
    path: ['toOn'],
  });
export type LeaveInput = z.infer<typeof leaveInputSchema>;

export const bayInputSchema = z.strictObject({
  name: nameSchema,
  kinds: z.array(bayKindSchema).min(1, 'Say what can be done in this bay.').max(3),
});
export type BayInput = z.infer<typeof bayInputSchema>;

const partCommon = {
  maker: shortTextSchema.default(''),
  name: nameSchema,
  code: shortTextSchema.default(''),
  unit: z.enum(['each', 'sheet', 'm', 'm2', 'litre', 'kg', 'pack']).default('each'),
  supplierId: idSchema.nullable().default(null),
  buyPriceMinor: priceMinorSchema.default(0),
  sellPriceMinor: priceMinorSchema.default(0),
  stockQuantity: z.number().min(0).max(1_000_000).default(0),
  leadDays: z.number().int().min(0).max(365).nullable().default(null),
  notes: notesSchema.default(''),
};

export const partInputSchemas = {
  driver: z.strictObject({ kind: z.literal('driver'), ...partCommon, figures: partFiguresSchemas.driver }),
  amplifier: z.strictObject({
    kind: z.literal('amplifier'),
    ...partCommon,
    figures: partFiguresSchemas.amplifier,
  }),
  processor: z.strictObject({
    kind: z.literal('processor'),
    ...partCommon,
    figures: partFiguresSchemas.processor,
  }),
  source: z.strictObject({ kind: z.literal('source'), ...partCommon, figures: partFiguresSchemas.source }),
  sheet: z.strictObject({ kind: z.literal('sheet'), ...partCommon, figures: partFiguresSchemas.sheet }),
  finish: z.strictObject({ kind: z.literal('finish'), ...partCommon, figures: partFiguresSchemas.finish }),
  hardware: z.strictObject({
    kind: z.literal('hardware'),
    ...partCommon,
    figures: partFiguresSchemas.hardware,
  }),
  supply: z.strictObject({ kind: z.literal('supply'), ...partCommon, figures: partFiguresSchemas.supply }),
} as const;

export const partInputSchema = z.discriminatedUnion('kind', [
  partInputSchemas.driver,
  partInputSchemas.amplifier,
  partInputSchemas.processor,
  partInputSchemas.source,
  partInputSchemas.sheet,
  partInputSchemas.finish,
  partInputSchemas.hardware,
  partInputSchemas.supply,
]);
export type PartInput = z.infer<typeof partInputSchema>;

/** Stock counts move by a signed step with a reason, never silently. */
export const stockStepSchema = z.strictObject({
  partId: idSchema,
  step: z.number().min(-1_000_000).max(1_000_000),
  reason: shortTextSchema,
});

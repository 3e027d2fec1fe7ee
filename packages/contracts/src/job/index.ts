// A job as it is opened, listed and shown.
import { z } from 'zod';
import { idSchema, nameSchema, pageSchema, shopDateSchema } from '../common/index.ts';
import { STANDINGS } from './standing.ts';

export { STANDING_WORDS, STANDINGS, type Standing } from './standing.ts';

export const standingSchema = z.enum(STANDINGS);

export const openJobSchema = z.strictObject({
  title: nameSchema,
  customerId: idSchema,
  vehicleId: idSchema.nullable().default(null),
  wishedOn: shopDateSchema.nullable().default(null),
});
export type OpenJobInput = z.infer<typeof openJobSchema>;

export const JOB_SORTS = ['number', 'customer', 'standing', 'promised', 'changed'] as const;
export const jobListSchema = pageSchema.extend({
  standing: z.array(standingSchema).max(STANDINGS.length).default([]),
  customerId: idSchema.nullable().default(null),
  vehicleId: idSchema.nullable().default(null),
  sort: z.enum(JOB_SORTS).default('number'),
  descending: z.boolean().default(true),
});
export type JobListInput = z.infer<typeof jobListSchema>;

// A job as it is opened, listed and shown.
import { z } from 'zod';
import { idSchema, nameSchema, pageSchema, shopDateSchema } from '../common/index.ts';

/** Where a job stands, in the order in which it usually goes. It follows from what happened; nobody sets it. */
export const STANDINGS = [
  'enquiry',
  'surveyed',
  'priced',
  'quoted',
  'approved',
  'in-bay',
  'handed-over',
  'declined',
] as const;
export const standingSchema = z.enum(STANDINGS);
export type Standing = z.infer<typeof standingSchema>;

/** In the shop's words. */
export const STANDING_WORDS: Record<Standing, string> = {
  enquiry: 'Enquiry',
  surveyed: 'Measured',
  priced: 'Priced',
  quoted: 'With the customer',
  approved: 'Approved',
  'in-bay': 'In the bay',
  'handed-over': 'Handed over',
  declined: 'Not going ahead',
};

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

import { idSchema, shopDateSchema, versionSchema } from '@gusset/contracts/common';
import { z } from 'zod';
import { allowed, router } from '../trpc/procedures.ts';
import { planOfJob } from './job-plan.ts';
import { currentPlan, promiseJob, whatIf } from './plan.service.ts';

const whatIfSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('leave'),
    personId: idSchema,
    fromOn: shopDateSchema,
    toOn: shopDateSchema,
  }),
  z.strictObject({
    kind: z.literal('part'),
    jobId: idSchema,
    lineKey: z.string().min(1).max(60),
    expectedOn: shopDateSchema,
  }),
]);

export const planRouter = router({
  current: allowed('job.read').query(({ ctx }) => currentPlan(ctx.deps, ctx.who)),

  /** With the sheet's draft in place of what was issued, so that dates are known before. */
  ofJob: allowed('job.read')
    .input(z.strictObject({ jobId: idSchema }))
    .query(({ ctx, input }) => planOfJob(ctx.deps, ctx.who, input)),

  whatIf: allowed('plan.edit')
    .input(whatIfSchema)
    .query(({ ctx, input }) => whatIf(ctx.deps, ctx.who, input)),

  promise: allowed('plan.edit')
    .input(z.strictObject({ jobId: idSchema, version: versionSchema, promisedOn: shopDateSchema.nullable() }))
    .mutation(({ ctx, input }) => promiseJob(ctx.deps, ctx.who, input)),
});

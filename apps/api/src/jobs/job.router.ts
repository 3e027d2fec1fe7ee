import {
  idempotencyKeySchema,
  idSchema,
  nameSchema,
  shopDateSchema,
  versionSchema,
} from '@gusset/contracts/common';
import { jobListSchema, openJobSchema } from '@gusset/contracts/job';
import { z } from 'zod';
import { allowed, router } from '../trpc/procedures.ts';
import { archiveJob, changeJob, jobByNumber, jobList, openJob } from './job.service.ts';

export const jobRouter = router({
  open: allowed('job.edit')
    .input(z.strictObject({ key: idempotencyKeySchema, job: openJobSchema }))
    .mutation(({ ctx, input }) => openJob(ctx.deps, ctx.who, input.key, input.job)),

  list: allowed('job.read')
    .input(jobListSchema)
    .query(({ ctx, input }) => jobList(ctx.deps, ctx.who, input)),

  byNumber: allowed('job.read')
    .input(z.strictObject({ number: z.number().int().min(1).max(999_999_999) }))
    .query(({ ctx, input }) => jobByNumber(ctx.deps, ctx.who, input.number)),

  change: allowed('job.edit')
    .input(
      z.strictObject({
        jobId: idSchema,
        version: versionSchema,
        title: nameSchema,
        vehicleId: idSchema.nullable(),
        wishedOn: shopDateSchema.nullable(),
      }),
    )
    .mutation(({ ctx, input }) => changeJob(ctx.deps, ctx.who, input)),

  archive: allowed('job.edit')
    .input(z.strictObject({ jobId: idSchema, archived: z.boolean() }))
    .mutation(({ ctx, input }) => archiveJob(ctx.deps, ctx.who, input)),
});

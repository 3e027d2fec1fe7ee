import { idempotencyKeySchema, idSchema, versionSchema } from '@gusset/contracts/common';
import { newOffcutSchema } from '@gusset/contracts/offcuts';
import { z } from 'zod';
import { allowed, router } from '../trpc/procedures.ts';
import { cutReportsOf, reportCut, undoCut } from './cut-report.service.ts';
import { rackedOffcuts, rackOffcut, throwOffcutAway } from './offcut.service.ts';

export const offcutRouter = router({
  /** No boards named = all of them. */
  list: allowed('catalogue.read')
    .input(z.strictObject({ partIds: z.array(idSchema).max(24) }))
    .query(({ ctx, input }) => rackedOffcuts(ctx.deps, ctx.who, input.partIds)),

  add: allowed('cut.report')
    .input(z.strictObject({ key: idempotencyKeySchema, offcut: newOffcutSchema }))
    .mutation(({ ctx, input }) => rackOffcut(ctx.deps, ctx.who, input)),

  throwAway: allowed('cut.report')
    .input(z.strictObject({ id: idSchema, version: versionSchema }))
    .mutation(({ ctx, input }) => throwOffcutAway(ctx.deps, ctx.who, input)),
});

export const cutReportRouter = router({
  ofJob: allowed('job.read')
    .input(z.strictObject({ jobId: idSchema }))
    .query(({ ctx, input }) => cutReportsOf(ctx.deps, ctx.who, input.jobId)),

  report: allowed('cut.report')
    .input(z.strictObject({ key: idempotencyKeySchema, jobId: idSchema, issueId: idSchema }))
    .mutation(({ ctx, input }) => reportCut(ctx.deps, ctx.who, input)),

  undo: allowed('cut.report')
    .input(z.strictObject({ jobId: idSchema, reportId: idSchema }))
    .mutation(({ ctx, input }) => undoCut(ctx.deps, ctx.who, input)),
});

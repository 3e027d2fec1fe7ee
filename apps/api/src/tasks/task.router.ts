import { idSchema, shortTextSchema, versionSchema } from '@gusset/contracts/common';
import { z } from 'zod';
import { allowed, router } from '../trpc/procedures.ts';
import { finishTask, reopenTask, startTask } from './task.service.ts';

const actShape = { taskId: idSchema, version: versionSchema };

export const taskRouter = router({
  start: allowed('task.work')
    /** `evenThough`: why it is begun although something still holds it. */
    .input(z.strictObject({ ...actShape, evenThough: shortTextSchema.nullable() }))
    .mutation(({ ctx, input }) => startTask(ctx.deps, ctx.who, input)),

  finish: allowed('task.work')
    /** Null = shop minutes since the start. */
    .input(z.strictObject({ ...actShape, workedMinutes: z.number().int().min(0).max(60_000).nullable() }))
    .mutation(({ ctx, input }) => finishTask(ctx.deps, ctx.who, input)),

  reopen: allowed('task.work')
    .input(z.strictObject(actShape))
    .mutation(({ ctx, input }) => reopenTask(ctx.deps, ctx.who, input)),
});

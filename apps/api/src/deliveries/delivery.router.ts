import { idSchema, shopDateSchema, versionSchema } from '@gusset/contracts/common';
import { z } from 'zod';
import { allowed, router } from '../trpc/procedures.ts';
import { deliveriesOf, setDelivery } from './delivery.service.ts';

export const deliveryRouter = router({
  ofJob: allowed('job.read')
    .input(z.strictObject({ jobId: idSchema }))
    .query(({ ctx, input }) => deliveriesOf(ctx.deps, ctx.who, input.jobId)),

  set: allowed('delivery.edit')
    .input(
      z.strictObject({
        jobId: idSchema,
        lineKey: z.string().min(1).max(60),
        version: versionSchema,
        expectedOn: shopDateSchema.nullable(),
        received: z.boolean(),
      }),
    )
    .mutation(({ ctx, input }) => setDelivery(ctx.deps, ctx.who, input)),
});

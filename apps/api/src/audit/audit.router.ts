import { pageSchema, shortTextSchema } from '@gusset/contracts/common';
import { z } from 'zod';
import { allowed, router } from '../trpc/procedures.ts';
import { auditList } from './audit.service.ts';

export const auditRouter = router({
  list: allowed('record.read')
    .input(
      z.strictObject({
        limit: pageSchema.shape.limit,
        beforeSeq: z.number().int().min(1).max(2_000_000_000).nullable().default(null),
        subject: z.string().max(60).nullable().default(null),
        subjectId: z.string().max(60).nullable().default(null),
        search: shortTextSchema.default(''),
      }),
    )
    .query(({ ctx, input }) => auditList(ctx.deps, ctx.who, input)),
});

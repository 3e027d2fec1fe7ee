import { pageSchema } from '@gusset/contracts/common';
import { z } from 'zod';
import { allowed, router } from '../trpc/procedures.ts';
import { searchEverything } from './search.service.ts';

export const searchRouter = router({
  everything: allowed('job.read')
    .input(z.strictObject({ text: pageSchema.shape.search }))
    .query(({ ctx, input }) => searchEverything(ctx.deps, ctx.who, input.text)),
});

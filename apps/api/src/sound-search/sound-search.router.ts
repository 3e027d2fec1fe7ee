import { driverSearchInputSchema } from '@gusset/contracts/acoustics';
import { allowed, router } from '../trpc/procedures.ts';
import { searchCatalogue } from './sound-search.service.ts';

export const soundSearchRouter = router({
  /** One answer in many lines, so it is asked for by a link that streams. Going away stops the search. */
  run: allowed('catalogue.read')
    .input(driverSearchInputSchema)
    .mutation(({ ctx, input, signal }) => searchCatalogue(ctx.deps, ctx.who, input, signal)),
});

import { allowed, router } from '../trpc/procedures.ts';
import { makeFeed, myFeed, revokeFeed } from './calendar.service.ts';

/** Everybody keeps their own feed and nobody else's. */
export const calendarRouter = router({
  mine: allowed('job.read').query(({ ctx }) => myFeed(ctx.deps, ctx.who)),
  make: allowed('job.read').mutation(({ ctx }) => makeFeed(ctx.deps, ctx.who)),
  revoke: allowed('job.read').mutation(({ ctx }) => revokeFeed(ctx.deps, ctx.who)),
});

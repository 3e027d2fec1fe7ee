// A job's quotes for the shop, and the customer's own way to one of them.
import { idempotencyKeySchema, idSchema, notesSchema } from '@gusset/contracts/common';
import {
  approveQuoteSchema,
  askAboutQuoteSchema,
  declineQuoteSchema,
  sendQuoteSchema,
} from '@gusset/contracts/quote';
import { z } from 'zod';
import type { Context } from '../trpc/context.ts';
import { allowed, anyone, router } from '../trpc/procedures.ts';
import {
  approveQuote,
  askAboutQuote,
  customerPage,
  declineQuote,
  knowsLink,
  noteSeen,
  type Visit,
} from './customer-quote.service.ts';
import {
  answerCustomer,
  makeQuote,
  quoteChanges,
  quotes,
  readQuote,
  sendQuote,
  withdrawLinks,
} from './quote.service.ts';

const at = z.strictObject({ quoteId: idSchema });

export const quoteRouter = router({
  list: allowed('money.read')
    .input(z.strictObject({ jobId: idSchema }))
    .query(({ ctx, input }) => quotes(ctx.deps, ctx.who, input.jobId)),

  read: allowed('money.read')
    .input(at)
    .query(({ ctx, input }) => readQuote(ctx.deps, ctx.who, input.quoteId)),

  changes: allowed('money.read')
    .input(at)
    .query(({ ctx, input }) => quoteChanges(ctx.deps, ctx.who, input.quoteId)),

  make: allowed('quote.send')
    .input(z.strictObject({ key: idempotencyKeySchema, jobId: idSchema }))
    .mutation(({ ctx, input }) => makeQuote(ctx.deps, ctx.who, input)),

  send: allowed('quote.send')
    .input(sendQuoteSchema)
    .mutation(({ ctx, input }) => sendQuote(ctx.deps, ctx.who, input)),

  withdrawLink: allowed('quote.send')
    .input(at)
    .mutation(({ ctx, input }) => withdrawLinks(ctx.deps, ctx.who, input.quoteId)),

  answer: allowed('quote.send')
    .input(
      z.strictObject({
        key: idempotencyKeySchema,
        quoteId: idSchema,
        text: notesSchema.pipe(z.string().min(1, 'Write an answer.')),
      }),
    )
    .mutation(({ ctx, input }) => answerCustomer(ctx.deps, ctx.who, input)),
});

const visitOf = (ctx: Context): Visit => ({
  token: ctx.quoteToken,
  address: ctx.address,
  requestId: ctx.requestId,
});

/** Nobody is signed in here: the secret in the cookie opens one quote. */
export const customerQuoteRouter = router({
  known: anyone
    .input(z.strictObject({ token: z.string().min(1).max(200) }))
    .query(({ ctx, input }) => knowsLink(ctx.deps, { ...visitOf(ctx), token: input.token })),

  read: anyone.query(({ ctx }) => customerPage(ctx.deps, visitOf(ctx))),

  seen: anyone.mutation(({ ctx }) => noteSeen(ctx.deps, visitOf(ctx))),

  approve: anyone
    .input(approveQuoteSchema)
    .mutation(({ ctx, input }) => approveQuote(ctx.deps, visitOf(ctx), input)),

  decline: anyone
    .input(declineQuoteSchema)
    .mutation(({ ctx, input }) => declineQuote(ctx.deps, visitOf(ctx), input)),

  ask: anyone
    .input(askAboutQuoteSchema)
    .mutation(({ ctx, input }) => askAboutQuote(ctx.deps, visitOf(ctx), input)),
});

import { idSchema } from '@gusset/contracts/common';
import type { QuoteSnapshot } from '@gusset/contracts/quote';
import type { FastifyPluginAsync, FastifyReply } from 'fastify';
import { z } from 'zod';
import type { Deps } from '../deps.ts';
import { actorWith, answering } from '../files/file.routes.ts';
import { customerSnapshot } from '../quotes/customer-quote.service.ts';
import { readQuote } from '../quotes/quote.service.ts';
import { QUOTE_COOKIE } from '../quotes/quote-link.ts';
import { quotePdf } from './quote-paper.ts';

const atSchema = z.object({ quoteId: idSchema });

/** `GET /api/papers/quote/<quote>` for the shop, `GET /api/papers/quote` for whoever holds the quote's link. */
export const quotePaperRoutes: FastifyPluginAsync<{ readonly deps: Deps }> = async (app, { deps }) => {
  app.get('/api/papers/quote/:quoteId', (request, reply) =>
    answering(deps, request, reply, async () => {
      const actor = await actorWith(deps, request, 'money.read');
      const { quoteId } = atSchema.parse(request.params);
      return sendPdf(reply, await readQuote(deps, actor, quoteId));
    }),
  );

  app.get('/api/papers/quote', (request, reply) =>
    answering(deps, request, reply, async () => {
      const visit = {
        token: request.cookies[QUOTE_COOKIE] ?? null,
        address: request.ip,
        requestId: request.id,
      };
      return sendPdf(reply, await customerSnapshot(deps, visit));
    }),
  );
};

async function sendPdf(reply: FastifyReply, snapshot: QuoteSnapshot) {
  const pdf = await quotePdf(snapshot);
  return reply
    .header('content-type', 'application/pdf')
    .header('x-content-type-options', 'nosniff')
    .header('x-robots-tag', 'noindex')
    .header(
      'content-disposition',
      `inline; filename="quote-${snapshot.job.number}-version-${snapshot.version}.pdf"`,
    )
    .send(Buffer.from(pdf));
}

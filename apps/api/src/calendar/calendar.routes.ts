import type { FastifyPluginAsync } from 'fastify';
import { z } from 'zod';
import type { Deps } from '../deps.ts';
import { notFound } from '../errors.ts';
import { answering } from '../files/file.routes.ts';
import { noteMiss, refuseGuesser } from '../quotes/guess-limit.ts';
import { feedOf } from './calendar-feed.ts';
import { presentedFeed } from './presented-feed.ts';

const atSchema = z.object({ file: z.string().max(200) });
const ENDING = '.ics';

/** `GET /api/calendar/<secret>.ics`: somebody's planned work and leave, for the calendar on their phone. */
export const calendarRoutes: FastifyPluginAsync<{ readonly deps: Deps }> = async (app, { deps }) => {
  app.get('/api/calendar/:file', (request, reply) =>
    answering(deps, request, reply, async () => {
      const { file } = atSchema.parse(request.params);
      await refuseGuesser(deps, request.ip);
      const feed = file.endsWith(ENDING) ? await presentedFeed(deps, file.slice(0, -ENDING.length)) : null;
      const text = feed === null ? null : await feedOf(deps, feed);
      if (text === null) {
        await noteMiss(deps, request.ip);
        throw notFound('calendar');
      }
      return reply
        .header('content-type', 'text/calendar; charset=utf-8')
        .header('content-disposition', 'inline; filename="bays.ics"')
        .header('x-robots-tag', 'noindex')
        .header('x-content-type-options', 'nosniff')
        .send(text);
    }),
  );
};

import type { FastifyPluginAsync } from 'fastify';
import type { Deps } from '../deps.ts';

/** `/livez`: this process turns over. `/readyz`: it can serve (database answers, not shutting down). */
export const healthRoutes: FastifyPluginAsync<{ readonly deps: Deps }> = async (app, { deps }) => {
  let closing = false;
  app.addHook('preClose', async () => {
    closing = true;
  });
  app.get('/livez', async () => ({ live: true }));
  app.get('/readyz', async (_request, reply) => {
    const ready = !closing && (await deps.doors.answers());
    return reply.code(ready ? 200 : 503).send({ ready });
  });
};

import { fromNodeHeaders } from 'better-auth/node';
import type { FastifyPluginAsync } from 'fastify';
import type { Deps } from '../deps.ts';

/** Everything under /api/auth is the auth library's own. The caller's address is told by us, never by the caller. */
export const authRoutes: FastifyPluginAsync<{ readonly deps: Deps }> = async (app, { deps }) => {
  app.route({
    method: ['GET', 'POST'],
    url: '/api/auth/*',
    async handler(request, reply) {
      const headers = fromNodeHeaders(request.headers);
      headers.set('x-gusset-client-address', request.ip);
      headers.delete('content-length');
      const url = new URL(request.url, deps.env.PUBLIC_URL);
      const body = request.method === 'POST' ? JSON.stringify(request.body ?? {}) : null;
      const answer = await deps.auth.handler(new Request(url, { method: request.method, headers, body }));
      reply.code(answer.status);
      for (const [name, value] of answer.headers) {
        if (name !== 'set-cookie') reply.header(name, value);
      }
      reply.header('set-cookie', answer.headers.getSetCookie());
      return reply.send(answer.body === null ? '' : await answer.text());
    },
  });
};

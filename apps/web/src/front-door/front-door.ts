import { randomBytes } from 'node:crypto';
import { createServer as createHttpServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { createServer as createHttpsServer } from 'node:https';
import fastify, { type FastifyInstance } from 'fastify';
import type { ApiOrigins } from './api-origins.ts';
import { apiProxy } from './api-proxy.ts';
import { contentSecurityPolicy, STANDING_HEADERS, STRICT_TRANSPORT } from './security-headers.ts';
import { compressedFiles, serveCompressed } from './static-files.ts';

const NONCE_BYTES = 16;

export type FrontDoorDeps = {
  readonly origins: ApiOrigins;
  readonly servePage: (request: IncomingMessage, response: ServerResponse) => Promise<void>;
  readonly tls: { readonly cert: string | Buffer; readonly key: string | Buffer } | null;
  /** True when browsers trust the certificate, so the promise to stay on HTTPS may be made. */
  readonly trustedTls: boolean;
  readonly trustProxy: boolean;
  /** `.next/static`: what the build has compressed there is sent as it is. */
  readonly staticFolder: string;
  readonly logger: boolean | { readonly level: string };
};

/** One server for pages and API, so the browser sees one origin. */
export async function buildFrontDoor(deps: FrontDoorDeps): Promise<FastifyInstance> {
  const { tls } = deps;
  const door = fastify({
    logger: deps.logger,
    trustProxy: deps.trustProxy,
    serverFactory: (handler) => (tls ? createHttpsServer({ ...tls }, handler) : createHttpServer(handler)),
  });

  serveCompressed(door, compressedFiles(deps.staticFolder));

  door.get('/livez', async (_request, reply) =>
    reply.header('cache-control', 'no-store').send({ live: true }),
  );

  await door.register(async (scope) => {
    await apiProxy(scope, { origins: deps.origins });
  });

  await door.register(async (pages) => {
    // Next reads the body itself.
    pages.removeAllContentTypeParsers();
    pages.addContentTypeParser('*', (_request, _payload, done) => done(null));
    pages.all('/*', async (request, reply) => {
      const secure = tls !== null || request.protocol === 'https';
      const nonce = randomBytes(NONCE_BYTES).toString('base64');
      const policy = contentSecurityPolicy({ nonce, secure });
      // These replace whatever a client sent under the same names.
      request.raw.headers['content-security-policy'] = policy;
      request.raw.headers['x-nonce'] = nonce;
      request.raw.headers['x-gusset-path'] = request.url;
      request.raw.headers['x-forwarded-for'] = request.ip;
      request.raw.headers['x-forwarded-proto'] = request.protocol;
      delete request.raw.headers['content-security-policy-report-only'];

      reply.hijack();
      reply.raw.setHeader('content-security-policy', policy);
      for (const [name, value] of Object.entries(STANDING_HEADERS)) reply.raw.setHeader(name, value);
      if (deps.trustedTls) reply.raw.setHeader('strict-transport-security', STRICT_TRANSPORT);
      await deps.servePage(request.raw, reply.raw);
    });
  });

  return door;
}

// Builds the HTTP server from its parts; `server.ts` listens. Tests call `app.inject`.
import { randomUUID } from 'node:crypto';
import cookie from '@fastify/cookie';
import helmet from '@fastify/helmet';
import multipart from '@fastify/multipart';
import rateLimit from '@fastify/rate-limit';
import { type FastifyTRPCPluginOptions, fastifyTRPCPlugin } from '@trpc/server/adapters/fastify';
import { type FastifyBaseLogger, type FastifyInstance, fastify, LogController } from 'fastify';
import { calendarRoutes } from './calendar/calendar.routes.ts';
import type { Deps } from './deps.ts';
import { mockUpRoutes } from './dry-fit/mock-up.routes.ts';
import { fileRoutes } from './files/file.routes.ts';
import { liveRoutes } from './live/live.routes.ts';
import { cutSheetRoutes } from './papers/cut-sheet.routes.ts';
import { quotePaperRoutes } from './papers/quote-paper.routes.ts';
import { soundSheetRoutes } from './papers/sound-sheet.routes.ts';
import { authRoutes } from './plugins/auth-routes.ts';
import { healthRoutes } from './plugins/health-routes.ts';
import { comesFromOwnPage, ownOrigins } from './plugins/own-origin.ts';
import { surveyPaperRoutes } from './surveys/survey-paper.routes.ts';
import { type AppRouter, appRouter } from './trpc/app-router.ts';
import { createContext } from './trpc/context.ts';

const MAX_BODY_BYTES = 1_048_576;
const MAX_BATCH = 10;
const TIMES_OUT_MS = 30_000;

/** `limitRate: false` is for tests and benches, which ask faster than any person. */
export async function buildApp(
  deps: Deps,
  options: { readonly limitRate?: boolean } = {},
): Promise<FastifyInstance> {
  const loggerInstance: FastifyBaseLogger = deps.log;
  const app = fastify({
    loggerInstance,
    logController: new LogController({ disableRequestLogging: true }),
    trustProxy: (_address, hop) => hop < deps.env.TRUST_PROXY_HOPS,
    bodyLimit: MAX_BODY_BYTES,
    requestTimeout: TIMES_OUT_MS,
    http: { requestTimeout: TIMES_OUT_MS, headersTimeout: 8_000, connectionsCheckingInterval: 1_000 },
    routerOptions: { maxParamLength: 2_000 },
    genReqId: () => randomUUID(),
    return503OnClosing: true,
  });

  await app.register(helmet, {
    contentSecurityPolicy: {
      directives: { defaultSrc: ["'none'"], frameAncestors: ["'none'"], sandbox: [] },
    },
    strictTransportSecurity: { maxAge: 31_536_000, includeSubDomains: true },
    referrerPolicy: { policy: 'no-referrer' },
  });
  await app.register(cookie);
  await app.register(multipart, { limits: { fileSize: 25 * 1_048_576, files: 1, fields: 10, parts: 12 } });
  await app.register(rateLimit, {
    global: options.limitRate ?? true,
    max: 1_200,
    timeWindow: '1 minute',
    keyGenerator: (request) => request.ip,
  });

  app.addHook('onRequest', async (request, reply) => {
    reply.header('x-request-id', request.id).header('cache-control', 'no-store');
    // An answer that comes line by line: whatever stands between must neither compress it nor wait for its end.
    if (request.headers['trpc-accept'] === 'application/jsonl')
      reply.header('cache-control', 'no-store, no-transform').header('x-accel-buffering', 'no');
    const changes = request.method !== 'GET' && request.method !== 'HEAD';
    const own = ownOrigins(request.headers, deps.env.PUBLIC_URL, deps.env.TRUST_PROXY_HOPS > 0);
    if (changes && !comesFromOwnPage(request.headers, own)) {
      return reply.code(403).send({ message: 'This request did not come from Gusset’s own pages.' });
    }
  });
  app.addHook('onResponse', async (request, reply) => {
    deps.log.debug(
      {
        requestId: request.id,
        method: request.method,
        route: request.routeOptions.url,
        status: reply.statusCode,
        ms: Math.round(reply.elapsedTime),
      },
      'answered',
    );
  });
  app.setErrorHandler((error, request, reply) => {
    const status = statusOf(error);
    if (status >= 500) deps.log.error({ requestId: request.id, err: error }, 'request failed');
    const message = status >= 500 ? 'Something went wrong on our side.' : 'The request was not accepted.';
    return reply.code(status).send({ message, requestId: request.id });
  });
  app.setNotFoundHandler((request, reply) =>
    reply.code(404).send({ message: 'There is nothing here.', requestId: request.id }),
  );

  await app.register(healthRoutes, { deps });
  await app.register(authRoutes, { deps });
  await app.register(fileRoutes, { deps });
  await app.register(surveyPaperRoutes, { deps });
  await app.register(cutSheetRoutes, { deps });
  await app.register(mockUpRoutes, { deps });
  await app.register(soundSheetRoutes, { deps });
  await app.register(quotePaperRoutes, { deps });
  await app.register(calendarRoutes, { deps });
  await app.register(liveRoutes, { deps });
  await app.register(fastifyTRPCPlugin, {
    prefix: '/api/trpc',
    trpcOptions: {
      router: appRouter,
      maxBatchSize: MAX_BATCH,
      createContext: ({ req, res }) =>
        createContext(deps, {
          headers: req.headers,
          cookies: req.cookies,
          requestId: req.id,
          address: req.ip,
          setCookie: (name, value) => {
            res.setCookie(name, value, {
              path: '/',
              secure: true,
              httpOnly: true,
              sameSite: 'lax',
              maxAge: 31_536_000,
            });
          },
        }),
    } satisfies FastifyTRPCPluginOptions<AppRouter>['trpcOptions'],
  });
  return app;
}

function statusOf(error: unknown): number {
  const status =
    typeof error === 'object' && error !== null && 'statusCode' in error ? error.statusCode : 500;
  return typeof status === 'number' && status >= 400 && status < 600 ? status : 500;
}

import { Readable } from 'node:stream';
import httpProxy from '@fastify/http-proxy';
import type { FastifyInstance } from 'fastify';
import { type ApiOrigins, connectionCode, mayAskAnother } from './api-origins.ts';

/** Bodies up to here are kept, so that a refused connection can be tried on another API process. */
const REPLAYABLE_BYTES = 1_048_576;
/** The largest JSON the door takes at all; photos and files are not JSON and stream through. */
const LARGEST_JSON_BYTES = 8_388_608;
const ANSWER_WITHIN_MS = 120_000;

type Attempt = { origin: string; tries: number; body: Buffer | null };

const UNAVAILABLE = {
  code: 'SERVICE_RESTING',
  message: "The shop's server is starting or busy. Nothing was lost; try again in a moment.",
};

/** Hands `/api/*` to the API processes in turn, and on to the next when one refuses the connection. */
export async function apiProxy(door: FastifyInstance, { origins }: { origins: ApiOrigins }): Promise<void> {
  const attempts = new WeakMap<object, Attempt>();
  const attemptOf = (rawRequest: object): Attempt => {
    const known = attempts.get(rawRequest);
    if (known) return known;
    const fresh: Attempt = { origin: origins.next(), tries: 1, body: null };
    attempts.set(rawRequest, fresh);
    return fresh;
  };

  door.addContentTypeParser(
    'application/json',
    { parseAs: 'buffer', bodyLimit: LARGEST_JSON_BYTES },
    (request, body: Buffer, done) => {
      if (body.length <= REPLAYABLE_BYTES) attemptOf(request.raw).body = body;
      done(null, Readable.from([body], { objectMode: false }));
    },
  );
  door.addContentTypeParser('*', (_request, payload, done) => done(null, payload));

  const hooks: NonNullable<Parameters<typeof httpProxy>[1]['replyOptions']> = {
    getUpstream: (request) => attemptOf(request.raw).origin,
    rewriteRequestHeaders: (request, headers) => ({
      ...headers,
      'x-forwarded-for': request.ip,
      'x-forwarded-proto': request.protocol,
      'x-forwarded-host': request.host,
    }),
    onError: (reply, { error }) => {
      const { request } = reply;
      const attempt = attemptOf(request.raw);
      const code = connectionCode(error);
      if (code !== null) origins.rest(attempt.origin);
      const replayable = attempt.body !== null || request.body === undefined;
      if (attempt.tries < origins.count && replayable && mayAskAnother(request.method, code)) {
        attempt.tries += 1;
        attempt.origin = origins.next();
        const body = attempt.body ? { body: attempt.body, contentType: 'application/json' } : {};
        reply.from(request.url, { ...hooks, ...body });
        return;
      }
      reply.code(503).header('retry-after', '2').send(UNAVAILABLE);
    },
  };

  await door.register(httpProxy, {
    upstream: '',
    prefix: '/api',
    rewritePrefix: '/api',
    // With a preValidation of its own the proxy leaves the two parsers above in place.
    preValidation: async () => undefined,
    // Live updates are one long answer: its pauses have no limit, only the wait for its beginning.
    undici: { bodyTimeout: 0, headersTimeout: ANSWER_WITHIN_MS },
    replyOptions: hooks,
  });
}

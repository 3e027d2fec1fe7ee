// `/api/live`: a long answer of server-sent events that tells a signed-in person's screens what has changed in their
// shop, whichever API process it went through.
import { PassThrough } from 'node:stream';
import { type Listening, listen } from '@gusset/database';
import type { FastifyPluginAsync } from 'fastify';
import type { Deps } from '../deps.ts';
import { ShopError } from '../errors.ts';
import { answering } from '../files/file.routes.ts';
import { createContext } from '../trpc/context.ts';
import { heldSessions, presentMembers } from './live.queries.ts';
import { type LiveHub, makeLiveHub } from './live-hub.ts';
import { LIVE_CHANNEL, readLiveMessage } from './live-message.ts';

const BEAT_EVERY_MS = 20_000;
/** A sign-in that has ended is heard of at the latest after this. */
const CHECK_EVERY_MS = 2_000;
/** The browser's own wait before it connects again. */
const RETRY_MS = 2_000;
/** Somebody who takes nothing off the wire is cut; their screen asks for everything when it is back. */
const MOST_UNREAD_BYTES = 65_536;

export const liveRoutes: FastifyPluginAsync<{ readonly deps: Deps }> = async (app, { deps }) => {
  const hub = makeLiveHub();
  let listening: Listening | null = null;
  const beating = setInterval(hub.beat, BEAT_EVERY_MS).unref();
  const checking = setInterval(() => void checkSessions(deps, hub), CHECK_EVERY_MS).unref();

  app.addHook('onReady', async () => {
    listening = await listen({
      url: deps.env.DATABASE_URL,
      channel: LIVE_CHANNEL,
      onMessage: (payload) => void hear(deps, hub, payload),
      onReturn: hub.tellMissed,
      onError: (error) => deps.log.warn({ err: error }, 'live updates: no word from the database'),
    });
  });
  app.addHook('preClose', async () => {
    clearInterval(beating);
    clearInterval(checking);
    hub.endAll(); // the server would wait for them
    await listening?.close();
  });

  app.get('/api/live', (request, reply) =>
    answering(deps, request, reply, async () => {
      const context = await createContext(deps, {
        headers: request.headers,
        cookies: request.cookies,
        requestId: request.id,
        address: request.ip,
        setCookie: () => undefined,
      });
      if (context.signedIn === null) throw new ShopError('SIGN_IN_FIRST', 'Sign in first.');
      const actor = await context.actor();
      if (actor === null) throw new ShopError('NOT_ALLOWED', 'You do not belong to a shop yet.');
      const stream = new PassThrough();
      const leave = hub.join({
        shopId: actor.shopId,
        userId: actor.userId,
        sessionId: context.signedIn.sessionId,
        send: (text) => {
          if (stream.writableLength > MOST_UNREAD_BYTES) stream.destroy();
          else if (!stream.destroyed) stream.write(text);
        },
        end: () => stream.end(),
      });
      if (leave === null) throw new ShopError('TOO_MANY', 'You have too many pages open at once.');
      stream.once('close', leave);
      reply.raw.once('close', () => stream.destroy());
      stream.write(`retry: ${RETRY_MS}\n\n`); // sends the headers too
      return reply
        .header('content-type', 'text/event-stream')
        .header('cache-control', 'no-store, no-transform')
        .header('x-accel-buffering', 'no')
        .send(stream);
    }),
  );
};

async function hear(deps: Deps, hub: LiveHub, payload: string): Promise<void> {
  const message = readLiveMessage(payload);
  if (message === null) return;
  if (message.noun === 'member') await checkMembers(deps, hub, message.shopId);
  hub.tell(message);
}

async function checkMembers(deps: Deps, hub: LiveHub, shopId: string): Promise<void> {
  const userIds = hub.streams().flatMap((stream) => (stream.shopId === shopId ? [stream.userId] : []));
  if (userIds.length === 0) return;
  const members = await unlessUnreachable(deps, presentMembers(deps, shopId, userIds));
  hub.endUnlessMember(shopId, members);
}

async function checkSessions(deps: Deps, hub: LiveHub): Promise<void> {
  const sessionIds = hub.streams().map(({ sessionId }) => sessionId);
  if (sessionIds.length === 0) return;
  hub.endUnlessSignedIn(await unlessUnreachable(deps, heldSessions(deps, sessionIds)));
}

/** Who cannot be checked does not go on listening: nobody holds. Their browsers connect again by themselves. */
async function unlessUnreachable(
  { log }: Deps,
  asked: Promise<ReadonlySet<string>>,
): Promise<ReadonlySet<string>> {
  try {
    return await asked;
  } catch (error) {
    log.warn({ err: error }, 'live updates: could not check who listens');
    return new Set();
  }
}

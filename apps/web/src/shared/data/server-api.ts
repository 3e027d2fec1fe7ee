// Server components only: the API called from the server that draws the page, as the person who asked for it.

import { createTRPCClient, httpBatchLink } from '@trpc/client';
import { headers } from 'next/headers';
import type { AppRouter } from './api-types.ts';

const apiOrigins = (): readonly string[] => (process.env.API_ORIGINS ?? 'http://127.0.0.1:4310').split(',');

/** Waits between rounds, ms: an API process that starts anew is back within a few seconds. */
const ROUNDS_MS = [0, 400, 1_200, 2_500];

/** Asks the API processes in order until one takes the connection. Questions only, so asking twice is safe. */
const fetchFromAny: typeof fetch = async (input, init) => {
  const path = new URL(input instanceof Request ? input.url : input);
  let lastError: unknown = null;
  for (const waitMs of ROUNDS_MS) {
    if (waitMs > 0) await new Promise((resolve) => setTimeout(resolve, waitMs));
    for (const origin of apiOrigins()) {
      try {
        return await fetch(new URL(`${path.pathname}${path.search}`, origin), { ...init, cache: 'no-store' });
      } catch (error) {
        lastError = error;
      }
    }
  }
  throw lastError;
};

/** `await (await serverApi()).shop.current.query()` */
export async function serverApi() {
  const incoming = await headers();
  const forwarded = {
    cookie: incoming.get('cookie') ?? '',
    'x-forwarded-for': incoming.get('x-forwarded-for') ?? '',
    'x-forwarded-proto': incoming.get('x-forwarded-proto') ?? 'http',
  };
  return createTRPCClient<AppRouter>({
    links: [httpBatchLink({ url: `${apiOrigins()[0]}/api/trpc`, headers: forwarded, fetch: fetchFromAny })],
  });
}

'use client';

import { createTRPCClient, httpBatchLink, httpLink, splitLink } from '@trpc/client';
import { createTRPCContext } from '@trpc/tanstack-react-query';
import type { AppRouter } from './api-types.ts';

const API_PATH = '/api/trpc';
/** As many calls as the API takes in one request. */
const MAX_BATCH = 10;

/** `useTRPC()` in a component: `useQuery(trpc.job.list.queryOptions(...))`. */
export const { TRPCProvider, useTRPC, useTRPCClient } = createTRPCContext<AppRouter>();

/** The browser's way to the API: same origin, session cookie. A call with `context: { alone: true }` isn't batched. */
export function createApiClient() {
  return createTRPCClient<AppRouter>({
    links: [
      splitLink({
        condition: (operation) => operation.context.alone === true,
        true: httpLink({ url: API_PATH }),
        false: httpBatchLink({ url: API_PATH, maxItems: MAX_BATCH }),
      }),
    ],
  });
}

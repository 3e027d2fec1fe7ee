import { QueryClient } from '@tanstack/react-query';
import { isPassing, shownError } from './shop-error.ts';

/** Fresh enough that going from sheet to sheet asks nothing twice. */
const FRESH_MS = 30_000;
const TRIES = 3;

/** Refusals are answers and aren't asked again; a server that was not reached is. */
export function createQueryClient(): QueryClient {
  return new QueryClient({
    defaultOptions: {
      queries: {
        staleTime: FRESH_MS,
        retry: (failures, error) => failures < TRIES && isPassing(shownError(error)),
      },
      mutations: { retry: false },
    },
  });
}

'use client';

import { useCallback } from 'react';
import { useTRPCClient } from '../data/api-client.ts';
import type { SearchSource } from './search-dialog.tsx';
import { searchGroups } from './search-groups.ts';

/** The shop's records for the search dialog: asked anew for each text, given up when the text moved on. */
export function useSearchSource(): SearchSource {
  const client = useTRPCClient();
  return useCallback(
    async (text, signal) =>
      searchGroups(await client.search.everything.query({ text }, { signal, context: { alone: true } })),
    [client],
  );
}

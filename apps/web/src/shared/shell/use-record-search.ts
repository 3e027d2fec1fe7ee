'use client';

import { useCallback } from 'react';
import { useTRPCClient } from '../data/api-client.ts';
import type { SearchSource } from './search-dialog.tsx';
import { searchGroups } from './search-groups.ts';

/** Search in the shop's records. Each question goes alone, so that one that is out of date can be dropped. */
export function useRecordSearch(): SearchSource {
  const client = useTRPCClient();
  return useCallback<SearchSource>(
    async (text, signal) =>
      searchGroups(await client.search.everything.query({ text }, { signal, context: { alone: true } })),
    [client],
  );
}

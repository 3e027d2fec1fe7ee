'use client';

import { liveQuery } from 'dexie';
import { useEffect, useState } from 'react';
import { countDrafts, type DraftKey } from './drafts.ts';

/** How many documents of this person still wait on this device; 0 where the device can't tell. */
export function useUnsent({ userId, shopId }: Omit<DraftKey, 'document'>): number {
  const [count, setCount] = useState(0);
  useEffect(() => {
    const watching = liveQuery(() => countDrafts({ userId, shopId })).subscribe({
      next: setCount,
      error: () => setCount(0),
    });
    return () => watching.unsubscribe();
  }, [userId, shopId]);
  return count;
}

'use client';

import { useEffect, useState } from 'react';
import { countDrafts, type DraftKey } from './drafts.ts';

/** How many documents of this person still wait on this device; 0 where the device can't tell. */
export function useUnsent({ userId, shopId }: Omit<DraftKey, 'document'>): number {
  const [count, setCount] = useState(0);
  useEffect(() => {
    let stop = (): void => undefined;
    let isGone = false;
    void import('dexie').then(({ liveQuery }) => {
      if (isGone) return;
      const watching = liveQuery(() => countDrafts({ userId, shopId })).subscribe({
        next: setCount,
        error: () => setCount(0),
      });
      stop = () => watching.unsubscribe();
    });
    return () => {
      isGone = true;
      stop();
    };
  }, [userId, shopId]);
  return count;
}

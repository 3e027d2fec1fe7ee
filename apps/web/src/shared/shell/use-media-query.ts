'use client';

import { useCallback, useSyncExternalStore } from 'react';

/** False on the server and until the browser has answered. */
export function useMediaQuery(query: string): boolean {
  const subscribe = useCallback(
    (changed: () => void) => {
      const list = window.matchMedia(query);
      list.addEventListener('change', changed);
      return () => list.removeEventListener('change', changed);
    },
    [query],
  );
  return useSyncExternalStore(
    subscribe,
    () => window.matchMedia(query).matches,
    () => false,
  );
}

/** A finger or a glove rather than a mouse. */
export const COARSE_POINTER = '(pointer: coarse)';
/** Below this the app is one column: cards for tables, a bar at the bottom for the sheet index. */
export const PHONE_WIDTH = '(max-width: 719px)';

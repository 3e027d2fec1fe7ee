'use client';

import { useCallback, useEffect, useRef } from 'react';
import type { LiveNews } from './live-topics.ts';
import { useLiveNews } from './live-updates.ts';

const GATHER_MS = 300;

/**
 * Keeps what a page holds itself (not in a query) in step with the shop: calls `follow` after news that `concerns`
 * it, and after a time without a line. Where `follow` answers 'later' because somebody is in a field, it is called
 * again when the field is left.
 */
export function useFollow(
  concerns: (news: LiveNews) => boolean,
  follow: () => Promise<'done' | 'later'>,
): void {
  const latest = useRef(follow);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const waits = useRef(false);
  useEffect(() => {
    latest.current = follow;
  });
  const soon = useCallback(() => {
    timer.current ??= setTimeout(() => {
      timer.current = undefined;
      void latest.current().then((answer) => {
        waits.current = answer === 'later';
      });
    }, GATHER_MS);
  }, []);
  useLiveNews((news) => {
    if (news === null || concerns(news)) soon();
  });
  useEffect(() => {
    const left = () => {
      if (waits.current) soon();
    };
    document.addEventListener('focusout', left);
    return () => {
      document.removeEventListener('focusout', left);
      clearTimeout(timer.current);
      timer.current = undefined;
    };
  }, [soon]);
}

/** True while somebody is in a field: what stands in it is theirs until they leave it. */
export function isInField(): boolean {
  const element = document.activeElement;
  return element?.matches('input, select, textarea, [contenteditable="true"], [role="spinbutton"]') ?? false;
}

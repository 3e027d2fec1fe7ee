'use client';

import { type QueryClient, useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef } from 'react';
import { type LiveNews, readNews, topicOf, topicsOf } from './live-topics.ts';

const LIVE_PATH = '/api/live';
/** News come in bursts (an issue moves a job, its tasks and the plan): gathered, then asked once. */
const GATHER_MS = 300;
/** The browser connects again by itself after a broken line, not after a refusal: a server that starts anew refuses. */
const FIRST_RETRY_MS = 3_000;
const LONGEST_RETRY_MS = 60_000;

const listeners = new Set<(news: LiveNews | null) => void>();

/**
 * Hears what changes in the shop and asks again for what shows it. Only while the page is in sight: a browser opens
 * six lines to one server at most, and pages in the background would use them up. Whoever has no line still asks
 * again when the page is returned to.
 */
export function useLiveUpdates(): void {
  const queries = useQueryClient();
  useEffect(() => {
    const news = gather(queries);
    let source: EventSource | null = null;
    let retry: ReturnType<typeof setTimeout> | undefined;
    let retryMs = FIRST_RETRY_MS;
    let hasBeenOpen = false;

    const close = () => {
      clearTimeout(retry);
      source?.close();
      source = null;
    };
    const open = () => {
      close();
      if (document.visibilityState === 'hidden') return;
      const opened = new EventSource(LIVE_PATH);
      source = opened;
      opened.onopen = () => {
        if (hasBeenOpen) news.hear(null);
        hasBeenOpen = true;
        retryMs = FIRST_RETRY_MS;
      };
      opened.onmessage = ({ data }) => news.hear(readNews(data));
      opened.addEventListener('missed', () => news.hear(null));
      opened.onerror = () => {
        if (opened.readyState !== EventSource.CLOSED) return;
        retry = setTimeout(open, retryMs);
        retryMs = Math.min(LONGEST_RETRY_MS, 2 * retryMs);
      };
    };

    open();
    document.addEventListener('visibilitychange', open);
    return () => {
      document.removeEventListener('visibilitychange', open);
      close();
      news.stop();
    };
  }, [queries]);
}

/** Calls `onNews` for each change in the shop; with null when some may have been missed. */
export function useLiveNews(onNews: (news: LiveNews | null) => void): void {
  const latest = useRef(onNews);
  useEffect(() => {
    latest.current = onNews;
  });
  useEffect(() => {
    const listener = (news: LiveNews | null) => latest.current(news);
    listeners.add(listener);
    return () => {
      listeners.delete(listener);
    };
  }, []);
}

function gather(queries: QueryClient): {
  readonly hear: (news: LiveNews | null) => void;
  readonly stop: () => void;
} {
  let topics: Set<string> | null = new Set();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const ask = () => {
    const asked = topics;
    topics = new Set();
    timer = undefined;
    void queries.invalidateQueries({
      predicate: ({ queryKey }) => asked === null || asked.has(topicOf(queryKey)),
    });
  };
  return {
    hear(news) {
      const touched = news === null ? null : topicsOf(news);
      if (touched === null) topics = null;
      else for (const topic of touched) topics?.add(topic);
      timer ??= setTimeout(ask, GATHER_MS);
      for (const listener of listeners) listener(news);
    },
    stop: () => clearTimeout(timer),
  };
}

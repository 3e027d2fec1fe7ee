'use client';

import type { DriverSearchInput } from '@gusset/contracts/acoustics';
import { createTRPCClient, httpBatchStreamLink } from '@trpc/client';
import { useEffect, useRef, useState } from 'react';
import type { AppRouter } from '../../../shared/data/api-types.ts';
import { type ShownError, shownError } from '../../../shared/data/shop-error.ts';
import type { SearchAnswer, SearchProgress } from './search-words.ts';

export type SearchState =
  | { readonly kind: 'idle' }
  | { readonly kind: 'running'; readonly progress: SearchProgress | null }
  /** By the person; what was best until then stays in sight. */
  | { readonly kind: 'stopped'; readonly progress: SearchProgress | null }
  | { readonly kind: 'failed'; readonly error: ShownError }
  | { readonly kind: 'done'; readonly asked: DriverSearchInput; readonly answer: SearchAnswer };

export type DriverSearching = {
  readonly state: SearchState;
  start(asked: DriverSearchInput): void;
  /** Ends the work on the server too. */
  stop(): void;
  /** Back to the question. */
  reset(): void;
};

/** This call alone answers in lines, so its link comes with the dialog and not with every page. */
function streamingClient() {
  return createTRPCClient<AppRouter>({ links: [httpBatchStreamLink({ url: '/api/trpc' })] });
}

const IDLE: SearchState = { kind: 'idle' };

export function useDriverSearch(): DriverSearching {
  const [state, setState] = useState<SearchState>(IDLE);
  const running = useRef<AbortController | null>(null);
  useEffect(() => () => running.current?.abort(), []);

  const follow = async (asked: DriverSearchInput, { signal }: AbortController): Promise<void> => {
    try {
      const lines = await streamingClient().soundSearch.run.mutate(asked, { signal });
      for await (const line of lines) {
        if (signal.aborted) return;
        if (line.kind === 'answer') setState({ kind: 'done', asked, answer: line });
        else setState({ kind: 'running', progress: line });
      }
    } catch (error) {
      if (!signal.aborted) setState({ kind: 'failed', error: shownError(error) });
    }
  };

  return {
    state,
    start(asked) {
      running.current?.abort();
      const controller = new AbortController();
      running.current = controller;
      setState({ kind: 'running', progress: null });
      void follow(asked, controller);
    },
    stop() {
      running.current?.abort();
      setState((now) => (now.kind === 'running' ? { kind: 'stopped', progress: now.progress } : now));
    },
    reset() {
      running.current?.abort();
      setState(IDLE);
    },
  };
}

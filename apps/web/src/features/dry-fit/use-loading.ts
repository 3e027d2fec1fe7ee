'use client';

import type { LoadingAnswer } from '@gusset/contracts/dry-fit-sheet';
import type { BoxLoadingRemedy } from '@gusset/sheets';
import { useEffect, useRef, useState } from 'react';
import type { LoadingAsked, LoadingNews } from './loading-protocol.ts';

/** A box that is being dragged is asked about when the hand rests. */
const CALM_MS = 450;
/** What takes no longer needs no progress. */
const SHOW_PROGRESS_AFTER_MS = 1_000;

export type Loading = {
  /** The last answer; stays in sight, dimmed, while the next is worked out. */
  readonly answer: LoadingAnswer | null;
  readonly remedies: readonly BoxLoadingRemedy[];
  readonly refused: { readonly why: string; readonly allowed: string } | null;
  /** True while what is shown is of an earlier box. */
  readonly isStale: boolean;
  /** After a second of work: what is being done; share null while it can't be known. */
  readonly running: { readonly what: string; readonly share: number | null } | null;
  /** Somebody stopped it: what was found stays. */
  readonly isStopped: boolean;
  readonly fault: boolean;
  readonly stop: () => void;
  readonly again: () => void;
};

type Shown = Pick<Loading, 'answer' | 'remedies' | 'refused'> & { readonly of: LoadingAsked | null };
type Phase = 'deciding' | 'measuring' | 'remedies' | 'idle' | 'stopped' | 'fault';

const NOTHING: Shown = { answer: null, remedies: [], refused: null, of: null };

/** Looks for the way in of `asked` (memoize it), again for each new one; null asks nothing. */
export function useLoading(asked: LoadingAsked | null): Loading {
  const worker = useRef<Worker | null>(null);
  const [shown, setShown] = useState<Shown>(NOTHING);
  const [phase, setPhase] = useState<Phase>('idle');
  const [share, setShare] = useState<number | null>(null);
  const [isLong, setIsLong] = useState(false);
  const [round, setRound] = useState(0);

  // biome-ignore lint/correctness/useExhaustiveDependencies: `round` asks the same again.
  useEffect(() => {
    if (asked === null) return;
    let longer: ReturnType<typeof setTimeout> | undefined;
    const end = (next: Phase) => {
      clearTimeout(longer);
      worker.current?.terminate();
      worker.current = null;
      setIsLong(false);
      setPhase(next);
    };
    const take = (news: LoadingNews) => {
      switch (news.kind) {
        case 'decided':
        case 'answer':
          setShown({ answer: news.answer, remedies: [], refused: null, of: asked });
          return setPhase(news.kind === 'decided' ? 'measuring' : 'remedies');
        case 'trying':
          return setShare(news.share);
        case 'remedy':
          return setShown((now) => ({ ...now, remedies: [...now.remedies, news.remedy] }));
        case 'refused':
          setShown({ ...NOTHING, refused: { why: news.why, allowed: news.allowed }, of: asked });
          return end('idle');
        case 'done':
          return end('idle');
      }
    };
    const begin = setTimeout(() => {
      const opened = new Worker(new URL('./loading-worker.ts', import.meta.url), { type: 'module' });
      opened.addEventListener('message', ({ data }: MessageEvent<LoadingNews>) => take(data));
      opened.addEventListener('error', () => end('fault'));
      worker.current = opened;
      setPhase('deciding');
      setShare(null);
      longer = setTimeout(() => setIsLong(true), SHOW_PROGRESS_AFTER_MS);
      opened.postMessage(asked);
    }, CALM_MS);
    return () => {
      clearTimeout(begin);
      end('idle');
    };
  }, [asked, round]);

  const isRunning = phase === 'deciding' || phase === 'measuring' || phase === 'remedies';
  return {
    answer: shown.answer,
    remedies: shown.remedies,
    refused: shown.refused,
    isStale: asked !== null && shown.of !== asked && phase !== 'stopped',
    running:
      isRunning && isLong ? { what: PHASE_WORDS[phase], share: phase === 'remedies' ? share : null } : null,
    isStopped: phase === 'stopped',
    fault: phase === 'fault',
    stop: () => {
      worker.current?.terminate();
      worker.current = null;
      setIsLong(false);
      setPhase('stopped');
    },
    again: () => setRound((now) => now + 1),
  };
}

const PHASE_WORDS = {
  deciding: 'Looking for a way through the opening',
  measuring: 'Measuring by how much',
  remedies: 'Trying what would help',
} as const;

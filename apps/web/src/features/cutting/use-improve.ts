'use client';

import type { CuttingInput } from '@gusset/contracts/cutting-sheet';
import { useEffect, useRef, useState } from 'react';
import type { CuttingJobSheet } from './cutting-types.ts';
import { counted, searchWords } from './cutting-words.ts';
import type { ImproveNews, ImproveQuestion } from './improve-protocol.ts';

const SECONDS = 5;

export type Improve = {
  /** Null = nothing runs. */
  readonly running: { readonly share: number; readonly soFar: string } | null;
  /** What the last run came to. */
  readonly outcome: string | null;
  readonly start: () => void;
  /** Ends the run and keeps the best layout so far. */
  readonly stop: () => void;
};

/** Up to five seconds of looking for a better layout; what is kept is the seed that leads there. */
export function useImprove(sheet: CuttingJobSheet): Improve {
  const worker = useRef<Worker | null>(null);
  const asked = useRef<CuttingInput | null>(null);
  const [news, setNews] = useState<ImproveNews | null>(null);
  const [isRunning, setIsRunning] = useState(false);
  const [outcome, setOutcome] = useState<string | null>(null);
  useEffect(() => () => worker.current?.terminate(), []);

  // The answer comes seconds later: what stands in the fields by then counts, not what stood there at the start.
  const latest = useRef(sheet);
  latest.current = sheet;

  const end = (last: ImproveNews | null, asked: CuttingInput) => {
    worker.current?.terminate();
    worker.current = null;
    setIsRunning(false);
    setNews(null);
    if (last === null) return;
    if (latest.current.input !== asked) {
      setOutcome('The sheet was changed in between, so nothing was taken over. Look again.');
      return;
    }
    setOutcome(`${soFarOf(last, sheet.input.aim)}. ${counted(last.tried, 'layout')} begun anew.`);
    if (last.best.some((score, index) => isNew(score, last.start[index])))
      latest.current.changeNow({ searches: last.best.map(({ search }) => search) });
  };
  const start = () => {
    const { input, data } = sheet;
    const question: ImproveQuestion = {
      input,
      facts: data.facts,
      upstream: data.upstream,
      seconds: SECONDS,
    };
    const opened = new Worker(new URL('./improve-worker.ts', import.meta.url), { type: 'module' });
    opened.addEventListener('message', ({ data: told }: MessageEvent<ImproveNews>) => {
      if (told.isDone) end(told, input);
      else setNews(told);
    });
    worker.current = opened;
    asked.current = input;
    setOutcome(null);
    setIsRunning(true);
    opened.postMessage(question);
  };
  return {
    running: isRunning
      ? { share: news?.share ?? 0, soFar: news === null ? '' : soFarOf(news, sheet.input.aim) }
      : null,
    outcome,
    start,
    stop: () => end(news, asked.current ?? sheet.input),
  };
}

type Score = ImproveNews['best'][number];

/** Structured clone makes new objects, so the figures decide. */
function isNew(one: Score, two: Score | undefined): boolean {
  return two === undefined || one.figures.some((figure, index) => figure !== two.figures[index]);
}

function soFarOf({ start, best }: ImproveNews, aim: CuttingInput['aim']): string {
  return searchWords(
    start.map(({ figures }) => figures),
    best.map(({ figures }) => figures),
    aim,
  );
}

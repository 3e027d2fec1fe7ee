'use client';

import { useEffect, useRef, useState } from 'react';
import type { CuttingJobSheet } from './cutting-types.ts';
import { searchWords } from './cutting-words.ts';
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
  const [news, setNews] = useState<ImproveNews | null>(null);
  const [isRunning, setIsRunning] = useState(false);
  const [outcome, setOutcome] = useState<string | null>(null);
  useEffect(() => () => worker.current?.terminate(), []);

  const end = (last: ImproveNews | null) => {
    worker.current?.terminate();
    worker.current = null;
    setIsRunning(false);
    setNews(null);
    if (last === null) return;
    setOutcome(`${soFarOf(last)}. ${tried(last)}.`);
    if (last.best.some((score, index) => isNew(score, last.start[index])))
      sheet.changeNow({ searches: last.best.map(({ search }) => search) });
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
      if (told.isDone) end(told);
      else setNews(told);
    });
    worker.current = opened;
    setOutcome(null);
    setIsRunning(true);
    opened.postMessage(question);
  };
  return {
    running: isRunning ? { share: news?.share ?? 0, soFar: news === null ? '' : soFarOf(news) } : null,
    outcome,
    start,
    stop: () => end(news),
  };
}

type Score = ImproveNews['best'][number];

/** Structured clone makes new objects, so the figures decide. */
function isNew(one: Score, two: Score | undefined): boolean {
  return two === undefined || one.figures.some((figure, index) => figure !== two.figures[index]);
}

function soFarOf({ start, best }: ImproveNews): string {
  return searchWords(
    start.map(({ figures }) => figures),
    best.map(({ figures }) => figures),
  );
}

function tried(news: ImproveNews): string {
  return `${news.tried} layouts started from scratch`;
}

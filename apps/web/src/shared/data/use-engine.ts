'use client';

import type { SheetOutcome } from '@gusset/sheets';
import { useEffect, useRef, useState } from 'react';
import type { EngineAnswer, EngineRequest } from './engine-protocol.ts';
import { createLatestWins, type LatestWins } from './latest-wins.ts';

/** A computation that runs longer than this is dropped as soon as something newer is asked. */
const DROP_AFTER_MS = 400;

export type EngineResult<Result> = {
  /** The last outcome; stays in sight, dimmed, while the next is worked out. Null before the first. */
  readonly outcome: SheetOutcome<Result> | null;
  /** True while `outcome` is older than what was asked: SheetFrame's `isStale`. */
  readonly isStale: boolean;
  /** A fault in an engine (never a refusal), for a Verdict. */
  readonly fault: string | null;
};

type Bench = { worker: Worker; latest: LatestWins<EngineRequest>; startedAtMs: number };

const startWorker = (onAnswer: (answer: EngineAnswer) => void): Worker => {
  const worker = new Worker(new URL('./engine-worker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', (event: MessageEvent<EngineAnswer>) => onAnswer(event.data));
  return worker;
};

/**
 * Works a sheet out in a worker, again for each new `request` (memoize it); null asks nothing. The newest
 * question wins. `Result` is the result type of the sheet that `request.kind` names.
 */
export function useEngine<Result>(request: EngineRequest | null): EngineResult<Result> {
  const bench = useRef<Bench | null>(null);
  const [shown, setShown] = useState<{
    readonly answer: EngineAnswer | null;
    readonly of: EngineRequest | null;
  }>({
    answer: null,
    of: null,
  });
  const asked = useRef<EngineRequest | null>(null);

  useEffect(() => {
    const onAnswer = (answer: EngineAnswer): void => {
      if (!bench.current?.latest.answered(answer.id)) return;
      // Something newer may be running already; the answer is shown, and stays dimmed until that is done.
      setShown({ answer, of: bench.current.latest.isBusy() ? null : asked.current });
    };
    const latest = createLatestWins<EngineRequest>((question) => {
      if (!bench.current) return;
      bench.current.startedAtMs = performance.now();
      bench.current.worker.postMessage(question);
    });
    const opened: Bench = { worker: startWorker(onAnswer), latest, startedAtMs: 0 };
    bench.current = opened;
    return () => {
      opened.worker.terminate();
      bench.current = null;
    };
  }, []);

  useEffect(() => {
    const at = bench.current;
    if (!at || request === null) return;
    asked.current = request;
    const isSlow = at.latest.isBusy() && performance.now() - at.startedAtMs > DROP_AFTER_MS;
    at.latest.ask(request);
    if (!isSlow) return;
    const { worker } = at;
    worker.terminate();
    at.worker = startWorker((answer) => {
      if (at.latest.answered(answer.id)) setShown({ answer, of: at.latest.isBusy() ? null : asked.current });
    });
    at.latest.stopped();
  }, [request]);

  const { answer } = shown;
  return {
    // Sound because the worker answers with the definition that `request.kind` names.
    outcome: answer && 'outcome' in answer ? (answer.outcome as SheetOutcome<Result>) : null,
    isStale: request !== null && shown.of !== request,
    fault: answer && 'fault' in answer ? answer.fault : null,
  };
}

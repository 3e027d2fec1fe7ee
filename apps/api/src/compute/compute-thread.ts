// Runs in the thread: finds the task in the table, does it, and answers with plain data whatever happens.
import { getHeapStatistics } from 'node:v8';
import { type MessagePort, workerData } from 'node:worker_threads';
import type { ComputeTable } from './compute-task.ts';

export type ThreadRequest = {
  readonly name: string;
  readonly input: unknown;
  readonly seed: number;
  /** Null where nobody listens. */
  readonly progress: MessagePort | null;
};

export type ThreadAnswer = { readonly heapBytes: number } & (
  | { readonly state: 'done'; readonly output: unknown }
  | { readonly state: 'failed'; readonly name: string; readonly message: string; readonly stack: string }
);

/** What a thread is started with: the module whose `computeTasks` it knows. */
export type ThreadSettings = { readonly tasksUrl: string };

const REPORT_EVERY_MS = 50; // twenty a second are smooth; more would only fill the asker's event loop

export async function work({ name, input, seed, progress }: ThreadRequest): Promise<ThreadAnswer> {
  try {
    const { tasksUrl }: ThreadSettings = workerData;
    const { computeTasks }: { computeTasks: ComputeTable } = await import(tasksUrl);
    const entry = computeTasks[name];
    if (entry === undefined) throw new Error(`no computation is called ${name}`);
    // `run` in compute.ts typed the input by this very name; the way across the thread loses it.
    const task = (await entry.load()) as (input: unknown, tools: object) => unknown;
    const output = await task(input, { seed, report: reporter(progress) });
    return { state: 'done', output, heapBytes: getHeapStatistics().used_heap_size };
  } catch (error) {
    const { name: type, message, stack } = error instanceof Error ? error : new Error(String(error));
    const heapBytes = getHeapStatistics().used_heap_size;
    return { state: 'failed', name: type, message, stack: stack ?? '', heapBytes };
  }
}

function reporter(progress: MessagePort | null): (value: unknown) => void {
  if (progress === null) return () => undefined;
  let last = Number.NEGATIVE_INFINITY;
  return (value) => {
    const now = performance.now();
    if (now - last < REPORT_EVERY_MS) return;
    last = now;
    progress.postMessage(value);
  };
}

// Long computations, off the thread that answers requests: with progress, a time budget, and a stop that stops.
import { availableParallelism } from 'node:os';
import { MessageChannel, type MessagePort } from 'node:worker_threads';
import { ShopError } from '../errors.ts';
import type { Log } from '../log.ts';
import type { ComputeLane, ComputeTable, TaskInput, TaskOutput, TaskProgress } from './compute-task.ts';
import type { computeTasks } from './compute-tasks.ts';
import type { ThreadAnswer } from './compute-thread.ts';
import { type Lane, makeLane } from './lane.ts';

/** The program's own table; tests bring another. */
export type Compute = ComputeOf<typeof computeTasks>;

export type ComputeOf<T extends ComputeTable> = {
  /**
   * Does a task of the table in a thread. Same input and seed, same answer.
   *
   * Throws ShopError BUSY when its budget is used up, the signal stopped it, or too many wait already; an ordinary
   * Error, which people see as "something went wrong on our side", when the task itself threw.
   */
  run<N extends keyof T & string>(
    name: N,
    input: TaskInput<T, N>,
    options?: RunOptions<TaskProgress<T, N>>,
  ): Promise<TaskOutput<T, N>>;
  /** Ends all threads; what still runs is stopped. */
  close(): Promise<void>;
};

export type RunOptions<Progress> = {
  /** Default 1. */
  readonly seed?: number;
  /** Stops the task: its thread is ended in the middle of whatever it does. In a procedure: the call's own `signal`. */
  readonly signal?: AbortSignal | undefined;
  readonly onProgress?: (progress: Progress) => void;
};

export type ComputeSettings = {
  readonly threads?: number;
  readonly heapLimitMb?: number;
  readonly recycleAboveMb?: number;
  readonly idleMs?: number;
  /** More than this many waiting for one lane are sent away. */
  readonly mostAsked?: number;
};

const TABLE_URL = new URL('./compute-tasks.ts', import.meta.url).href;

/** `table` and `tableUrl` are the same module: its types here, its functions in the threads. */
export function startCompute<T extends ComputeTable>(
  log: Log,
  table: T,
  tableUrl = TABLE_URL,
  settings: ComputeSettings = {},
): ComputeOf<T> {
  const {
    threads = Math.max(1, availableParallelism() - 1),
    heapLimitMb = 512,
    recycleAboveMb = 160,
    idleMs = 60_000,
    mostAsked = 64,
  } = settings;
  const shared = { heapLimitMb, recycleAboveMb, tasksUrl: tableUrl, log };
  const lanes: Readonly<Record<ComputeLane, Lane>> = {
    quick: makeLane({ ...shared, threads: 1, idleMs: null }),
    long: makeLane({ ...shared, threads, idleMs }),
  };

  async function run<N extends keyof T & string>(
    name: N,
    input: TaskInput<T, N>,
    { seed = 1, signal, onProgress }: RunOptions<TaskProgress<T, N>> = {},
  ): Promise<TaskOutput<T, N>> {
    const entry = table[name];
    if (entry === undefined) throw new Error(`no computation is called ${name}`);
    const lane = lanes[entry.lane];
    if (lane.asked >= mostAsked) throw tooMany();
    const budget = startBudget(entry.budgetMs, signal);
    const channel = onProgress === undefined ? null : listen(onProgress);
    try {
      const request = { name, input, seed, progress: channel?.sender ?? null };
      const answer = await lane.run(request, budget.signal).catch((error: unknown) => {
        throw budget.stopped() ?? new Error(`the thread of ${name} ended`, { cause: error });
      });
      // The thread answers as the table says that this task does; the type was lost on the way.
      return outputOf(name, answer) as TaskOutput<T, N>;
    } finally {
      budget.end();
      channel?.close();
    }
  }

  return {
    run,
    async close() {
      await Promise.all([lanes.quick.close(), lanes.long.close()]);
    },
  };
}

function outputOf(name: string, answer: ThreadAnswer): unknown {
  if (answer.state === 'done') return answer.output;
  const cause = Object.assign(new Error(answer.message), { name: answer.name, stack: answer.stack });
  throw new Error(`${name} failed in its thread`, { cause });
}

type Budget = {
  readonly signal: AbortSignal;
  /** Why it was stopped, in the shop's words; null = it was not. */
  stopped(): ShopError | null;
  end(): void;
};

function startBudget(budgetMs: number, asked: AbortSignal | undefined): Budget {
  const stopper = new AbortController();
  let reason: ShopError | null = null;
  const stop = (why: ShopError) => {
    reason ??= why;
    stopper.abort();
  };
  const onAsked = () => stop(new ShopError('BUSY', 'This was stopped before it was done.'));
  if (asked?.aborted) onAsked();
  asked?.addEventListener('abort', onAsked, { once: true });
  const timer = setTimeout(() => stop(overBudget(budgetMs)), budgetMs);
  return {
    signal: stopper.signal,
    stopped: () => reason,
    end() {
      clearTimeout(timer);
      asked?.removeEventListener('abort', onAsked);
    },
  };
}

function overBudget(budgetMs: number): ShopError {
  const seconds = Math.max(1, Math.round(budgetMs / 1_000));
  return new ShopError('BUSY', `This took longer than ${seconds} s and was stopped. Ask for less, or again.`);
}

function tooMany(): ShopError {
  return new ShopError('BUSY', 'Too much is being worked out just now. Try again in a moment.');
}

function listen<Progress>(onProgress: (progress: Progress) => void): {
  readonly sender: MessagePort;
  close(): void;
} {
  const { port1, port2 } = new MessageChannel();
  port1.on('message', onProgress);
  port1.unref();
  return { sender: port2, close: () => port1.close() };
}

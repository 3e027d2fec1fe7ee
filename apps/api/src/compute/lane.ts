// A pool of threads that starts when it is first needed and is replaced when one of its threads has grown too large.
import { Piscina } from 'piscina';
import type { Log } from '../log.ts';
import type { ThreadAnswer, ThreadRequest, ThreadSettings } from './compute-thread.ts';

const MIB = 1_048_576;

export type LaneOptions = {
  readonly threads: number;
  /** How long the threads stay without work; null = until the end of the process. */
  readonly idleMs: number | null;
  /** A task that needs more ends as a fault, alone: its thread is replaced. */
  readonly heapLimitMb: number;
  /** Threads that hold more than this after a task make place for fresh ones. */
  readonly recycleAboveMb: number;
  readonly tasksUrl: string;
  readonly log: Log;
};

export type Lane = {
  /** Tasks that run or wait. */
  readonly asked: number;
  /** Rejects when the signal stops it; a thread that works on it then is ended, not asked. */
  run(request: ThreadRequest, signal: AbortSignal): Promise<ThreadAnswer>;
  close(): Promise<void>;
};

type Pool = {
  readonly threads: Piscina<ThreadRequest, ThreadAnswer>;
  asked: number;
  idle: NodeJS.Timeout | null;
};

export function makeLane(options: LaneOptions): Lane {
  const pools = new Set<Pool>();
  let current: Pool | null = null;

  function openPool(): Pool {
    const pool = { threads: startThreads(options), asked: 0, idle: null };
    pools.add(pool);
    return pool;
  }

  async function endPool(pool: Pool): Promise<void> {
    pools.delete(pool);
    if (current === pool) current = null;
    if (pool.idle !== null) clearTimeout(pool.idle);
    await pool.threads.destroy();
  }

  /** What was replaced ends with its last task; what is merely idle after a while. */
  async function afterTask(pool: Pool): Promise<void> {
    pool.asked -= 1;
    if (pool.asked > 0 || !pools.has(pool)) return;
    if (pool !== current) await endPool(pool);
    else if (options.idleMs !== null) {
      pool.idle = setTimeout(() => void endPool(pool), options.idleMs).unref();
    }
  }

  return {
    get asked() {
      return [...pools].reduce((sum, pool) => sum + pool.asked, 0);
    },
    async run(request, signal) {
      current ??= openPool();
      const pool = current;
      if (pool.idle !== null) clearTimeout(pool.idle);
      pool.asked += 1;
      try {
        const transferList = request.progress === null ? [] : [request.progress];
        const answer = await pool.threads.run(request, { signal, transferList });
        if (answer.heapBytes > options.recycleAboveMb * MIB && current === pool) current = null;
        return answer;
      } finally {
        await afterTask(pool);
      }
    },
    async close() {
      await Promise.all([...pools].map(endPool));
    },
  };
}

function startThreads(options: LaneOptions): Piscina<ThreadRequest, ThreadAnswer> {
  const settings: ThreadSettings = { tasksUrl: options.tasksUrl };
  const threads = new Piscina<ThreadRequest, ThreadAnswer>({
    filename: new URL('./compute-thread.ts', import.meta.url).href,
    name: 'work',
    minThreads: 1, // with none, a task that waits behind a stopped one would wait for ever
    maxThreads: options.threads,
    idleTimeout: options.idleMs ?? Number.POSITIVE_INFINITY,
    stricterFIFO: true,
    env: {}, // a thread has no use for the program's secrets
    workerData: settings,
    resourceLimits: { maxOldGenerationSizeMb: options.heapLimitMb },
  });
  // Only what no task answers for: a thread that broke while it was idle. The pool replaces it.
  threads.on('error', (error) => options.log.error({ err: error }, 'compute thread'));
  return threads;
}

// Tasks that behave badly or slowly, for the tests of the threads themselves.
import { setTimeout as wait } from 'node:timers/promises';
import { threadId } from 'node:worker_threads';
import type { ComputeTable, ComputeTask } from '../../src/compute/compute-task.ts';

type Step = { readonly done: number; readonly of: number };

/** As long as `ms` without giving the thread back, saying at each step how far it is. */
const countTask: ComputeTask<
  { readonly steps: number; readonly msEach: number },
  { readonly steps: number; readonly seed: number },
  Step
> = ({ steps, msEach }, { seed, report }) => {
  for (let done = 1; done <= steps; done += 1) {
    const until = performance.now() + msEach;
    while (performance.now() < until);
    report({ done, of: steps });
  }
  return { steps, seed };
};

/** Never ends by itself; what it adds to the shared counter shows whether it still runs. */
const foreverTask: ComputeTask<{ readonly counter: Int32Array }, never> = ({ counter }) => {
  for (;;) Atomics.add(counter, 0, 1);
};

const failTask: ComputeTask<{ readonly secret: string }, never> = ({ secret }) => {
  throw new TypeError(`could not read ${secret}`);
};

const exitTask: ComputeTask<null, never> = () => process.exit(3);

const hoardTask: ComputeTask<null, number> = () => {
  const hoard: number[][] = [];
  for (;;) hoard.push(new Array<number>(100_000).fill(hoard.length));
};

const whereTask: ComputeTask<{ readonly waitMs: number }, number> = async ({ waitMs }) => {
  await wait(waitMs);
  return threadId;
};

const environmentTask: ComputeTask<null, readonly string[]> = () => Object.keys(process.env);

export const computeTasks = {
  count: { lane: 'long', budgetMs: 20_000, load: async () => countTask },
  forever: { lane: 'long', budgetMs: 20_000, load: async () => foreverTask },
  impatient: { lane: 'long', budgetMs: 300, load: async () => foreverTask },
  fail: { lane: 'long', budgetMs: 20_000, load: async () => failTask },
  exit: { lane: 'long', budgetMs: 20_000, load: async () => exitTask },
  hoard: { lane: 'long', budgetMs: 20_000, load: async () => hoardTask },
  where: { lane: 'long', budgetMs: 20_000, load: async () => whereTask },
  'where-quick': { lane: 'quick', budgetMs: 20_000, load: async () => whereTask },
  environment: { lane: 'long', budgetMs: 20_000, load: async () => environmentTask },
} as const satisfies ComputeTable;

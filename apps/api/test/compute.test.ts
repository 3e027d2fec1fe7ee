// Long computations in threads: progress, stop, budget, and faults that stay where they happen.
import { setTimeout as wait } from 'node:timers/promises';
import { pino } from 'pino';
import { afterEach, describe, expect, it } from 'vitest';
import { type ComputeOf, type ComputeSettings, startCompute } from '../src/compute/compute.ts';
import { ShopError } from '../src/errors.ts';
import { computeTasks } from './support/compute-tasks.ts';

const TABLE_URL = new URL('./support/compute-tasks.ts', import.meta.url).href;
const running: ComputeOf<typeof computeTasks>[] = [];

function start(settings: ComputeSettings = {}): ComputeOf<typeof computeTasks> {
  const compute = startCompute(pino({ level: 'silent' }), computeTasks, TABLE_URL, {
    threads: 1,
    ...settings,
  });
  running.push(compute);
  return compute;
}

afterEach(async () => {
  await Promise.all(running.splice(0).map((compute) => compute.close()));
});

async function errorOf(call: Promise<unknown>): Promise<unknown> {
  return call.then(
    () => {
      throw new Error('the task was expected to fail, but it answered');
    },
    (error: unknown) => error,
  );
}

/** Shared with the thread: it grows for as long as the thread runs. */
const sharedCounter = () => new Int32Array(new SharedArrayBuffer(4));

async function isStill(counter: Int32Array): Promise<boolean> {
  await wait(100); // a thread that is told to end does so at its next step
  const then = Atomics.load(counter, 0);
  await wait(100);
  return then > 0 && Atomics.load(counter, 0) === then;
}

async function begun(counter: Int32Array): Promise<void> {
  while (Atomics.load(counter, 0) === 0) await wait(5);
}

describe('a task in a thread', () => {
  it('answers, with the seed that was asked for', async () => {
    const compute = start();
    expect(await compute.run('count', { steps: 2, msEach: 0 })).toEqual({ steps: 2, seed: 1 });
    expect(await compute.run('count', { steps: 2, msEach: 0 }, { seed: 7 })).toEqual({ steps: 2, seed: 7 });
  });

  it('tells how far it is while it runs', async () => {
    const heard: { done: number; of: number }[] = [];
    const answer = start().run(
      'count',
      { steps: 12, msEach: 30 },
      { onProgress: (step) => void heard.push(step) },
    );
    let heardBefore = 0;
    await answer.then(() => {
      heardBefore = heard.length;
    });
    expect(heardBefore).toBeGreaterThan(2);
    expect(heard.map(({ done }) => done)).toEqual(heard.map(({ done }) => done).toSorted((a, b) => a - b));
    expect(heard[0]).toEqual({ done: 1, of: 12 });
    expect(heard.length).toBeLessThan(12); // what came sooner than 50 ms after the last was dropped
  });

  it('lets quick work pass while a long one holds its only thread', async () => {
    const compute = start();
    const counter = sharedCounter();
    const stopper = new AbortController();
    const long = errorOf(compute.run('forever', { counter }, { signal: stopper.signal }));
    await begun(counter);
    expect(await compute.run('where-quick', { waitMs: 0 })).toBeGreaterThan(0);
    stopper.abort();
    await long;
  });

  it('knows nothing of the program’s settings', async () => {
    expect(await start().run('environment', null)).toEqual([]);
  });
});

describe('a stopped task', () => {
  it('stops in the middle of its loop, and the next one runs', async () => {
    const compute = start();
    const counter = sharedCounter();
    const stopper = new AbortController();
    const stopped = errorOf(compute.run('forever', { counter }, { signal: stopper.signal }));
    await begun(counter);
    const next = compute.run('count', { steps: 1, msEach: 0 }); // waits for the only thread
    stopper.abort();
    expect(await stopped).toMatchObject({ code: 'BUSY', message: 'This was stopped before it was done.' });
    expect(await isStill(counter)).toBe(true);
    expect(await next).toEqual({ steps: 1, seed: 1 });
  });

  it('is never begun where it was stopped before', async () => {
    const counter = sharedCounter();
    const call = start().run('forever', { counter }, { signal: AbortSignal.abort() });
    expect(await errorOf(call)).toBeInstanceOf(ShopError);
    expect(Atomics.load(counter, 0)).toBe(0);
  });

  it('ends with its budget', async () => {
    const counter = sharedCounter();
    const error = await errorOf(start().run('impatient', { counter }));
    expect(error).toMatchObject({ code: 'BUSY' });
    expect(String(error)).toContain('took longer than 1 s');
    expect(await isStill(counter)).toBe(true);
  });

  it('ends with the program', async () => {
    const compute = start();
    const counter = sharedCounter();
    const call = errorOf(compute.run('forever', { counter }));
    await begun(counter);
    await compute.close();
    expect(await call).toBeInstanceOf(Error);
    expect(await isStill(counter)).toBe(true);
  });
});

describe('a task that fails', () => {
  it('is a fault whose cause is kept for the log only', async () => {
    const error = await errorOf(start().run('fail', { secret: 'the-key' }));
    expect(error).not.toBeInstanceOf(ShopError); // people see "something went wrong on our side"
    expect(error).toMatchObject({
      message: 'fail failed in its thread',
      cause: { name: 'TypeError', message: 'could not read the-key' },
    });
  });

  it.each(['exit', 'hoard'] as const)('takes only its own thread with it: %s', async (name) => {
    const compute = start({ heapLimitMb: 48 });
    const error = await errorOf(compute.run(name, null));
    expect(error).toMatchObject({ message: `the thread of ${name} ended` });
    expect(await compute.run('count', { steps: 1, msEach: 0 })).toEqual({ steps: 1, seed: 1 });
  });
});

describe('the threads', () => {
  it('stay for the next task', async () => {
    const compute = start();
    const thread = await compute.run('where', { waitMs: 0 });
    expect(await compute.run('where', { waitMs: 0 })).toBe(thread);
  });

  it('make place for fresh ones when they have grown, without losing what they do', async () => {
    const compute = start({ recycleAboveMb: 0 });
    const threads = await Promise.all([0, 30, 0, 30].map((waitMs) => compute.run('where', { waitMs })));
    const later = await compute.run('where', { waitMs: 0 });
    expect(threads).toHaveLength(4);
    expect(threads).not.toContain(later);
  });

  it('leave when there is nothing to do', async () => {
    const compute = start({ idleMs: 50 });
    const thread = await compute.run('where', { waitMs: 0 });
    await wait(150);
    expect(await compute.run('where', { waitMs: 0 })).not.toBe(thread);
  });

  it('turn away what is too much', async () => {
    const compute = start({ mostAsked: 2 });
    const kept = [compute.run('where', { waitMs: 50 }), compute.run('where', { waitMs: 0 })];
    expect(await errorOf(compute.run('where', { waitMs: 0 }))).toMatchObject({ code: 'BUSY' });
    expect(await Promise.all(kept)).toHaveLength(2);
    expect(await compute.run('where', { waitMs: 0 })).toBeGreaterThan(0);
  });
});

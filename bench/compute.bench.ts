// What it costs to plan a shop in a thread, and what it spares the thread that answers requests: the same plan in both
// places, in the same run, and how long the event loop of this thread stood still meanwhile.
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { setTimeout as wait } from 'node:timers/promises';
import { startCompute } from '@gusset/api/compute/compute';
import { computeTasks } from '@gusset/api/compute/compute-tasks';
import { makeLog } from '@gusset/api/log';
import { planShop } from '@gusset/planning';
import { isRefusal } from '@gusset/units';
import { quarryRoad } from '../packages/planning/bench/quarry-road.ts';

const PLANS = 25;
const RESOLUTION_MS = 2;

type Row = {
  readonly firstMs: number;
  readonly planMs: number;
  /** The longest pause of the event loop during a plan, median of all plans. */
  readonly pauseMs: number;
};

const input = quarryRoad(12);
const compute = startCompute(makeLog('silent'), computeTasks);
try {
  const here = await measure(async () => refuseNothing(planShop(input)));
  const there = await measure(async () =>
    refuseNothing(await compute.run('plan-shop', { input, before: null })),
  );
  const tasks = input.jobs.flatMap((job) => job.tasks).length;
  process.stdout.write(`a shop of ${input.jobs.length} jobs, ${tasks} tasks, planned ${PLANS} times\n`);
  process.stdout.write('                          first   median   requests stand still\n');
  print('on the thread of requests', here);
  print('in a thread of its own', there);
  process.stdout.write(`requests stand still ${(here.pauseMs / there.pauseMs).toFixed(1)} times shorter\n`);
} finally {
  await compute.close();
}

async function measure(plan: () => Promise<void>): Promise<Row> {
  const delay = monitorEventLoopDelay({ resolution: RESOLUTION_MS });
  delay.enable();
  const times: number[] = [];
  const pauses: number[] = [];
  for (let count = 0; count < PLANS; count += 1) {
    delay.reset();
    await wait(4 * RESOLUTION_MS); // the monitor counts from its second tick on
    const started = performance.now();
    await plan();
    times.push(performance.now() - started);
    await wait(4 * RESOLUTION_MS);
    pauses.push(delay.max / 1e6);
  }
  delay.disable();
  return { firstMs: times[0] ?? 0, planMs: median(times), pauseMs: median(pauses) };
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;
}

function print(where: string, { firstMs, planMs, pauseMs }: Row): void {
  const ms = (value: number) => `${value.toFixed(0)} ms`.padStart(7);
  process.stdout.write(`${where.padEnd(25)} ${ms(firstMs)}  ${ms(planMs)}   ${ms(pauseMs)}\n`);
}

function refuseNothing(answer: unknown): void {
  if (isRefusal(answer)) throw new Error(JSON.stringify(answer));
}

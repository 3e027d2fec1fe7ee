/// <reference types="node" />
// Random projects of the published kind: makespan above the critical path, after one pass of list scheduling and after
// the search, in the same run; then the time that a whole shop's plan takes.
//
//   node packages/planning/bench/planning.bench.ts --schedules 5000 --every 1
//
// --schedules N  schedules for one project (default 5000)
// --seconds S    processor time for one project instead of a number of schedules
// --every K      each K-th cell of the published grid (default 3; 1 = all 48, or 60 for 120 activities)
// --sizes A,B    numbers of activities (default 30,60,120)
// --seed N       seed of the projects and of the search (default 1)
import { parseArgs } from 'node:util';
import { isRefusal } from '@gusset/units';
import { compileProject } from '../src/core/compile-project.ts';
import { headsAndTails } from '../src/core/lower-bound.ts';
import { checkSchedule, checkShopPlan, planShop, solveProject } from '../src/index.ts';
import { quarryRoad } from './quarry-road.ts';
import { publishedGrid, randomProject } from './random-project.ts';

const { values } = parseArgs({
  options: {
    schedules: { type: 'string', default: '5000' },
    seconds: { type: 'string' },
    every: { type: 'string', default: '3' },
    sizes: { type: 'string', default: '30,60,120' },
    seed: { type: 'string', default: '1' },
  },
});
const seed = Number(values.seed);
const seconds = values.seconds === undefined ? null : Number(values.seconds);
/** Milliseconds of processor time, so that a busy machine does not cut a project short. */
const now = (): number => process.cpuUsage().user / 1_000;

type Row = {
  onePass: number;
  searched: number;
  overBound: number;
  proven: number;
  schedules: number;
  ms: number;
};

function solveOne(size: number, cell: number): Row {
  const shape = publishedGrid(size)[cell];
  if (shape === undefined) throw new Error(`no cell ${cell}`);
  const project = randomProject({ ...shape, seed: seed * 1_000 + cell });
  const compiled = compileProject(project);
  if (isRefusal(compiled)) throw new Error(JSON.stringify(compiled));
  const { earliestStart, fromStart } = headsAndTails(compiled);
  const criticalPath = Math.max(...earliestStart.map((start, i) => start + (fromStart[i] ?? 0)));
  const onePass = solveProject(project, { seed, schedules: 1 });
  const startedAt = now();
  const answer = solveProject(project, {
    seed,
    schedules: seconds === null ? Number(values.schedules) : Number.MAX_SAFE_INTEGER,
    shouldStop: () => seconds !== null && now() - startedAt >= seconds * 1_000,
  });
  const ms = now() - startedAt;
  if (isRefusal(answer) || isRefusal(onePass)) throw new Error('was refused');
  const faults = checkSchedule(project, answer);
  if (faults.length > 0 || answer.makespan === null || onePass.makespan === null) {
    throw new Error(JSON.stringify(faults));
  }
  return {
    onePass: onePass.makespan / criticalPath - 1,
    searched: answer.makespan / criticalPath - 1,
    overBound: answer.makespan / answer.lowerBound - 1,
    proven: answer.proven ? 1 : 0,
    schedules: answer.schedules,
    ms,
  };
}

const percent = (share: number): string => `${(100 * share).toFixed(2)} %`.padStart(9);

process.stdout.write('activities  projects  one pass   searched   over our bound  proven  µs/schedule\n');
for (const size of values.sizes.split(',').map(Number)) {
  const rows = publishedGrid(size).flatMap((_, cell) =>
    cell % Number(values.every) === 0 ? [solveOne(size, cell)] : [],
  );
  const mean = (of: (row: Row) => number) => rows.reduce((sum, row) => sum + of(row), 0) / rows.length;
  const perSchedule = (1_000 * mean(({ ms }) => ms)) / mean(({ schedules }) => schedules);
  process.stdout.write(
    `${[
      String(size).padStart(10),
      String(rows.length).padStart(8),
      percent(mean(({ onePass }) => onePass)),
      percent(mean(({ searched }) => searched)),
      percent(mean(({ overBound }) => overBound)).padStart(13),
      `${(100 * mean(({ proven }) => proven)).toFixed(0)} %`.padStart(7),
      perSchedule.toFixed(1).padStart(10),
    ].join('  ')}\n`,
  );
}

const input = quarryRoad(12);
const times: number[] = [];
for (let run = 0; run < 15; run++) {
  const startedAt = now();
  const plan = planShop(input);
  times.push(now() - startedAt);
  if (isRefusal(plan)) throw new Error(JSON.stringify(plan));
  if (run === 0 && checkShopPlan(input, plan).length > 0) throw new Error('the plan breaks a rule');
}
const sorted = times.toSorted((a, b) => a - b);
const tasks = input.jobs.flatMap((job) => job.tasks).length;
process.stdout.write(
  `\nshop of 12 jobs, ${tasks} tasks: ${sorted[7]?.toFixed(0)} ms a plan (median of 15, first ${times[0]?.toFixed(0)} ms)\n`,
);

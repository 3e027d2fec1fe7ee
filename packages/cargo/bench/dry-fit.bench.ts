/// <reference types="node" />
// Does it go in and come out again, on invented cargo spaces: how many are decided, and how long that takes. The yardstick
// is one distance between two outlines of the same scene, in the same run.
//
//   node packages/cargo/bench/dry-fit.bench.ts --cases 100 --seconds 1
import { parseArgs } from 'node:util';
import { dryFitCaseSchema } from '@gusset/contracts/dryfit';
import { isRefusal } from '@gusset/units';
import { distanceFrom } from '../src/dryfit/check-motion.ts';
import { checkMotion, dryFit } from '../src/index.ts';
import { posed } from '../src/plane/polygon.ts';
import { randomCase, seeded } from './random-scene.ts';

const { values } = parseArgs({
  options: {
    cases: { type: 'string', default: '60' },
    seconds: { type: 'string', default: '1' },
    seed: { type: 'string', default: '1' },
  },
});
const wanted = Number(values.cases);
const budgetMs = Number(values.seconds) * 1_000;
const random = seeded(Number(values.seed));
/** Processor time: a busy machine doesn't count against the search. */
const now = (): number => process.cpuUsage().user / 1_000;

type Row = { readonly verdict: string; readonly by: string; readonly ms: number; readonly cells: number };
const rows: Row[] = [];
let unproved = 0;
let distances = 0;
let distanceMs = 0;
for (let warmUp = 0; warmUp < 8; ) if (solveNext(true)) warmUp++;
while (rows.length < wanted) solveNext(false);

function solveNext(isWarmUp: boolean): boolean {
  const given = randomCase(random);
  if (given === null) return false;
  const started = now();
  const result = dryFit(given, { shouldStop: () => now() - started >= budgetMs });
  const ms = now() - started;
  if (isRefusal(result)) throw new Error(JSON.stringify(result));
  if (isWarmUp) return true;
  const input = dryFitCaseSchema.parse(given);
  if (result.verdict === 'loads' && !checkMotion(input, result.path, 0).holds) unproved++;
  const from = now();
  for (let i = 0; i < 50; i++) {
    distanceFrom(posed(input.body.profile, input.final), { space: input.space, obstacles: [] });
    distances++;
  }
  distanceMs += now() - from;
  rows.push({ verdict: result.verdict, by: result.decidedBy, ms, cells: result.cells });
  return true;
}

const count = (ask: (row: Row) => boolean) => rows.filter(ask).length;
const quantile = (list: readonly Row[], share: number) =>
  list.map(({ ms }) => ms).sort((a, b) => a - b)[
    Math.min(list.length - 1, Math.floor(list.length * share))
  ] ?? 0;
const searched = rows.filter(({ by }) => by === 'search');
const decided = rows.filter(({ verdict }) => verdict !== 'too-close');
const perDistance = distanceMs / distances;
console.log(
  `${rows.length} cases: ${count((r) => r.verdict === 'loads')} load, ${count((r) => r.verdict === 'does-not-load')} do not, ${count((r) => r.verdict === 'too-close')} too close (within ${values.seconds} s)`,
);
console.log(
  `decided by: opening ${count((r) => r.by === 'opening')}, straight way ${count((r) => r.by === 'straight-way')}, search ${searched.length}`,
);
console.log(
  `all: median ${quantile(rows, 0.5).toFixed(0)} ms, 95th percentile ${quantile(rows, 0.95).toFixed(0)} ms`,
);
console.log(
  `searched: median ${quantile(searched, 0.5).toFixed(0)} ms, 95th percentile ${quantile(searched, 0.95).toFixed(0)} ms`,
);
console.log(
  `straight ways: slowest ${quantile(
    rows.filter((r) => r.by === 'straight-way'),
    1,
  ).toFixed(0)} ms`,
);
console.log(
  `decided in time: ${((100 * decided.length) / rows.length).toFixed(1)} %; motions that the independent check refuses: ${unproved}`,
);
console.log(
  `median of all = ${(quantile(rows, 0.5) / perDistance).toFixed(0)} plain distances of ${(perDistance * 1e3).toFixed(0)} µs`,
);

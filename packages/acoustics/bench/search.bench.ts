// Catalogue search: designs a second on one core and on two, beside the plain solver, and the proof that what the
// bounds leave out could not have won: 3,000 generated drivers, 50 seeded briefs, every design solved once more.
//
// `node packages/acoustics/bench/search.bench.ts` prints one table. The proof runs in two threads, each its half of the
// briefs; `--briefs 5` shortens it.
import { parseArgs } from 'node:util';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import type { SearchBrief, SearchDriver } from '@gusset/contracts/acoustics';
import { isRefusal } from '@gusset/units';
import { solveResponse } from '../src/response.ts';
import { SEARCH_FREQUENCIES_HZ } from '../src/search/aims.ts';
import type { BoxGrid } from '../src/search/box-grid.ts';
import { finishSearch, type SearchPart, type SearchSetting } from '../src/search/finish-search.ts';
import { searchPart } from '../src/search/search.ts';
import { generatedBrief, generatedDrivers } from './generated-catalogue.ts';

const CATALOGUE = { drivers: 3_000, seed: 2026 };
const CORES = 2;
const WARM_UP_DRIVERS = 20;
/** Of the measured speed: the full grid on so many of the drivers. */
const SPEED_DRIVERS = 60;
const NAIVE_DESIGNS = 600;

/** Coarse steps for the proof, so that 50 exhaustive searches over all drivers take minutes. */
const PROOF_GRID: BoxGrid = {
  volumeRatio: 2,
  mostVolumes: 3,
  ventedTuningsHz: [25, 35.5],
  bandpassTuningsHz: [45, 63],
  rearShares: [0.5],
  portShares: [0.15],
};

type Task =
  | { readonly kind: 'speed'; readonly part: number }
  | { readonly kind: 'proof'; readonly seeds: readonly number[] };
/** `cpuMs` is the thread's own time: on a shared machine less than what went by. */
type SpeedAnswer = { readonly evaluated: number; readonly ms: number; readonly cpuMs: number };
type ProofAnswer = {
  readonly same: number;
  readonly different: readonly number[];
  readonly designs: number;
  readonly evaluated: number;
  readonly beatenInBand: number;
  readonly ruledOut: number;
  readonly unbuildable: number;
  readonly fastMs: number;
  readonly fullMs: number;
};

const drivers = generatedDrivers(CATALOGUE.drivers, CATALOGUE.seed);

/** All kinds of box, nothing ruled out beforehand: what a design costs. */
const SPEED_BRIEF: SearchBrief = {
  ...generatedBrief(3),
  kinds: ['closed', 'vented', 'single-tuned-bandpass', 'passive-radiator'],
  mostDrivers: 2,
  depthMm: null,
  budgetMinor: null,
  leastOutputDb: null,
};

function run(brief: SearchBrief, over: readonly SearchDriver[], setting: SearchSetting): SearchPart {
  const search = searchPart(brief, over, setting);
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
  }
}

function measureSpeed(part: number): SpeedAnswer {
  run(SPEED_BRIEF, drivers.slice(0, WARM_UP_DRIVERS), { usesBounds: false });
  const half = SPEED_DRIVERS / CORES;
  const [started, before] = [performance.now(), process.threadCpuUsage()];
  const { counts } = run(SPEED_BRIEF, drivers.slice(half * part, half * (part + 1)), { usesBounds: false });
  const { user, system } = process.threadCpuUsage(before);
  return { evaluated: counts.evaluated, ms: performance.now() - started, cpuMs: (user + system) / 1e3 };
}

function prove(seeds: readonly number[]): ProofAnswer {
  const total = {
    same: 0,
    designs: 0,
    evaluated: 0,
    beatenInBand: 0,
    ruledOut: 0,
    unbuildable: 0,
    fastMs: 0,
    fullMs: 0,
  };
  const different: number[] = [];
  for (const seed of seeds) {
    const brief = generatedBrief(seed);
    const begun = performance.now();
    const fast = run(brief, drivers, { grid: PROOF_GRID });
    const between = performance.now();
    const full = run(brief, drivers, { grid: PROOF_GRID, usesBounds: false });
    total.fastMs += between - begun;
    total.fullMs += performance.now() - between;
    const isSame =
      JSON.stringify([fast.ranked, fast.front]) === JSON.stringify([full.ranked, full.front]) &&
      JSON.stringify(finishSearch(brief, drivers, [fast]).ranked) ===
        JSON.stringify(finishSearch(brief, drivers, [full]).ranked);
    if (isSame) total.same += 1;
    else different.push(seed);
    total.designs += fast.counts.designs;
    total.evaluated += fast.counts.evaluated;
    total.beatenInBand += fast.counts.beatenInBand;
    total.ruledOut += fast.counts.ruledOut;
    total.unbuildable += fast.counts.unbuildable;
  }
  return { ...total, different };
}

/** Milliseconds of one design by the whole solver, schema and all. */
function naiveMs(): number {
  const { ranked } = run(SPEED_BRIEF, drivers.slice(0, WARM_UP_DRIVERS), {});
  const solveAll = (count: number) => {
    for (let i = 0; i < count; i++) {
      const design = ranked[i % ranked.length];
      const driver = drivers.find(({ id }) => id === design?.driverId);
      if (design === undefined || driver === undefined) throw new Error('the search found no design');
      const solved = solveResponse({
        frequenciesHz: SEARCH_FREQUENCIES_HZ,
        source: { voltageVrms: 10 },
        driver: driver.parameters,
        array: {
          count: design.count,
          seriesPerString: design.seriesPerString,
          parallelStrings: design.count / design.seriesPerString,
          coilWiring: design.coilWiring,
        },
        enclosure: design.enclosure,
        cabin: SPEED_BRIEF.cabin,
      });
      if (isRefusal(solved)) throw new Error(solved.refusal.why);
    }
  };
  solveAll(NAIVE_DESIGNS / 4);
  const started = performance.now();
  solveAll(NAIVE_DESIGNS);
  return (performance.now() - started) / NAIVE_DESIGNS;
}

function inThread<Answer>(task: Task): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const thread = new Worker(new URL(import.meta.url), { workerData: task });
    thread.once('message', resolve);
    thread.once('error', reject);
  });
}

function row(name: string, value: number, unit: string, digits = 0): void {
  const shown = value.toLocaleString('en-GB', {
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  });
  console.log(`${name.padEnd(58)} ${shown.padStart(12)} ${unit}`);
}

async function main(): Promise<void> {
  const { values } = parseArgs({ options: { briefs: { type: 'string', default: '50' } } });
  const briefs = Number(values.briefs);
  const one = await inThread<SpeedAnswer>({ kind: 'speed', part: 0 });
  const both = await Promise.all(
    Array.from({ length: CORES }, (_, part) => inThread<SpeedAnswer>({ kind: 'speed', part })),
  );
  const onePerSecond = one.evaluated / (one.ms / 1e3);
  const bothPerSecond =
    both.reduce((sum, { evaluated }) => sum + evaluated, 0) / (Math.max(...both.map(({ ms }) => ms)) / 1e3);
  const naive = naiveMs();
  row(`designs of ${SEARCH_FREQUENCIES_HZ.length} frequencies solved, one core`, onePerSecond, '1/s');
  row('  a second of its own time', one.evaluated / (one.cpuMs / 1e3), '1/s');
  row(`the same, ${CORES} cores`, bothPerSecond, '1/s');
  const ownPerSecond = both.reduce((sum, { evaluated, cpuMs }) => sum + evaluated / (cpuMs / 1e3), 0);
  row('  a second of their own time', ownPerSecond, '1/s');
  row('  against one core', bothPerSecond / onePerSecond, 'x', 2);
  row('one design by the whole solver', naive * 1e3, 'µs');
  row('one design by the search', 1e6 / onePerSecond, 'µs');
  row('  beside the whole solver', naive / (1e3 / onePerSecond), 'x faster', 1);
  if (briefs === 0) return;

  const seeds = Array.from({ length: briefs }, (_, i) => i);
  const halves = await Promise.all(
    Array.from({ length: CORES }, (_, part) =>
      inThread<ProofAnswer>({ kind: 'proof', seeds: seeds.filter((seed) => seed % CORES === part) }),
    ),
  );
  const sum = (read: (answer: ProofAnswer) => number) =>
    halves.reduce((total, half) => total + read(half), 0);
  const [designs, ruledOut, evaluated] = [
    sum((half) => half.designs),
    sum((half) => half.ruledOut),
    sum((half) => half.evaluated),
  ];
  row(`briefs over ${CATALOGUE.drivers} drivers, coarse steps`, briefs, '');
  row(
    '  with the winners and the front of solving all designs',
    sum((half) => half.same),
    '',
  );
  row('  designs of all of them', designs, '');
  row('  ruled out by a bound, nothing solved', (ruledOut / designs) * 100, '%', 1);
  row('  beaten by the band alone', (sum((half) => half.beatenInBand) / designs) * 100, '%', 1);
  row('  not buildable', (sum((half) => half.unbuildable) / designs) * 100, '%', 1);
  row('  solved to the corner', (evaluated / designs) * 100, '%', 1);
  row('  time against solving all', sum((half) => half.fastMs) / sum((half) => half.fullMs), 'x', 2);
  const different = halves.flatMap((half) => half.different);
  if (different.length > 0)
    throw new Error(`another answer than solving all designs: briefs ${different.join(', ')}`);
}

if (isMainThread) {
  await main();
} else {
  const task: Task = workerData;
  parentPort?.postMessage(task.kind === 'speed' ? measureSpeed(task.part) : prove(task.seeds));
}

// How long the design helpers take, beside yardsticks of the same run.
// `node packages/acoustics/bench/design.bench.ts`. Ratios hold on any machine; milliseconds only on this one.
import type { SoundSystemInput } from '@gusset/contracts/acoustics';
import { isRefusal } from '@gusset/units';
import {
  bestBox,
  frequencyGrid,
  portTable,
  searchDualTuned,
  solveResponse,
  subsonicCorner,
  suggestAlignments,
  toleranceBand,
} from '../src/index.ts';
import { medlar12 } from '../truth/drivers.ts';

const DRAWS = 200;
const POINTS = 60;
const BUDGET_MS = 50; // what a toggle on the sheet may cost
const FRAME_MS = 16; // one frame of a screen at 60 Hz
const RUNS = 40;
const WARM_UP = 15;

const port = {
  mouth: { shape: 'round', diameterMm: 100 },
  outerEnd: { kind: 'flanged' },
  innerEnd: { kind: 'free' },
  sizing: { by: 'tuning', tuningHz: 31 },
} as const;
const vented = {
  source: { voltageVrms: 20 },
  driver: medlar12,
  enclosure: { kind: 'vented', chamber: { netLitres: 55, ql: 7 }, port },
} as const;
const dualTuned = {
  ...vented,
  enclosure: {
    kind: 'dual-tuned-bandpass',
    rear: { netLitres: 60, ql: 10 },
    rearPort: port,
    front: { netLitres: 30, ql: 10 },
    frontPort: port,
  },
} as const;
const litres = { leastLitres: 12, mostLitres: 120 };
const mouths = [65, 75, 80, 90, 100, 110, 125, 150, 160, 200].map(
  (diameterMm) => ({ shape: 'round', diameterMm }) as const,
);

/** Median milliseconds of many runs after a warm-up; stops on a refusal, which would be too fast. */
function medianMs(run: (index: number) => unknown): number {
  const times: number[] = [];
  for (let i = 0; i < RUNS; i++) {
    const start = performance.now();
    const answer = run(i);
    if (i >= WARM_UP) times.push(performance.now() - start);
    if (isRefusal(answer)) throw new Error(answer.refusal.why);
  }
  return times.sort((a, b) => a - b)[times.length >> 1] ?? Number.NaN;
}

/** The same draws the plain way: a full answer for each. */
function drawnOneByOne(): unknown {
  const frequenciesHz = frequencyGrid({ lowHz: 10, highHz: 120, count: POINTS });
  let last: unknown = null;
  for (let i = 0; i < DRAWS; i++) {
    const system: SoundSystemInput = { ...vented, source: { voltageVrms: 20 + i / 100 }, frequenciesHz };
    last = solveResponse(system);
  }
  return last;
}

const row = (name: string, value: number, unit: string) =>
  console.log(`${name.padEnd(58)} ${value.toFixed(2)} ${unit}`);

const bandMs = medianMs((seed) => toleranceBand({ system: vented, draws: DRAWS, points: POINTS, seed }));
const plainMs = medianMs(drawnOneByOne);
row(`tolerance band, vented, ${DRAWS} draws x ${POINTS} points`, bandMs, 'ms');
row(`  share of ${BUDGET_MS} ms`, bandMs / BUDGET_MS, '');
row('  beside a full answer for each draw', bandMs / plainMs, 'x');

const alignmentsMs = medianMs((i) =>
  suggestAlignments({ driver: { ...medlar12, vasLitres: 60 + i }, ql: 7 }),
);
row('alignments of a driver', alignmentsMs, 'ms');
row(`  share of a ${FRAME_MS} ms frame`, alignmentsMs / FRAME_MS, '');

const tableMs = medianMs((i) =>
  portTable({ system: vented, tuningHz: 30 + i / 10, air: { by: 'before-port', litres: 60 }, mouths }),
);
row(`port table, ${mouths.length} mouths`, tableMs, 'ms');
row(`  share of a ${FRAME_MS} ms frame`, tableMs / FRAME_MS, '');

const subsonicMs = medianMs((i) =>
  subsonicCorner({ system: { ...vented, source: { voltageVrms: 26 + i / 10 } } }),
);
row('subsonic corner', subsonicMs, 'ms');
row(`  share of a ${FRAME_MS} ms frame`, subsonicMs / FRAME_MS, '');

const bestMs = medianMs(() => bestBox({ system: vented, aim: 'deep', litres }));
row('best vented box, 17 volumes with their best tunings', bestMs, 'ms');
row('  beside the tolerance band', bestMs / bandMs, 'x');

const dualMs = medianMs((seed) => searchDualTuned({ system: dualTuned, litres, seed }));
row('dual-tuned bandpass search', dualMs, 'ms');
row('  beside the tolerance band', dualMs / bandMs, 'x');

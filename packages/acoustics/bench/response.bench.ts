// How long a step of the volume slider takes: a closed box at 300 points, beside two yardsticks of the same run.
// `node packages/acoustics/bench/response.bench.ts`. Ratios hold on any machine; milliseconds only on this one.
import type { SoundSystemInput } from '@gusset/contracts/acoustics';
import { isRefusal } from '@gusset/units';
import { frequencyGrid, solveResponse } from '../src/index.ts';
import { quince10 } from '../truth/drivers.ts';

const POINTS = 300;
const FRAME_MS = 16; // one frame of a screen at 60 Hz
const frequenciesHz = frequencyGrid({ lowHz: 10, highHz: 500, count: POINTS });

const port = {
  mouth: { shape: 'round', diameterMm: 100 },
  outerEnd: { kind: 'flanged' },
  innerEnd: { kind: 'free' },
  sizing: { by: 'tuning', tuningHz: 34 },
} as const;

const closed = (netLitres: number): SoundSystemInput => ({
  frequenciesHz,
  source: { voltageVrms: 20 },
  driver: quince10,
  enclosure: { kind: 'closed', chamber: { netLitres, ql: 10 } },
});
const dualTuned = (netLitres: number): SoundSystemInput => ({
  ...closed(netLitres),
  array: { count: 2, seriesPerString: 1, parallelStrings: 2, isobaric: { couplingLitres: 4 } },
  enclosure: {
    kind: 'dual-tuned-bandpass',
    rear: { netLitres, ql: 10, qa: 50 },
    rearPort: port,
    front: { netLitres: 20, ql: 10 },
    frontPort: port,
  },
});

/** The least that the same curves could cost: section by section of the printed formulas, in objects. */
function naiveClosed(netLitres: number): number {
  type C = { re: number; im: number };
  const mul = (a: C, b: C): C => ({ re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re });
  const div = (a: C, b: C): C => {
    const d = b.re * b.re + b.im * b.im;
    return { re: (a.re * b.re + a.im * b.im) / d, im: (a.im * b.re - a.re * b.im) / d };
  };
  let sum = 0;
  for (const f of frequenciesHz) {
    for (const at of [f * 0.9999, f, f * 1.0001]) {
      const w = 2 * Math.PI * at;
      const box = div({ re: 0.034 ** 2, im: 0 }, { re: 1e-9, im: (w * netLitres) / 141_855e3 });
      const zm = { re: 4 + box.re, im: w * 0.0994 - 1 / (w * 2.927e-4) + box.im };
      const moving = div({ re: 127.6, im: 0 }, zm);
      const current = div({ re: 20, im: 0 }, { re: 3.6 + moving.re, im: moving.im });
      const velocity = div(mul({ re: 11.296, im: 0 }, current), zm);
      const pressure = mul({ re: 0, im: w * 1.204 }, velocity);
      sum += 20 * Math.log10(Math.hypot(pressure.re, pressure.im)) + Math.atan2(pressure.im, pressure.re);
    }
  }
  return sum;
}

/** Median milliseconds of many runs, each on another volume, after a warm-up. */
function medianMs(run: (netLitres: number) => unknown): number {
  const times: number[] = [];
  for (let i = 0; i < 120; i++) {
    const start = performance.now();
    run(20 + i / 10);
    if (i >= 40) times.push(performance.now() - start);
  }
  return times.sort((a, b) => a - b)[times.length >> 1] ?? Number.NaN;
}

const firstStart = performance.now();
const sample = solveResponse(closed(30));
const firstMs = performance.now() - firstStart;
if (isRefusal(sample)) throw new Error(sample.refusal.why);

const closedMs = medianMs((litres) => solveResponse(closed(litres)));
const dualMs = medianMs((litres) => solveResponse(dualTuned(litres)));
const naiveMs = medianMs(naiveClosed);
const jsonMs = medianMs(() => JSON.parse(JSON.stringify(sample)));

const row = (name: string, value: number, unit: string) =>
  console.log(`${name.padEnd(52)} ${value.toFixed(2)} ${unit}`);
row('first step, nothing compiled yet', firstMs, 'ms');
row(`closed box, ${POINTS} points`, closedMs, 'ms');
row(`  share of a ${FRAME_MS} ms frame`, closedMs / FRAME_MS, '');
row('  beside the bare formulas', closedMs / naiveMs, 'x');
row('  beside a JSON round trip of its answer', closedMs / jsonMs, 'x');
row(`dual-tuned bandpass with an isobaric pair, ${POINTS} points`, dualMs, 'ms');
row('  beside the closed box', dualMs / closedMs, 'x');

// How long a step of the volume slider takes: a closed box and a dual-tuned bandpass with two drivers at 300 points,
// beside yardsticks of the same run, and beside ngspice where there is one.
// `node packages/acoustics/bench/response.bench.ts`. Ratios hold on any machine; milliseconds only on this one.
import { type SoundSystemInput, soundSystemSchema } from '@gusset/contracts/acoustics';
import { isRefusal } from '@gusset/units';
import { compileSystem, frequencyGrid, openSweep, runSweep, solveResponse } from '../src/index.ts';
import { quince10 } from '../truth/drivers.ts';
import { timeNgspice } from './beside-ngspice.ts';

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
const side = { count: 2, seriesPerString: 1, parallelStrings: 2 } as const;
const dualTuned = (
  netLitres: number,
  isobaric: { couplingLitres: number } | null = null,
): SoundSystemInput => ({
  ...closed(netLitres),
  array: { ...side, isobaric },
  enclosure: {
    kind: 'dual-tuned-bandpass',
    rear: { netLitres, ql: 10, qa: 50 },
    rearPort: port,
    front: { netLitres: 20, ql: 10 },
    frontPort: { ...port, sizing: { by: 'tuning', tuningHz: 62 } },
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
const pairMs = medianMs((litres) => solveResponse(dualTuned(litres, { couplingLitres: 4 })));
const naiveMs = medianMs(naiveClosed);
const jsonMs = medianMs(() => JSON.parse(JSON.stringify(sample)));

const row = (name: string, value: number, unit: string) =>
  console.log(`${name.padEnd(64)} ${value.toFixed(2).padStart(8)} ${unit}`);
row('first step, nothing compiled yet', firstMs, 'ms');
row(`closed box, ${POINTS} points, all curves`, closedMs, 'ms');
row(`  share of a ${FRAME_MS} ms frame`, closedMs / FRAME_MS, '');
row('  beside the bare formulas', closedMs / naiveMs, 'x');
row('  beside a JSON round trip of its answer', closedMs / jsonMs, 'x');
row(`dual-tuned bandpass, two drivers, ${POINTS} points, all curves`, dualMs, 'ms');
row('  beside the closed box', dualMs / closedMs, 'x');
row('the same as an isobaric pair', pairMs, 'ms');

/** The circuit alone at the points that ngspice is given. */
function sweepMs(): number {
  const compiled = compileSystem(soundSystemSchema.parse(dualTuned(50)));
  if (isRefusal(compiled)) throw new Error(compiled.refusal.why);
  const even = Array.from({ length: POINTS }, (_, i) => 10 + (490 * i) / (POINTS - 1));
  const sweep = openSweep(even, []);
  return medianMs(() => runSweep(sweep, compiled));
}

const WANTED_RATIO = 300;
const ngspice = timeNgspice(dualTuned(50), { lowHz: 10, highHz: 500, count: POINTS });
if (ngspice === null) {
  console.log('ngspice is not on the PATH: not compared');
} else {
  const aloneMs = sweepMs();
  console.log(
    `\nbeside ngspice, dual-tuned bandpass with two drivers, ${POINTS} points (wanted: ${WANTED_RATIO} x)`,
  );
  row('AC sweep alone, start-up not counted: ngspice', ngspice.sweepMs, 'ms');
  row('  here, the circuit alone', aloneMs, 'ms');
  row('  ngspice takes', ngspice.sweepMs / aloneMs, 'x');
  row('all curves in hand, start-up not counted: ngspice', ngspice.curvesMs, 'ms');
  row('  ngspice takes, beside all curves here', ngspice.curvesMs / dualMs, 'x');
  row('all curves by a run of the program: ngspice', ngspice.processMs, 'ms');
  row('  ngspice takes, beside all curves here', ngspice.processMs / dualMs, 'x');
}

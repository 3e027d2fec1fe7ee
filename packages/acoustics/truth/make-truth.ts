// Asks ngspice for the answers that the tests compare with: `node packages/acoustics/truth/make-truth.ts`.
// Needs ngspice on the PATH; the tests need only the file that this writes, truth/ngspice.json.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { STEP_CASES, TRUTH_CASES, type TruthCase } from './cases.ts';
import { type Netlist, netlistFor } from './netlist.ts';

const STEP = 1e-4; // relative, each side of a frequency, for the delay
const PEAK = Math.SQRT2;
const STEP_EVERY_MS = 0.5;
const STEP_UNTIL_MS = 200;

type Phasor = { readonly re: number; readonly im: number };
type Row = Readonly<Record<string, Phasor>>;

const size = ({ re, im }: Phasor) => Math.hypot(re, im);
const angle = ({ re, im }: Phasor) => Math.atan2(im, re);
const ratio = (a: Phasor, b: Phasor): Phasor => {
  const d = b.re ** 2 + b.im ** 2;
  return { re: (a.re * b.re + a.im * b.im) / d, im: (a.im * b.re - a.re * b.im) / d };
};

/** Runs `commands` on a circuit and reads the rows that they wrote to `out.txt`. */
function runNgspice(circuit: readonly string[], commands: (out: string) => string[], folder: string) {
  const out = join(folder, 'out.txt');
  const control = ['.control', 'set numdgt=15', 'set appendwrite', ...commands(out), 'quit', '.endc', '.end'];
  const file = join(folder, 'net.cir');
  writeFileSync(file, `${[...circuit, ...control].join('\n')}\n`);
  rmSync(out, { force: true });
  execFileSync('ngspice', ['-b', file], { stdio: ['ignore', 'ignore', 'inherit'] });
  const rows = readFileSync(out, 'utf8').trim().split('\n');
  return rows.map((row) => row.trim().split(/\s+/).map(Number));
}

/** Three rows a frequency: below, at, above. */
function sweep(netlist: Netlist, frequenciesHz: readonly number[], folder: string): Row[] {
  const names = Object.keys(netlist.vectors);
  const vectors = names.map((name) => netlist.vectors[name]).join(' ');
  const rows = runNgspice(
    netlist.lines,
    (out) =>
      frequenciesHz.flatMap((f) => [
        `ac lin 3 ${f * (1 - STEP)} ${f * (1 + STEP)}`,
        `wrdata ${out} ${vectors}`,
      ]),
    folder,
  );
  if (rows.length !== 3 * frequenciesHz.length) throw new Error(`${rows.length} rows from ngspice`);
  return rows.map((values) =>
    // Each vector prints as frequency, real, imaginary.
    Object.fromEntries(
      names.map((name, i) => [
        name,
        { re: values[3 * i + 1] ?? Number.NaN, im: values[3 * i + 2] ?? Number.NaN },
      ]),
    ),
  );
}

/**
 * Pressure after a step of the source, by small steps in time. A coil of 1 H turns the air that moves out into its
 * slope; Gear's method, because the trapezium rule would ring on at the edge.
 */
function stepAnswer({ id, input }: TruthCase, folder: string) {
  const netlist = netlistFor(input);
  const circuit = netlist.lines.map((line) =>
    line.startsWith('Vg ') ? `Vg g0 0 pwl(0 0 100n ${input.source.voltageVrms})` : line,
  );
  const rows = runNgspice(
    [...circuit, '.options method=gear', 'Gslope 0 slope heard 0 1', 'Lslope slope 0 1'],
    (out) => [
      `tran ${STEP_EVERY_MS}m ${STEP_UNTIL_MS}m 0 10u`,
      'linearize v(slope)',
      `wrdata ${out} v(slope)`,
    ],
    folder,
  );
  const perSlope = netlist.densityKgPerM3 / (2 * Math.PI * (input.distanceM ?? 1));
  const kept = rows.map(([seconds = Number.NaN, slope = Number.NaN]) => ({
    timeMs: Math.round((seconds * 1e3) / STEP_EVERY_MS) * STEP_EVERY_MS,
    pa: Number((perSlope * slope).toPrecision(9)),
  }));
  return { id, input, timesMs: kept.map(({ timeMs }) => timeMs), stepPa: kept.map(({ pa }) => pa) };
}

function answer({ id, input }: TruthCase, folder: string) {
  const netlist = netlistFor(input);
  const rows = sweep(netlist, input.frequenciesHz, folder);
  const at = (i: number, name: string): Phasor => {
    const phasor = rows[i]?.[name];
    if (phasor === undefined || Number.isNaN(phasor.re)) throw new Error(`${id}: no ${name}`);
    return phasor;
  };
  const each = (read: (row: number, frequencyHz: number) => number) =>
    input.frequenciesHz.map((frequencyHz, k) => Number(read(3 * k + 1, frequencyHz).toPrecision(9)));
  const travelMm = (name: string, areaM2: number) =>
    name in netlist.vectors
      ? each((row, f) => (PEAK * size(at(row, name)) * 1e3) / areaM2 / (2 * Math.PI * f))
      : null;
  const speed = (name: string) =>
    name in netlist.vectors
      ? each((row) => (PEAK * size(at(row, name))) / (netlist.portAreaM2[name] ?? Number.NaN))
      : null;
  const impedance = (row: number) => ratio(at(row, 'terminal'), at(row, 'current'));
  return {
    id,
    input,
    splDb: each((row, f) => {
      const pressure = (f * netlist.densityKgPerM3 * size(at(row, 'outside'))) / (input.distanceM ?? 1);
      return 20 * Math.log10(pressure / 20e-6);
    }),
    phaseRad: each((row) => {
      const { re, im } = at(row, 'outside');
      return angle({ re: -im, im: re }); // a quarter turn ahead of the flow
    }),
    currentArms: each((row) => size(at(row, 'current'))),
    realPowerWatts: each((row) => {
      const [volts, amps] = [at(row, 'terminal'), at(row, 'current')];
      return volts.re * amps.re + volts.im * amps.im;
    }),
    apparentPowerVa: each((row) => size(at(row, 'terminal')) * size(at(row, 'current'))),
    impedanceOhm: each((row) => size(impedance(row))),
    impedancePhaseRad: each((row) => angle(impedance(row))),
    excursionMm: travelMm('cone', 1),
    innerExcursionMm: travelMm('inner', 1),
    radiatorExcursionMm: travelMm('radiator', netlist.radiatorAreaM2 ?? Number.NaN),
    portSpeedMps: speed('port'),
    rearPortSpeedMps: speed('rearPort'),
    groupDelayMs: each(
      (row, f) =>
        (-1e3 * angle(ratio(at(row + 1, 'outside'), at(row - 1, 'outside')))) / (4 * Math.PI * f * STEP),
    ),
  };
}

const folder = mkdtempSync(join(tmpdir(), 'truth-'));
try {
  const answers = TRUTH_CASES.map((truthCase) => answer(truthCase, folder));
  const steps = TRUTH_CASES.filter(({ id }) => STEP_CASES.includes(id)).map((truthCase) =>
    stepAnswer(truthCase, folder),
  );
  const source = 'ngspice 39, AC and transient analysis of the netlists of truth/netlist.ts';
  writeFileSync(
    new URL('./ngspice.json', import.meta.url),
    `${JSON.stringify({ source, answers, steps })}\n`,
  );
} finally {
  rmSync(folder, { recursive: true });
}

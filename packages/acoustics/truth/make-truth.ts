// Asks ngspice for the answers that the tests compare with: `node packages/acoustics/truth/make-truth.ts`.
// Needs ngspice on the PATH; the tests need only the file that this writes, truth/ngspice.json.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { TRUTH_CASES, type TruthCase } from './cases.ts';
import { type Netlist, netlistFor } from './netlist.ts';

const STEP = 1e-4; // relative, each side of a frequency, for the delay
const PEAK = Math.SQRT2;

type Phasor = { readonly re: number; readonly im: number };
type Row = Readonly<Record<string, Phasor>>;

const size = ({ re, im }: Phasor) => Math.hypot(re, im);
const angle = ({ re, im }: Phasor) => Math.atan2(im, re);
const ratio = (a: Phasor, b: Phasor): Phasor => {
  const d = b.re ** 2 + b.im ** 2;
  return { re: (a.re * b.re + a.im * b.im) / d, im: (a.im * b.re - a.re * b.im) / d };
};

/** Three rows a frequency: below, at, above. */
function runNgspice(netlist: Netlist, frequenciesHz: readonly number[], folder: string): Row[] {
  const names = Object.keys(netlist.vectors);
  const out = join(folder, 'out.txt');
  const control = frequenciesHz.flatMap((f) => [
    `ac lin 3 ${f * (1 - STEP)} ${f * (1 + STEP)}`,
    `wrdata ${out} ${names.map((name) => netlist.vectors[name]).join(' ')}`,
  ]);
  const lines = [
    ...netlist.lines,
    '.control',
    'set numdgt=15',
    'set appendwrite',
    ...control,
    'quit',
    '.endc',
    '.end',
  ];
  const file = join(folder, 'net.cir');
  writeFileSync(file, `${lines.join('\n')}\n`);
  rmSync(out, { force: true });
  execFileSync('ngspice', ['-b', file], { stdio: ['ignore', 'ignore', 'inherit'] });
  const rows = readFileSync(out, 'utf8').trim().split('\n');
  if (rows.length !== 3 * frequenciesHz.length) throw new Error(`${rows.length} rows from ngspice`);
  return rows.map((row) => {
    const values = row.trim().split(/\s+/).map(Number);
    // Each vector prints as frequency, real, imaginary.
    return Object.fromEntries(
      names.map((name, i) => [
        name,
        { re: values[3 * i + 1] ?? Number.NaN, im: values[3 * i + 2] ?? Number.NaN },
      ]),
    );
  });
}

function answer({ id, input }: TruthCase, folder: string) {
  const netlist = netlistFor(input);
  const rows = runNgspice(netlist, input.frequenciesHz, folder);
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
  const source = 'ngspice 39, AC analysis of the netlists of truth/netlist.ts';
  writeFileSync(new URL('./ngspice.json', import.meta.url), `${JSON.stringify({ source, answers })}\n`);
} finally {
  rmSync(folder, { recursive: true });
}

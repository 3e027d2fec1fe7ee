// Impedance sweeps of boxes with known figures, from ngspice: `node packages/acoustics/truth/make-sweeps.ts` writes
// truth/sweeps.json. The tests of src/measure add seeded noise and ask for the figures back. Needs ngspice on the PATH.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { SoundSystemInput } from '@gusset/contracts/acoustics';
import { medlar12, medlar12Dual, quince10 } from './drivers.ts';
import { netlistFor } from './netlist.ts';

const ROWS_PER_DECADE = 90;

const roundPort = (lengthMm: number) =>
  ({
    mouth: { shape: 'round', diameterMm: 100 },
    outerEnd: { kind: 'flanged' },
    innerEnd: { kind: 'free' },
    sizing: { by: 'length', lengthMm },
  }) as const;

const base = { frequenciesHz: [10], source: { voltageVrms: 1 } } as const;
/** Lossy coil as a real one has it. */
const quince = { ...quince10, leMh: 0.4, l2Mh: 1.3, r2Ohm: 4.2 } as const;

/** No coil and next to no leak: what the lossless formulas mean. */
const bare = { ...medlar12, leMh: 0 } as const;

const CASES: readonly { readonly id: string; readonly input: SoundSystemInput }[] = [
  {
    id: 'closed',
    input: { ...base, driver: quince, enclosure: { kind: 'closed', chamber: { netLitres: 27.9, ql: 15 } } },
  },
  {
    id: 'vented',
    input: {
      ...base,
      driver: medlar12,
      enclosure: { kind: 'vented', chamber: { netLitres: 52.9, ql: 8 }, port: roundPort(384) },
    },
  },
  {
    // The suspension 15 % softer than stated: fs as Cms^-1/2, Vas as Cms.
    id: 'vented-softened',
    input: {
      ...base,
      driver: {
        ...medlar12,
        fsHz: medlar12.fsHz / Math.sqrt(1.15),
        vasLitres: medlar12.vasLitres * 1.15,
        qms: medlar12.qms / Math.sqrt(1.15),
        qes: medlar12.qes / Math.sqrt(1.15),
      },
      enclosure: { kind: 'vented', chamber: { netLitres: 55, ql: 6 }, port: roundPort(370) },
    },
  },
  {
    id: 'vented-two-dual-coils',
    input: {
      ...base,
      source: { voltageVrms: 1, cableOhm: 0.09 },
      driver: medlar12Dual,
      array: { count: 2, seriesPerString: 1, parallelStrings: 2, coilWiring: 'series' },
      enclosure: {
        kind: 'vented',
        chamber: { netLitres: 118, ql: 9 },
        port: { ...roundPort(300), count: 2 },
      },
    },
  },
  {
    id: 'vented-shut',
    input: { ...base, driver: medlar12, enclosure: { kind: 'closed', chamber: { netLitres: 52.9, ql: 8 } } },
  },
  {
    id: 'vented-bare',
    input: {
      ...base,
      driver: bare,
      enclosure: { kind: 'vented', chamber: { netLitres: 52.9, ql: 50 }, port: roundPort(384) },
    },
  },
  {
    id: 'vented-bare-shut',
    input: { ...base, driver: bare, enclosure: { kind: 'closed', chamber: { netLitres: 52.9, ql: 50 } } },
  },
];

function sweepOf(input: SoundSystemInput, folder: string) {
  const { lines, vectors } = netlistFor(input);
  const out = join(folder, 'out.txt');
  const file = join(folder, 'net.cir');
  const control = [
    '.control',
    'set numdgt=12',
    `ac dec ${ROWS_PER_DECADE} 8 800`,
    `wrdata ${out} ${vectors.terminal} ${vectors.current}`,
    'quit',
    '.endc',
    '.end',
  ];
  writeFileSync(file, `${[...lines, ...control].join('\n')}\n`);
  execFileSync('ngspice', ['-b', file], { stdio: ['ignore', 'ignore', 'inherit'] });
  // Each vector prints as frequency, real, imaginary.
  const rows = readFileSync(out, 'utf8')
    .trim()
    .split('\n')
    .map((row) => row.trim().split(/\s+/).map(Number));
  const kept = (value: number) => Number(value.toPrecision(8));
  const quotient = ([, vr = 0, vi = 0, , ir = 1, ii = 0]: number[]) => {
    const size = ir ** 2 + ii ** 2;
    return { re: (vr * ir + vi * ii) / size, im: (vi * ir - vr * ii) / size };
  };
  return {
    frequenciesHz: rows.map(([hz = 0]) => kept(hz)),
    values: rows.map((row) => kept(Math.hypot(quotient(row).re, quotient(row).im))),
    phaseRad: rows.map((row) => kept(Math.atan2(quotient(row).im, quotient(row).re))),
  };
}

const folder = mkdtempSync(join(tmpdir(), 'sweeps-'));
try {
  const sweeps = CASES.map(({ id, input }) => ({ id, input, columns: sweepOf(input, folder) }));
  const source = `ngspice 39, AC analysis of the netlists of truth/netlist.ts, ${ROWS_PER_DECADE} rows a decade`;
  writeFileSync(new URL('./sweeps.json', import.meta.url), `${JSON.stringify({ source, sweeps })}\n`);
} finally {
  rmSync(folder, { recursive: true });
}

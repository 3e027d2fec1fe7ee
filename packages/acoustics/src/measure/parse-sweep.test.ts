import type { SweepKind, SweepReading } from '@gusset/contracts/measurement';
import { isRefusal, type RefusalDetail } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { frequencyGrid } from '../frequency-grid.ts';
import { parseSweep } from './parse-sweep.ts';

const AUTO = { magnitude: 'auto', phase: 'auto' } as const;
const GRID = frequencyGrid({ lowHz: 10, highHz: 400, count: 40 });
const sign = (text: string, decimal: '.' | ',') => text.replace('.', decimal);

/** Forty rows: 10 to 400 Hz, 6.25 ohm, 12.5 degrees. */
function file(between: string, { decimal = '.' as '.' | ',', head = '', phase = '12.5' } = {}): string {
  const rows = GRID.map((hz) =>
    [hz.toFixed(3), '6.250', ...(phase === '' ? [] : [phase])]
      .map((cell) => sign(cell, decimal))
      .join(between),
  );
  return `${head}${rows.join('\n')}\n`;
}

function read(
  text: string,
  kind: SweepKind = 'impedance',
  units: Parameters<typeof parseSweep>[2] = AUTO,
): SweepReading {
  const answer = parseSweep(text, kind, units);
  if (isRefusal(answer)) throw new Error(JSON.stringify(answer.refusal));
  return answer;
}

function refused(text: string, kind: SweepKind = 'impedance'): RefusalDetail {
  const answer = parseSweep(text, kind, AUTO);
  if (!isRefusal(answer)) throw new Error('it was read');
  return answer.refusal;
}

const lines = (rows: readonly (readonly [number, number])[]) => rows.map((row) => row.join(' ')).join('\n');

describe('parseSweep', () => {
  it.each([
    ['tabs', '\t', '.'],
    ['spaces', '   ', '.'],
    ['commas', ',', '.'],
    ['commas and spaces', ', ', '.'],
    ['semicolons', ';', '.'],
    ['tabs and decimal commas', '\t', ','],
    ['semicolons and decimal commas', '; ', ','],
    ['spaces and decimal commas', ' ', ','],
  ] as const)('reads %s', (_, between, decimal) => {
    const { columns, rowsRead, decimalComma } = read(file(between, { decimal }));
    expect(rowsRead).toBe(40);
    expect(decimalComma).toBe(decimal === ',');
    expect(columns.frequenciesHz[0]).toBe(10);
    expect(columns.values.every((ohm) => ohm === 6.25)).toBe(true);
    expect(columns.phaseRad?.[7]).toBeCloseTo((12.5 * Math.PI) / 180, 6);
  });
  it.each([
    '* made by a meter\n* Freq Ohm Phase(deg)\n',
    'Hz\tohm\tdeg\n',
    '"Frequency","Impedance"\n\n',
    '\uFEFF# note\r\n',
  ])('passes over %j', (head) => {
    expect(read(file('\t', { head })).rowsRead).toBe(40);
  });
  it('reads a file without phase', () => {
    const { columns, phase } = read(file('\t', { phase: '' }));
    expect(columns.phaseRad).toBeNull();
    expect(phase).toBeNull();
  });
  it('takes small phases for radians, unless the header says degrees', () => {
    expect(read(file(' ', { phase: '1.2' })).phase).toBe('radians');
    expect(read(file(' ', { phase: '1.2', head: 'Hz ohm degrees\n' })).phase).toBe('degrees');
    expect(read(file(' ', { phase: '1.2' }), 'impedance', { ...AUTO, phase: 'degrees' }).phase).toBe(
      'degrees',
    );
  });
  it('turns an impedance in dB into ohm', () => {
    const { columns, magnitude } = read(file('\t', { head: 'Hz dB deg\n' }));
    expect(magnitude).toBe('dB');
    expect(columns.values[0]).toBeCloseTo(10 ** (6.25 / 20), 5);
  });
  it('reads levels below nothing in a response', () => {
    expect(read(file(' ').replaceAll('6.250', '-31.5'), 'response').columns.values[3]).toBe(-31.5);
  });
  it('averages a long file in narrow bands', () => {
    const dense = Array.from({ length: 15_000 }, (_, i) => [5 + i * 0.05, 8] as const);
    const { columns, rowsRead } = read(lines(dense));
    expect(rowsRead).toBe(15_000);
    expect(columns.frequenciesHz.length).toBeLessThanOrEqual(2_000);
    expect(columns.values.every((ohm) => ohm === 8)).toBe(true);
  });
});

describe('parseSweep, what it refuses', () => {
  it('names a line that is no row of numbers', () => {
    const text = file('\t').replace('\n', '\nabc\tdef\tghi\n');
    expect(refused(text).why).toContain('line 2 reads “abc\tdef\tghi”');
  });
  it('names the line that goes back in frequency', () => {
    const rows = GRID.map((hz) => [hz, 6] as const);
    const swapped = [...rows.slice(0, 10), [12, 6] as const, ...rows.slice(10)];
    expect(refused(lines(swapped))).toMatchObject({ allowed: 'frequencies that rise from row to row' });
    expect(refused(lines(swapped)).why).toContain('line 11 ');
    expect(refused(lines(swapped)).why).toContain('goes back');
  });
  it('names the line that repeats a frequency', () => {
    const rows = GRID.map((hz) => [hz, 6] as const);
    expect(refused(lines([...rows.slice(0, 5), ...rows.slice(4)])).why).toContain(
      'repeats the frequency of line 5',
    );
  });
  it('names a gap wider than a third of an octave', () => {
    const rows = GRID.filter((hz) => hz < 30 || hz > 60).map((hz) => [hz, 6] as const);
    expect(refused(lines(rows)).why).toContain('jumps from');
    expect(refused(lines(rows)).allowed).toContain('a third of an octave');
  });
  it('names too short a range and too few rows', () => {
    const short = frequencyGrid({ lowHz: 40, highHz: 80, count: 30 }).map((hz) => [hz, 6] as const);
    expect(refused(lines(short)).why).toBe('40 to 80 Hz is too short a range for an impedance sweep');
    expect(refused('20 6\n25 7\n')).toMatchObject({ got: 2 });
  });
  it('names a magnitude that no meter reads', () => {
    expect(refused(file(' ').replace('6.250', '-6.250')).why).toContain('gives a magnitude of -6.25');
  });
  it('says that commas stand both inside and between numbers', () => {
    expect(refused('20,5,6,31,12,5\n21,5,6,33,12,5\n').why).toContain(
      'both inside the numbers and between them',
    );
  });
  it.each(['', '   \n\n', 'no figures here', '* only\n* comments\n'])(
    'says that %j holds no rows',
    (text) => {
      expect(refused(text).why).toBe('no row of figures was found');
    },
  );
  it('takes a coarser microphone calibration, but none with holes of octaves', () => {
    const octaves = [5, 10, 20, 40, 80, 160, 320, 640].map((hz) => [hz, 0.5] as const);
    expect(read(lines(octaves), 'mic-calibration').rowsRead).toBe(8);
    expect(refused(lines(octaves.filter(([hz]) => hz !== 80)), 'mic-calibration').why).toContain(
      'jumps from 40 Hz',
    );
  });
  it('never fails on any text', () => {
    for (const text of [
      '1e999 5\n2 3',
      '\u0000\u0001',
      '1,2,3,4,5,6,7',
      '1;2\n1;2',
      '- -\n+ +',
      '9'.repeat(400),
    ]) {
      expect(isRefusal(parseSweep(text, 'impedance', AUTO))).toBe(true);
    }
  });
});

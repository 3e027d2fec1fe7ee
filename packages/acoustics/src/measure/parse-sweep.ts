// From text columns to a sweep that can be worked with: units, order, gaps and range are checked, and whatever is
// wrong is named by its line.
import {
  type ColumnUnits,
  SWEEP_ROWS_KEPT,
  type SweepColumns,
  type SweepKind,
  type SweepReading,
} from '@gusset/contracts/measurement';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { type TextColumns, type TextRow, textColumns } from './text-columns.ts';

/** Between neighbours in the band that counts: a third of an octave hides a whole resonance. */
const WIDEST_STEP = 2 ** (1 / 3);
/** A microphone's own curve is smooth: an octave between its points is usual. */
const WIDEST_CALIBRATION_STEP = 2;
/** Where steps are looked at, Hz. Below, an even grid of an analyser is coarse by nature; above, nothing is fitted. */
const BAND = { lowHz: 10, highHz: 500 };
const FEWEST_ROWS = 20;
const LEAST_SPAN = 4; // highest over lowest frequency: two octaves
/** Magnitudes in ohm, levels in dB: wider than any meter reads. */
const RANGES = { ohm: { low: 0.01, high: 100_000 }, dB: { low: -250, high: 250 } };
const HIGHEST_HZ = 100_000;
/** Phase columns that never leave ±pi/2 (impedance) or ±pi can't be degrees of a real sweep. */
const HALF_TURN_RAD = Math.PI * 1.001; // with the rounding of a file
const KEPT_FIGURES = 7;
/** Bands for long files: far narrower than any resonance of a car loudspeaker. */
const BANDS_PER_OCTAVE = 96;

const KIND_WORDS: Record<SweepKind, string> = {
  impedance: 'an impedance sweep',
  response: 'a response sweep',
  noise: 'a noise sweep',
  'mic-calibration': 'a microphone calibration',
};

/** Reads a file's text as a sweep of `kind`. Refused with the line, what it says and what would be accepted. */
export function parseSweep(text: string, kind: SweepKind, units: ColumnUnits): SweepReading | Refusal {
  const table = textColumns(text);
  if (isRefusal(table)) return table;
  const magnitude = magnitudeUnit(table, kind, units);
  const phase = phaseUnit(table, units);
  const refusal =
    refuseOrder(table.rows) ??
    refuseValues(table.rows, kind, magnitude) ??
    (kind === 'mic-calibration' ? null : refuseRange(table.rows, kind)) ??
    refuseGaps(table.rows, kind);
  if (refusal !== null) return refusal;
  const columns = toColumns(table.rows, kind === 'impedance' && magnitude === 'dB', phase);
  return {
    columns: kept(columns),
    rowsRead: table.rows.length,
    magnitude,
    phase,
    decimalComma: table.decimalComma,
  };
}

function magnitudeUnit({ header }: TextColumns, kind: SweepKind, { magnitude }: ColumnUnits): 'ohm' | 'dB' {
  if (kind !== 'impedance') return 'dB';
  if (magnitude !== 'auto') return magnitude;
  return /\bdb\b|decibel/.test(header) && !/ohm|Ω|ω/.test(header) ? 'dB' : 'ohm';
}

/** Header words first; else by how far the column goes. Null where rows have no third column throughout. */
function phaseUnit({ rows, header }: TextColumns, { phase }: ColumnUnits): 'degrees' | 'radians' | null {
  if (!rows.every(({ figures }) => figures.length === 3)) return null;
  if (phase !== 'auto') return phase;
  if (/\brad(ian)?s?\b/.test(header)) return 'radians';
  if (/\bdeg(ree)?s?\b|°/.test(header)) return 'degrees';
  const farthest = rows.reduce((most, { figures }) => Math.max(most, Math.abs(figures[2] ?? 0)), 0);
  return farthest <= HALF_TURN_RAD ? 'radians' : 'degrees';
}

function refuseOrder(rows: readonly TextRow[]): Refusal | null {
  for (const [i, row] of rows.entries()) {
    const [hz = 0] = row.figures;
    if (!(hz > 0 && hz <= HIGHEST_HZ)) {
      return atLine(row, `frequencies above 0 and up to ${HIGHEST_HZ} Hz`, `gives the frequency ${hz} Hz`);
    }
    const before = rows[i - 1];
    if (before === undefined) continue;
    const [beforeHz = 0] = before.figures;
    const rising = 'frequencies that rise from row to row';
    if (hz === beforeHz) return atLine(row, rising, `repeats the frequency of line ${before.line}`);
    if (hz < beforeHz)
      return atLine(row, rising, `goes back from ${beforeHz} Hz (line ${before.line}) to ${hz} Hz`);
  }
  return null;
}

function refuseValues(rows: readonly TextRow[], kind: SweepKind, unit: 'ohm' | 'dB'): Refusal | null {
  const { low, high } = RANGES[unit];
  const outside = rows.find(({ figures: [, value = 0] }) => value < low || value > high);
  if (outside === undefined) return null;
  const what = kind === 'impedance' ? 'magnitude' : 'level';
  return atLine(
    outside,
    `a ${what} from ${low} to ${high} ${unit === 'ohm' ? 'Ω' : 'dB'} in the second column`,
    `gives a ${what} of ${outside.figures[1]}`,
  );
}

function refuseRange(rows: readonly TextRow[], kind: SweepKind): Refusal | null {
  const lowHz = rows[0]?.figures[0] ?? 0;
  const highHz = rows.at(-1)?.figures[0] ?? 0;
  if (rows.length < FEWEST_ROWS) {
    return refuse('text', {
      allowed: `at least ${FEWEST_ROWS} rows`,
      got: rows.length,
      why: `${rows.length} ${rows.length === 1 ? 'row is' : 'rows are'} too few for ${KIND_WORDS[kind]}`,
    });
  }
  if (highHz / lowHz >= LEAST_SPAN) return null;
  return refuse('text', {
    allowed: 'at least two octaves from the first row to the last, such as 10 to 200 Hz',
    got: `${lowHz} to ${highHz} Hz`,
    why: `${lowHz} to ${highHz} Hz is too short a range for ${KIND_WORDS[kind]}`,
  });
}

function refuseGaps(rows: readonly TextRow[], kind: SweepKind): Refusal | null {
  const widest = kind === 'mic-calibration' ? WIDEST_CALIBRATION_STEP : WIDEST_STEP;
  for (const [i, row] of rows.entries()) {
    const before = rows[i - 1];
    const [hz = 0] = row.figures;
    const [beforeHz = hz] = before?.figures ?? [];
    if (
      before === undefined ||
      hz <= BAND.lowHz ||
      beforeHz >= BAND.highHz ||
      hz / beforeHz <= widest * 1.001
    )
      continue;
    const step = kind === 'mic-calibration' ? 'an octave' : 'a third of an octave';
    return atLine(
      row,
      `steps of at most ${step} between ${BAND.lowHz} and ${BAND.highHz} Hz`,
      `jumps from ${beforeHz} Hz (line ${before.line}) to ${hz} Hz`,
    );
  }
  return null;
}

function atLine({ line, text }: TextRow, allowed: string, what: string): Refusal {
  return refuse('text', { allowed, got: text, why: `line ${line} (“${text.slice(0, 60)}”) ${what}` });
}

function toColumns(
  rows: readonly TextRow[],
  fromDb: boolean,
  phase: 'degrees' | 'radians' | null,
): SweepColumns {
  const perUnit = phase === 'degrees' ? Math.PI / 180 : 1;
  return {
    frequenciesHz: rows.map(({ figures }) => figures[0] ?? 0),
    values: rows.map(({ figures: [, value = 0] }) => (fromDb ? 10 ** (value / 20) : value)),
    phaseRad: phase === null ? null : rows.map(({ figures }) => (figures[2] ?? 0) * perUnit),
  };
}

/** As is where it fits; else means of narrow bands. */
function kept(columns: SweepColumns): SweepColumns {
  const { frequenciesHz, values, phaseRad } =
    columns.frequenciesHz.length <= SWEEP_ROWS_KEPT ? columns : inBands(columns);
  return {
    frequenciesHz: frequenciesHz.map(rounded),
    values: values.map(rounded),
    phaseRad: phaseRad?.map(rounded) ?? null,
  };
}

function inBands({ frequenciesHz, values, phaseRad }: SweepColumns): SweepColumns {
  const bands = new Map<number, number[]>();
  for (const [i, hz] of frequenciesHz.entries()) {
    const band = Math.round(Math.log2(hz) * BANDS_PER_OCTAVE);
    const rows = bands.get(band);
    if (rows === undefined) bands.set(band, [i]);
    else rows.push(i);
  }
  const groups = [...bands.values()].slice(0, SWEEP_ROWS_KEPT);
  const mean = (column: readonly number[]) =>
    groups.map((rows) => rows.reduce((sum, i) => sum + (column[i] ?? 0), 0) / rows.length);
  return {
    frequenciesHz: mean(frequenciesHz),
    values: mean(values),
    phaseRad: phaseRad === null ? null : mean(phaseRad),
  };
}

function rounded(value: number): number {
  return Number(value.toPrecision(KEPT_FIGURES));
}

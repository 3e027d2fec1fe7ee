// How one value stands in a cell, written and read by the same object so that both directions agree.
import {
  decimalOf,
  type FigureUnit,
  isRefusal,
  parseLength,
  parseMass,
  parseMoney,
  parseNumber,
  parsePercent,
  parseVolume,
  type Refusal,
} from '@gusset/units';

export type CellReading = { readonly value: unknown } | { readonly why: string };

export type CsvCell = {
  /** Units that a header may name; the first is the one we write; none = the cell has no unit. */
  readonly units: readonly string[];
  readonly write: (value: unknown) => string;
  /** `unit`: the one that the file's header names. Never called for an empty cell. */
  readonly read: (text: string, unit: string) => CellReading;
};

/** Twelve digits say more than any tape, and drop what floating point adds. */
const SIGNIFICANT_DIGITS = 12;
/** Ranges are the contract's business; this only keeps absurd numbers out. */
const LARGEST = 1e9;

const plainFigure = (value: unknown, factor = 1): string =>
  typeof value === 'number' ? String(Number((value * factor).toPrecision(SIGNIFICANT_DIGITS))) : '';

const readingOf = <T>(read: T | Refusal, take: (read: T) => unknown): CellReading =>
  isRefusal(read) ? { why: read.refusal.why } : { value: take(read) };

export const text: CsvCell = {
  units: [],
  write: (value) => (typeof value === 'string' ? value : ''),
  read: (typed) => ({ value: typed }),
};

/** A figure in the unit of the column; the reader takes the unit's usual spellings too. */
export function figure(unit: string, reads: FigureUnit = 'none'): CsvCell {
  return {
    units: unit === '' ? [] : [unit],
    write: (value) => plainFigure(value),
    read: (typed) =>
      readingOf(parseNumber(typed, { unit: reads, min: -LARGEST, max: LARGEST }), ({ value }) => value),
  };
}

/** Whatever the tape says: 438, 17 1/4", 1' 5 1/4". Bare numbers are in the unit that the header names. */
export const length: CsvCell = {
  units: ['mm', 'in'],
  write: (value) => plainFigure(value),
  read: (typed, unit) =>
    readingOf(parseLength(typed, { unit: unit === 'in' ? 'in' : 'mm', minMm: 0 }), ({ mm }) => mm),
};

/** A length that is kept in metres. */
export const lengthInMetres: CsvCell = {
  units: ['mm', 'in'],
  write: (value) => plainFigure(value, 1000),
  read: (typed, unit) =>
    readingOf(parseLength(typed, { unit: unit === 'in' ? 'in' : 'mm', minMm: 0 }), ({ mm }) => mm / 1000),
};

export const litres: CsvCell = {
  units: ['L'],
  write: (value) => plainFigure(value),
  read: (typed) => readingOf(parseVolume(typed, { unit: 'L' }), (volume) => volume.litres),
};

export const kilograms: CsvCell = {
  units: ['kg'],
  write: (value) => plainFigure(value),
  read: (typed) => readingOf(parseMass(typed, { unit: 'kg' }), (mass) => mass.kg),
};

export const percent: CsvCell = {
  units: ['%'],
  write: (value) => plainFigure(value, 0.01),
  read: (typed) =>
    readingOf(parsePercent(typed, { maxBasisPoints: 100_000 }), ({ basisPoints }) => basisPoints),
};

/** An amount with a point before the cents, whatever the shop's own writing; a lone comma is read as that point. */
export function amount(currency: string): CsvCell {
  return {
    units: [currency],
    write: (value) => (typeof value === 'number' ? decimalOf({ minor: value, currency }) : ''),
    read: (typed) =>
      readingOf(
        parseMoney(/^\d+,\d{1,2}$/.test(typed) ? typed.replace(',', '.') : typed, { currency, locale: 'en' }),
        ({ minor }) => minor,
      ),
  };
}

const YES = new Set(['yes', 'y', 'true', '1', 'x']);
const NO = new Set(['no', 'n', 'false', '0']);

export const yesNo: CsvCell = {
  units: [],
  write: (value) => (value === true ? 'yes' : 'no'),
  read(typed) {
    const word = typed.toLowerCase();
    if (YES.has(word)) return { value: true };
    return NO.has(word) ? { value: false } : { why: 'Write yes or no.' };
  },
};

export function choice(options: readonly string[]): CsvCell {
  return {
    units: [],
    write: (value) => (typeof value === 'string' ? value : ''),
    read(typed) {
      const wanted = typed.toLowerCase().replaceAll(' ', '-');
      const found = options.find((option) => option.toLowerCase() === wanted);
      return found === undefined ? { why: `Use one of these: ${options.join(', ')}.` } : { value: found };
    },
  };
}

const RATING = /^(\d+(?:\.\d+)?)\s*:\s*(\d+(?:\.\d+)?)$/;

/** Power by load: `4:300; 2:500`. */
export const ratings: CsvCell = {
  units: ['ohm:W'],
  write: (value) => (Array.isArray(value) ? value.map(writeRating).join('; ') : ''),
  read(typed) {
    const pairs = typed.split(';').map((pair) => RATING.exec(pair.trim()));
    const read = pairs.flatMap((pair) =>
      pair === null ? [] : [{ loadOhm: Number(pair[1]), watts: Number(pair[2]) }],
    );
    return read.length === pairs.length
      ? { value: read }
      : { why: 'Write load and power in pairs, such as 4:300; 2:500.' };
  },
};

function writeRating(rating: unknown): string {
  if (typeof rating !== 'object' || rating === null || !('loadOhm' in rating && 'watts' in rating)) return '';
  return `${plainFigure(rating.loadOhm)}:${plainFigure(rating.watts)}`;
}

// The field used all day: one length, typed the way the tape or the drawing says it, to exact millimetres.
import { MM_PER_FOOT, MM_PER_INCH, storedMm } from './conversion.ts';
import { formatLength, type LengthUnit } from './format-length.ts';
import { LENGTH_WORDS, type LengthTerm, readLengthTerms, type TypedLengthUnit } from './length-terms.ts';
import { asks, isProblem, type Problem, problemSentence, says } from './problem.ts';
import { type Refusal, refuse } from './refusal.ts';
import { plainTyping, shownTyping, TYPED_LIMIT_CHARS } from './typed-text.ts';
import { tokenize } from './typed-tokens.ts';

export type LengthOptions = {
  /** What a bare number means. */
  readonly unit: LengthUnit;
  /** Smallest length the field takes; negative lengths are for offsets only. */
  readonly minMm?: number | undefined;
  readonly maxMm?: number | undefined;
  /** Path of the field, for the refusal. */
  readonly field?: string | undefined;
  /** The shop writes 17,25. */
  readonly decimalComma?: boolean | undefined;
};

export type TypedLength = {
  /** Whole nanometres, in millimetres. */
  readonly mm: number;
  /** As typed, to be shown again. */
  readonly typed: string;
  /** The unit in which `typed` reads as `mm` again. */
  readonly unit: LengthUnit;
  /** What a person should know about the reading: `17 18/16 was read as 18 1/8`. */
  readonly note: string | null;
};

/** No vehicle, sheet or cable run in the shop is longer. */
export const LENGTH_LIMIT_MM = 100_000;

const MM_PER: Readonly<Record<TypedLengthUnit, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  in: MM_PER_INCH,
  ft: MM_PER_FOOT,
};

/** Reads a typed length, or refuses with the sentence to show at the field. Never throws. */
export function parseLength(text: string, options: LengthOptions): TypedLength | Refusal {
  const read = text.length > TYPED_LIMIT_CHARS ? TOO_LONG : readLength(text, options);
  if (isProblem(read)) return refuseLength(text, options, problemSentence(read, lengthExample(options)));
  if (!isInRange(read.mm, options)) return refuseLength(text, options, rangeSentence(read, text, options));
  return {
    mm: read.mm,
    typed: text,
    unit: read.unit,
    note: read.notes.length > 0 ? `${read.notes.join('; ')}.` : null,
  };
}

const TOO_LONG: Problem = says(`That is longer than ${TYPED_LIMIT_CHARS} characters.`);

type ReadLength = {
  readonly mm: number;
  readonly unit: LengthUnit;
  readonly bare: boolean;
  readonly notes: readonly string[];
};

function readLength(text: string, options: LengthOptions): ReadLength | Problem {
  const plain = plainTyping(text);
  if (plain === '') return says('Nothing is typed yet.');
  const tokens = tokenize(plain, LENGTH_WORDS, options.decimalComma ?? false);
  if (isProblem(tokens)) return tokens;
  const terms = readLengthTerms(tokens);
  if (isProblem(terms)) return terms;
  const bareUnit = unitOfBareNumbers(terms, options.unit);
  if (isProblem(bareUnit)) return bareUnit;
  const mm = storedMm(terms.reduce((sum, term) => sum + term.value * MM_PER[term.unit ?? bareUnit.unit], 0));
  const bare = terms.some((term) => term.unit === null);
  const written = terms[0]?.unit;
  const writtenIn = written === 'in' || written === 'ft' ? 'in' : 'mm';
  const notes = [...terms.flatMap((term) => term.notes), ...(bareUnit.note === null ? [] : [bareUnit.note])];
  return { mm, unit: bare ? options.unit : writtenIn, bare, notes };
}

/** In a millimetre field a bare fraction of the tape (1/2 … 1/64) can only be inches; other mixtures are asked. */
function unitOfBareNumbers(
  terms: readonly LengthTerm[],
  fieldUnit: LengthUnit,
): { readonly unit: LengthUnit; readonly note: string | null } | Problem {
  const bare = terms.filter((term) => term.unit === null);
  const fractions = bare.flatMap((term) => (term.fraction === null ? [] : [term.fraction]));
  const [first] = fractions;
  if (fieldUnit === 'in' || first === undefined) return { unit: fieldUnit, note: null };
  const written = `${first.over}/${first.under}`;
  if (bare.length > fractions.length) {
    return asks('Is that in millimetres or in inches? Put mm or in behind each number.');
  }
  if (!fractions.every(({ over, under }) => over < under && TAPE_DIVISIONS.includes(under))) {
    return asks(
      `Is ${written} a division in millimetres, or inches? Type mm behind the first number, or in behind the fraction.`,
    );
  }
  return { unit: 'in', note: 'The fraction was read as inches' };
}

const TAPE_DIVISIONS: readonly number[] = [2, 4, 8, 16, 32, 64];

function rangeSentence(read: ReadLength, text: string, options: LengthOptions): string {
  const otherUnit = options.unit === 'mm' ? 'in' : 'mm';
  const other = read.bare ? readLength(text, { ...options, unit: otherUnit }) : null;
  const otherFits = other !== null && !isProblem(other) && isInRange(other.mm, options);
  const name = otherUnit === 'in' ? 'inches' : 'millimetres';
  const hint = otherFits ? ` If it is in ${name}, type ${otherUnit} behind it.` : '';
  return `${shownInField(read.mm, options)} is outside this field: it takes ${rangeShown(options)}.${hint}`;
}

function isInRange(
  mm: number,
  { minMm = -LENGTH_LIMIT_MM, maxMm = LENGTH_LIMIT_MM }: LengthOptions,
): boolean {
  return mm >= minMm && mm <= maxMm;
}

function rangeShown(options: LengthOptions): string {
  const { minMm, maxMm = LENGTH_LIMIT_MM } = options;
  const most = shownInField(maxMm, options);
  return minMm === undefined ? `at most ${most}` : `${shownInField(minMm, options)} to ${most}`;
}

function shownInField(mm: number, { unit, decimalComma }: LengthOptions): string {
  return formatLength(mm, { unit, decimalComma, style: unit === 'in' ? 'drawing' : 'plain' });
}

function lengthExample({ unit, decimalComma = false }: LengthOptions): string {
  const sign = decimalComma ? ',' : '.';
  return unit === 'mm'
    ? `Type a length such as 438, 43${sign}8 cm or 17 1/4 in.`
    : `Type a length such as 17 1/4, 17${sign}25 or 438 mm.`;
}

function refuseLength(text: string, options: LengthOptions, why: string): Refusal {
  return refuse(options.field ?? 'length', { allowed: rangeShown(options), got: shownTyping(text), why });
}

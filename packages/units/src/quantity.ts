// One number with its unit, for the quantities that aren't lengths: volume, area, mass, temperature, angle,
// electrical figures. Same typing as lengths (fractions, either decimal sign), without sums.
import { isSign, readMixedNumber } from './mixed-number.ts';
import { asks, isProblem, type Problem, problemSentence, says } from './problem.ts';
import { type Refusal, refuse } from './refusal.ts';
import { plainTyping, shownTyping, TYPED_LIMIT_CHARS } from './typed-text.ts';
import { type Token, tokenize, type Vocabulary } from './typed-tokens.ts';

/** How one quantity is typed. `Unit` are its own names; the base unit is the engine's. */
export type QuantityKind<Unit extends string> = {
  readonly words: Vocabulary<Unit>;
  readonly toBase: (value: number, unit: Unit) => number;
  /** `Type a volume such as 42.5 L or 1.5 ft³.` */
  readonly example: string;
};

export type QuantityOptions<Unit extends string> = {
  /** What a bare number means. */
  readonly unit: Unit;
  /** Range in the base unit. */
  readonly min: number;
  readonly max: number;
  /** The range as the person reads it: `0 L to 2000 L`. */
  readonly allowed: string;
  readonly field: string;
  readonly decimalComma?: boolean | undefined;
};

export type ReadQuantity<Unit extends string> = {
  readonly base: number;
  readonly typed: string;
  readonly unit: Unit;
  readonly note: string | null;
};

/** Reads one quantity, or refuses with the sentence to show at the field. Never throws. */
export function readQuantity<Unit extends string>(
  text: string,
  kind: QuantityKind<Unit>,
  options: QuantityOptions<Unit>,
): ReadQuantity<Unit> | Refusal {
  const { field, allowed } = options;
  const read = readAlone(text, kind, options);
  if (isProblem(read)) {
    return refuse(field, { allowed, got: shownTyping(text), why: problemSentence(read, kind.example) });
  }
  const base = kind.toBase(read.value, read.unit);
  if (base < options.min || base > options.max) {
    return refuse(field, {
      allowed,
      got: shownTyping(text),
      why: `That is outside this field: it takes ${allowed}.`,
    });
  }
  return {
    base: base === 0 ? 0 : base,
    typed: text,
    unit: read.unit,
    note: read.note === null ? null : `${read.note}.`,
  };
}

type Alone<Unit extends string> = {
  readonly value: number;
  readonly unit: Unit;
  readonly note: string | null;
};

function readAlone<Unit extends string>(
  text: string,
  kind: QuantityKind<Unit>,
  options: QuantityOptions<Unit>,
): Alone<Unit> | Problem {
  const tokens = tokensOf(text, kind.words, options.decimalComma);
  if (isProblem(tokens)) return tokens;
  const signed = isSign(tokens[0], '-') || isSign(tokens[0], '+');
  const number = readMixedNumber(tokens, signed ? 1 : 0);
  if (isProblem(number)) return number;
  const unitToken = tokens[number.next];
  const unit = unitToken?.kind === 'unit' ? unitToken.unit : null;
  const rest = tokens.slice(unit === null ? number.next : number.next + 1);
  if (rest.length > 0) return leftOver(text, rest);
  const value = isSign(tokens[0], '-') ? -number.value : number.value;
  return { value, unit: unit ?? options.unit, note: number.note };
}

/** Typing made plain and cut into tokens, with the checks that every quantity shares. */
export function tokensOf<Unit extends string>(
  text: string,
  words: Vocabulary<Unit>,
  decimalComma = false,
): readonly Token<Unit>[] | Problem {
  if (text.length > TYPED_LIMIT_CHARS) return says(`That is longer than ${TYPED_LIMIT_CHARS} characters.`);
  const plain = plainTyping(text);
  return plain === '' ? says('Nothing is typed yet.') : tokenize(plain, words, decimalComma);
}

function leftOver<Unit extends string>(text: string, rest: readonly Token<Unit>[]): Problem {
  const range = isSign(rest[0], '-') && rest[1]?.kind === 'number';
  return range
    ? asks(`Is ${shownTyping(text)} a range? Type the one figure to work with.`)
    : says('Something is left over behind the number.');
}

/** Fixed decimals with the shop's sign, minus as a minus; -0 never shows. */
export function fixedText(value: number, digits: number, decimalComma = false): string {
  const size = Math.abs(value).toFixed(digits);
  const text = decimalComma ? size.replace('.', ',') : size;
  return value < 0 && Number(size) !== 0 ? `\u2212${text}` : text;
}

/** As many decimals as needed, at most `digits`; minus as a minus, never -0. */
export function trimmedText(value: number, digits: number, decimalComma = false): string {
  const size = String(Number(Math.abs(value).toFixed(digits)));
  const text = decimalComma ? size.replace('.', ',') : size;
  return value < 0 && size !== '0' ? `\u2212${text}` : text;
}

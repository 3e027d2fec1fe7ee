// The grammar of one length field: terms added and taken away, each a length with or without a unit, multiplied
// or divided by plain numbers. Dashes are the trap: they join a fraction to its whole (17-1/4) and inches to
// feet (1'-5"), so a dash with spaces round it, where either reading is possible, is asked about.
import { isSign, numberAt, readMixedNumber } from './mixed-number.ts';
import { asks, isProblem, type Problem, says } from './problem.ts';
import { type Token, vocabulary } from './typed-tokens.ts';

export type TypedLengthUnit = 'mm' | 'cm' | 'm' | 'in' | 'ft';

export const LENGTH_WORDS = vocabulary<TypedLengthUnit>({
  mm: ['mm', 'mm.', 'millimetre', 'millimetres', 'millimeter', 'millimeters'],
  cm: ['cm', 'cm.', 'centimetre', 'centimetres', 'centimeter', 'centimeters'],
  m: ['m', 'metre', 'metres', 'meter', 'meters'],
  in: ['"', 'in', 'in.', 'inch', 'inches'],
  ft: ["'", 'ft', 'ft.', 'foot', 'feet'],
});

type Tokens = readonly Token<TypedLengthUnit>[];

/** One term of the sum. `value` counts in `unit`; a null unit is the field's own. */
export type LengthTerm = {
  readonly value: number;
  readonly unit: TypedLengthUnit | null;
  readonly fraction: { readonly over: number; readonly under: number } | null;
  readonly notes: readonly string[];
};

type Read = LengthTerm & { readonly next: number };

/** All terms, signs counted in, from tokens that are all used up. */
export function readLengthTerms(tokens: Tokens): readonly LengthTerm[] | Problem {
  const terms: LengthTerm[] = [];
  let at = 0;
  while (at < tokens.length) {
    const signed = isSign(tokens[at], '+') || isSign(tokens[at], '-');
    if (!signed && terms.length > 0) return strayProblem(tokens, at);
    const factor = isSign(tokens[at], '-') ? -1 : 1;
    const term = readTerm(tokens, signed ? at + 1 : at);
    if (isProblem(term)) return term;
    terms.push({ ...term, value: factor * term.value });
    at = term.next;
  }
  return terms.length > 0 ? terms : says('Nothing is typed yet.');
}

function strayProblem(tokens: Tokens, at: number): Problem {
  const token = tokens[at];
  if (token?.kind === 'number') return says('Two lengths stand side by side: put a + or - between them.');
  return isSign(token, 'x')
    ? asks('Is that a product or two sizes? Type * for times, or one size in each field.')
    : says('Something is left over behind the length.');
}

/** `2*18`, `18 mm*2`, `438 mm/2`: one length at most, the rest plain numbers. */
function readTerm(tokens: Tokens, start: number): Read | Problem {
  const first = readFactor(tokens, start);
  if (isProblem(first)) return first;
  let term: Read = first;
  for (let sign = tokens[term.next]; sign?.kind === 'sign'; sign = tokens[term.next]) {
    if (sign.sign !== '*' && sign.sign !== '/' && sign.sign !== '÷') break;
    const factor = readFactor(tokens, term.next + 1);
    if (isProblem(factor)) return factor;
    const combined = sign.sign === '*' ? times(term, factor) : over(term, factor);
    if (isProblem(combined)) return combined;
    term = combined;
  }
  return term;
}

function times(left: Read, right: Read): Read | Problem {
  if (left.unit !== null && right.unit !== null) {
    return says('A length times a length is an area: type one of them without a unit.');
  }
  return { ...joined(left, right), value: left.value * right.value, unit: left.unit ?? right.unit };
}

function over(left: Read, right: Read): Read | Problem {
  if (right.unit !== null) return says('A length can be divided by a plain number only.');
  if (right.value === 0) return says('Nothing can be divided by 0.');
  return { ...joined(left, right), value: left.value / right.value, unit: left.unit };
}

function joined(left: Read, right: Read): Pick<Read, 'fraction' | 'notes' | 'next'> {
  return {
    fraction: left.fraction ?? right.fraction,
    notes: [...left.notes, ...right.notes],
    next: right.next,
  };
}

/** One number with its unit, or feet with their inches. */
function readFactor(tokens: Tokens, at: number): Read | Problem {
  const number = readMixedNumber(tokens, at);
  if (isProblem(number)) return number;
  const unit = unitAt(tokens, number.next);
  const next = unit === null ? number.next : number.next + 1;
  const notes = number.note === null ? [] : [number.note];
  if (number.fraction !== null && (unit === 'mm' || unit === 'cm' || unit === 'm')) {
    const decimal = Number(number.value.toFixed(6));
    return asks(
      `Is that ${decimal} ${unit}, or inches? Fractions are for inches: type ${decimal} ${unit}, or "in" behind the fraction.`,
    );
  }
  const read: Read = { value: number.value, unit, fraction: number.fraction, notes, next };
  return unit === 'ft' ? readInchesBehindFeet(tokens, read) : read;
}

/** `1' 5 1/4"`, `1'-5`, `1 ft 5 in`. A dash before a metric length, or before a product, takes away. */
function readInchesBehindFeet(tokens: Tokens, feet: Read): Read | Problem {
  const dash = isSign(tokens[feet.next], '-');
  const start = dash ? feet.next + 1 : feet.next;
  if (numberAt(tokens, start) === null) return feet;
  const inches = readMixedNumber(tokens, start);
  if (isProblem(inches)) return inches;
  const unit = unitAt(tokens, inches.next);
  const behind = tokens[unit === null ? inches.next : inches.next + 1];
  const scaled = isSign(behind, '*') || isSign(behind, '/') || isSign(behind, '÷');
  if (unit !== null && unit !== 'in') {
    return dash ? feet : says('Feet go with inches: put a + before a length in another unit.');
  }
  if (dash && scaled) return feet;
  if (dash && !isTightDash(tokens, feet.next)) {
    const shown = `${Number(feet.value.toFixed(6))} ft`;
    const part = `${Number(inches.value.toFixed(6))} in`;
    return asks(`Is that ${shown} ${part}, or ${shown} minus ${part}? Type ${shown} ${part}, or the result.`);
  }
  return {
    value: feet.value + inches.value / 12,
    unit: 'ft',
    fraction: inches.fraction ?? feet.fraction,
    notes: [...feet.notes, ...(inches.note === null ? [] : [inches.note])],
    next: unit === null ? inches.next : inches.next + 1,
  };
}

function isTightDash(tokens: Tokens, at: number): boolean {
  const [dash, number] = [tokens[at], tokens[at + 1]];
  return dash?.kind === 'sign' && !dash.spaceBefore && number?.kind === 'number' && !number.spaceBefore;
}

function unitAt(tokens: Tokens, at: number): TypedLengthUnit | null {
  const token = tokens[at];
  return token?.kind === 'unit' ? token.unit : null;
}

// Plain typing -> numbers, signs and unit words. Every reader (lengths, volumes, masses…) brings its own words.
import { readNumeral } from './numeral.ts';
import { asks, isProblem, type Problem, says } from './problem.ts';

export type NumberToken = {
  readonly kind: 'number';
  readonly text: string;
  readonly value: number;
  /** No decimal sign: may be a part of a fraction. */
  readonly whole: boolean;
  readonly spaceBefore: boolean;
};
export type UnitToken<Unit extends string> = { readonly kind: 'unit'; readonly unit: Unit };
export type Sign = '+' | '-' | '*' | '/' | '÷' | 'x';
export type SignToken = { readonly kind: 'sign'; readonly sign: Sign; readonly spaceBefore: boolean };
export type Token<Unit extends string> = NumberToken | UnitToken<Unit> | SignToken;

export type Vocabulary<Unit extends string> = {
  readonly longestChars: number;
  readonly exact: ReadonlyMap<string, Unit>;
  /** Lower-cased spellings, without those that mean different units in different case (mΩ, MΩ). */
  readonly anyCase: ReadonlyMap<string, Unit>;
};

/** Spellings of each unit, as people type them. */
export function vocabulary<Unit extends string>(
  spellings: Readonly<Record<Unit, readonly string[]>>,
): Vocabulary<Unit> {
  const exact = new Map<string, Unit>();
  const unitsByLower = new Map<string, Set<Unit>>();
  for (const unit of Object.keys(spellings) as Unit[]) {
    // keys of the record are its units
    for (const spelling of spellings[unit]) {
      exact.set(spelling, unit);
      const lower = spelling.toLowerCase();
      unitsByLower.set(lower, (unitsByLower.get(lower) ?? new Set<Unit>()).add(unit));
    }
  }
  const anyCase = new Map<string, Unit>();
  for (const [lower, units] of unitsByLower) {
    const [only, ...others] = units;
    if (only !== undefined && others.length === 0) anyCase.set(lower, only);
  }
  return { longestChars: Math.max(0, ...[...exact.keys()].map((word) => word.length)), exact, anyCase };
}

const SIGNS: Readonly<Record<string, Sign>> = {
  '+': '+',
  '-': '-',
  '*': '*',
  '/': '/',
  '÷': '÷',
  '×': 'x',
  x: 'x',
  X: 'x',
};

/** Plain typing (see `plainTyping`) cut into tokens, or the sentence that says which part can't be read. */
export function tokenize<Unit extends string>(
  plain: string,
  words: Vocabulary<Unit>,
  decimalComma: boolean,
): readonly Token<Unit>[] | Problem {
  const tokens: Token<Unit>[] = [];
  let at = 0;
  while (at < plain.length) {
    const spaceBefore = plain[at] === ' ';
    if (spaceBefore) at += 1;
    const numeral = /[\d.,]*\d[\d.,]*/y;
    numeral.lastIndex = at;
    const digits = numeral.exec(plain)?.[0];
    if (digits !== undefined) {
      const token = numberToken(digits, spaceBefore, decimalComma);
      if (isProblem(token)) return token;
      tokens.push(token);
      at += digits.length;
      continue;
    }
    const word = unitAt(plain, at, words);
    if (word !== null) {
      tokens.push({ kind: 'unit', unit: word.unit });
      at += word.chars;
      continue;
    }
    const sign = SIGNS[plain[at] ?? ''];
    if (sign === undefined) return says('Part of that is neither a number nor a unit known here.');
    tokens.push({ kind: 'sign', sign, spaceBefore });
    at += 1;
  }
  return tokens;
}

function numberToken(text: string, spaceBefore: boolean, decimalComma: boolean): NumberToken | Problem {
  const reading = readNumeral(text, decimalComma);
  if (reading.kind === 'number')
    return { kind: 'number', text, value: reading.value, whole: reading.whole, spaceBefore };
  if (reading.kind === 'nonsense') return says('The points and commas in that number do not add up.');
  const asDecimal = decimalComma ? reading.decimal.replace('.', ',') : reading.decimal;
  return asks(`Is that ${reading.grouped} or ${asDecimal}? Type ${reading.grouped} or ${asDecimal}0.`);
}

function unitAt<Unit extends string>(
  plain: string,
  at: number,
  words: Vocabulary<Unit>,
): { unit: Unit; chars: number } | null {
  for (let chars = words.longestChars; chars > 0; chars -= 1) {
    const word = plain.slice(at, at + chars);
    if (word.length < chars || runsOn(plain, at + chars)) continue;
    const unit = words.exact.get(word) ?? words.anyCase.get(word.toLowerCase());
    if (unit !== undefined) return { unit, chars };
  }
  return null;
}

/** A letter right behind means that the word goes on: `in` inside `inside`. */
function runsOn(plain: string, at: number): boolean {
  return /\p{L}/u.test(plain[at] ?? '') && /\p{L}/u.test(plain[at - 1] ?? '');
}

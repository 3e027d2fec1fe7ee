// A number as the tape reads it: `17`, `17.25`, `1/4`, `17 1/4`, `17-1/4`.
import { asks, type Problem, says } from './problem.ts';
import type { NumberToken, Token } from './typed-tokens.ts';

export type MixedNumber = {
  readonly value: number;
  /** Null for a plain number. */
  readonly fraction: { readonly over: number; readonly under: number } | null;
  readonly note: string | null;
  /** Index of the first token not read. */
  readonly next: number;
};

/** Reads one number from `tokens[at]` on; what follows it is the caller's business. */
export function readMixedNumber<Unit extends string>(
  tokens: readonly Token<Unit>[],
  at: number,
): MixedNumber | Problem {
  const first = numberAt(tokens, at);
  if (first === null) return says('A number is missing there.');
  const alone = fractionAt(tokens, at);
  if (alone !== null) return alone.under === 0 ? OVER_ZERO : finished(tokens, at + 3, 0, alone, '');
  const behindDash = isSign(tokens[at + 1], '-');
  const start = behindDash ? at + 2 : at + 1;
  const part = fractionAt(tokens, start);
  if (part === null) {
    if (numberAt(tokens, at + 1) !== null) return asks(sideBySide(first, tokens[at + 1]));
    return { value: first.value, fraction: null, note: null, next: at + 1 };
  }
  if (part.under === 0) return OVER_ZERO;
  const written = `${part.over}/${part.under}`;
  if (!first.whole)
    return says(`${first.text} and ${written} mixes a decimal with a fraction: type one of them.`);
  if (behindDash && !(isTight(tokens[at + 1]) && isTight(tokens[start]) && part.over < part.under)) {
    return asks(
      `Is that ${first.text} ${written}, or ${first.text} minus ${written}? Type ${first.text} ${written}, or the result.`,
    );
  }
  return finished(tokens, start + 3, first.value, part, `${first.text} `);
}

const OVER_ZERO: Problem = says('A fraction over 0 has no size.');

function finished<Unit extends string>(
  tokens: readonly Token<Unit>[],
  next: number,
  wholeValue: number,
  part: { over: number; under: number },
  wholeText: string,
): MixedNumber | Problem {
  const written = `${part.over}/${part.under}`;
  const divisor = isSign(tokens[next], '/') ? numberAt(tokens, next + 1) : null;
  if (divisor !== null) {
    return asks(
      `Is that ${wholeText}${written} divided by ${divisor.text}, or ${part.over} divided by ${part.under}/${divisor.text}? Type one fraction.`,
    );
  }
  if (numberAt(tokens, next) !== null) {
    return says(
      fractionAt(tokens, next)
        ? 'That holds two fractions side by side: put a + between them, or type one.'
        : `A number stands right behind ${written}: put a sign or a unit between them.`,
    );
  }
  const value = wholeValue + part.over / part.under;
  const note =
    wholeText !== '' && part.over >= part.under
      ? `${wholeText}${written} was read as ${asMixed(wholeValue, part)}`
      : null;
  return { value, fraction: part, note, next };
}

/** `17 18/16` -> `18 1/8`. */
function asMixed(wholeValue: number, { over, under }: { over: number; under: number }): string {
  const ones = wholeValue + Math.floor(over / under);
  const rest = over % under;
  if (rest === 0) return String(ones);
  const shared = greatestSharedDivisor(rest, under);
  return `${ones} ${rest / shared}/${under / shared}`;
}

export function greatestSharedDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestSharedDivisor(b, a % b);
}

function sideBySide<Unit extends string>(first: NumberToken, second: Token<Unit> | undefined): string {
  const other = second?.kind === 'number' ? second.text : '';
  return `Is that ${first.text}${other}, or two numbers, ${first.text} and ${other}? Put a sign or a unit between them.`;
}

function fractionAt<Unit extends string>(
  tokens: readonly Token<Unit>[],
  at: number,
): { over: number; under: number } | null {
  const over = numberAt(tokens, at);
  const under = numberAt(tokens, at + 2);
  if (over === null || under === null || !isSign(tokens[at + 1], '/')) return null;
  return over.whole && under.whole ? { over: over.value, under: under.value } : null;
}

export function numberAt<Unit extends string>(
  tokens: readonly Token<Unit>[],
  at: number,
): NumberToken | null {
  const token = tokens[at];
  return token?.kind === 'number' ? token : null;
}

export function isSign<Unit extends string>(token: Token<Unit> | undefined, sign: string): boolean {
  return token?.kind === 'sign' && token.sign === sign;
}

function isTight<Unit extends string>(token: Token<Unit> | undefined): boolean {
  return token !== undefined && token.kind !== 'unit' && !token.spaceBefore;
}

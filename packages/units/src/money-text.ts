// Money as typed and as shown. Reading is exact: the digits become minor units without passing a float.
import { dinero, toDecimal } from 'dinero.js/bigint';
import { currencyExponent, type Money, money } from './money.ts';
import { asks, isProblem, type Problem, problemSentence, says } from './problem.ts';
import { type Refusal, refuse } from './refusal.ts';
import { plainTyping, shownTyping, TYPED_LIMIT_CHARS } from './typed-text.ts';

/** `$1,234.50`, `1 234,50 €`, `¥1,235`: symbol, signs and decimals as the locale and the currency have them. */
export function formatMoney(
  amount: Money,
  locale: string,
  format: { readonly display?: 'symbol' | 'code' | undefined } = {},
): string {
  const number = new Intl.NumberFormat(locale, {
    style: 'currency',
    currency: amount.currency,
    currencyDisplay: format.display ?? 'symbol',
  });
  return number.format(decimalOf(amount));
}

/** The amount as a plain decimal, `-1234.50`: for spreadsheets and files. */
export function decimalOf({ minor, currency }: Money): Intl.StringNumericLiteral {
  const exponent = BigInt(currencyExponent(currency));
  const decimal = toDecimal(
    dinero({ amount: BigInt(minor), currency: { code: currency, base: 10n, exponent } }),
  );
  return decimal as Intl.StringNumericLiteral; // toDecimal writes plain decimal digits
}

export type MoneyOptions = {
  readonly currency: string;
  /** The shop's locale: says which signs group and divide, and what its currency sign looks like. */
  readonly locale: string;
  readonly minMinor?: number | undefined;
  readonly maxMinor?: number | undefined;
  readonly field?: string | undefined;
};

/** The most that one document of a shop carries, in minor units: ten milliard cents. */
export const MONEY_LIMIT_MINOR = 1_000_000_000_000;

/** Reads a typed amount to whole minor units, or refuses with the sentence to show at the field. Never throws. */
export function parseMoney(text: string, options: MoneyOptions): Money | Refusal {
  const { currency, locale, minMinor = 0, maxMinor = MONEY_LIMIT_MINOR, field = 'amount' } = options;
  const shown = (minor: number) => formatMoney({ minor, currency }, locale);
  const allowed = `${shown(minMinor)} to ${shown(maxMinor)}`;
  const got = shownTyping(text);
  const minor =
    text.length > TYPED_LIMIT_CHARS ? says('That is too long for an amount.') : readMinor(text, options);
  if (typeof minor !== 'number') {
    const example = `Type an amount such as ${shown(exampleMinor(currency))}.`;
    return refuse(field, { allowed, got, why: problemSentence(minor, example) });
  }
  if (minor < minMinor || minor > maxMinor) {
    return refuse(field, { allowed, got, why: `That is outside this field: it takes ${allowed}.` });
  }
  return money(minor, currency);
}

function readMinor(text: string, options: MoneyOptions): number | Problem {
  const bare = withoutCurrency(plainTyping(text), options);
  if (isProblem(bare)) return bare;
  const negative = bare.text.startsWith('-');
  const digits = bare.text.replace(/^[+-] ?/, '').replace(/(?<=\d)[ '](?=\d{3}(?!\d))/g, '');
  if (digits === '') return says('No amount is typed yet.');
  if (!/^(?=.*\d)[\d.,]+$/.test(digits)) return says('That is not an amount.');
  const parts = splitDecimal(digits, options);
  if (isProblem(parts)) return parts;
  const exponent = currencyExponent(options.currency);
  if (parts.decimals.length > exponent) return says(decimalsSentence(options.currency, exponent));
  const minor = Number(`${parts.whole}${parts.decimals.padEnd(exponent, '0')}`);
  if (!Number.isSafeInteger(minor)) return says('That is more than any document here carries.');
  return negative && minor !== 0 ? -minor : minor;
}

/** 1,234.50, or the same digits in a currency with other decimals. */
function exampleMinor(currency: string): number {
  return Math.trunc(1234.5 * 10 ** currencyExponent(currency));
}

function decimalsSentence(currency: string, exponent: number): string {
  return exponent === 0
    ? `${currency} has no decimals.`
    : `${currency} has ${exponent} decimals: that has more.`;
}

type AmountDigits = { readonly whole: string; readonly decimals: string };

/** Digits before and after the decimal sign; a sign that can only group by thousands does so. */
function splitDecimal(digits: string, { currency, locale }: MoneyOptions): AmountDigits | Problem {
  const signs = new Set(digits.replace(/\d/g, ''));
  const last = digits.charAt(Math.max(digits.lastIndexOf('.'), digits.lastIndexOf(',')));
  const other = last === '.' ? ',' : '.';
  if (signs.size === 0) return { whole: digits, decimals: '' };
  const [front = '', back = '', ...more] = digits.split(last);
  if (signs.size === 1 && isGrouped(digits, last) && (more.length > 0 || last !== decimalSign(locale))) {
    const whole = digits.replaceAll(last, '');
    if (more.length > 0 || currencyExponent(currency) < 3) return { whole, decimals: '' };
    return asks(`Is that ${whole} or ${front}${decimalSign(locale)}${back}? Type one of these.`);
  }
  if (more.length > 0 || (signs.size > 1 && !isGrouped(front, other))) {
    return says('The points and commas in that amount do not add up.');
  }
  return { whole: front.replaceAll(other, '') || '0', decimals: back };
}

function isGrouped(digits: string, sign: string): boolean {
  const [first = '', ...groups] = digits.split(sign);
  return /^[1-9]\d{0,2}$/.test(first) && groups.length > 0 && groups.every((group) => /^\d{3}$/.test(group));
}

function decimalSign(locale: string): '.' | ',' {
  const parts = new Intl.NumberFormat(locale).formatToParts(1.5);
  return parts.some(({ type, value }) => type === 'decimal' && value === ',') ? ',' : '.';
}

/** The amount without its currency's own sign or code; another currency's is refused. */
function withoutCurrency(plain: string, { currency, locale }: MoneyOptions): { text: string } | Problem {
  const own = new Set(
    (['symbol', 'narrowSymbol', 'code'] as const).map((currencyDisplay) => {
      const parts = new Intl.NumberFormat(locale, {
        style: 'currency',
        currency,
        currencyDisplay,
      }).formatToParts(0);
      return plainTyping(parts.find(({ type }) => type === 'currency')?.value ?? currency);
    }),
  );
  const found = plain.match(/[\p{L}\p{Sc}][\p{L}\p{Sc}.]*/u)?.[0] ?? null;
  if (found === null) return { text: plain };
  const isOwn = [...own].some((sign) => sign.toUpperCase() === found.toUpperCase());
  const text = plain.replace(found, '').replace(/\s+/g, ' ').trim();
  if (isOwn) return { text };
  const looksForeign = /\p{Sc}/u.test(found) || KNOWN_CODE.test(found);
  return says(looksForeign ? `This document is in ${currency}, not in ${found}.` : 'That is not an amount.');
}

const KNOWN_CODE = /^[A-Z]{3}$/;

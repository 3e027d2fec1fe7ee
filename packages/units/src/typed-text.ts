// Typed or pasted text -> the plain characters that the readers know. Trap: Unicode NFKC turns `17¼` into
// `171⁄4` and `17²` into `172`, so fractions and raised digits are spelled out, with a space before, first.

/** Longer than any length, price or angle that a person types; longer text is refused unread. */
export const TYPED_LIMIT_CHARS = 120;

const VULGAR_FRACTIONS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅐': '1/7',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅑': '1/9',
  '⅒': '1/10',
  '⅟': '1/',
};

const RAISED_DIGITS = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const LOWERED_DIGITS = '₀₁₂₃₄₅₆₇₈₉';

const MARKS: readonly (readonly [RegExp, string])[] = [
  [/[⁄∕]/gu, '/'],
  [/[\u2010-\u2015\u2212\uFE63\uFF0D]/gu, '-'],
  [/[″‶”“„‟ʺ〃]/gu, '"'],
  [/[′‵’‘‚‛ʹ´`]/gu, "'"],
  [/['＇]{2}/gu, '"'],
  [/º/gu, '°'],
];

/**
 * Fractions spelled out, digits and dashes plain, primes as `'` and `"`, every run of white space one space,
 * invisible marks gone. Case is kept. What it doesn't know stays as it is, for the reader to refuse.
 */
export function plainTyping(text: string): string {
  const spelled = text
    .replace(/\p{Cf}/gu, '')
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒⅟]/gu, (sign) => ` ${VULGAR_FRACTIONS[sign] ?? sign}`)
    .replace(/[⁰¹²³⁴-⁹]+(?=[⁄∕/])/gu, (run) => ` ${digitsFrom(run, RAISED_DIGITS)}`)
    .replace(/(?<=[⁄∕/])[₀-₉]+/gu, (run) => digitsFrom(run, LOWERED_DIGITS));
  const marked = MARKS.reduce((done, [pattern, plain]) => done.replace(pattern, plain), spelled);
  return [...marked]
    .map((character) => (/\p{No}/u.test(character) ? character : character.normalize('NFKC')))
    .join('')
    .replace(/\s+/gu, ' ')
    .trim();
}

/** Up to 60 characters of what came, for a refusal. */
export function shownTyping(text: string): string {
  const characters = [...text.slice(0, TYPED_LIMIT_CHARS)];
  return characters.length > 60 || text.length > TYPED_LIMIT_CHARS
    ? `${characters.slice(0, 60).join('')}…`
    : text;
}

function digitsFrom(run: string, row: string): string {
  return [...run].map((digit) => row.indexOf(digit)).join('');
}

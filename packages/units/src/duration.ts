// Working times: whole minutes inside, hours and minutes to people.
import { isSign, numberAt, readMixedNumber } from './mixed-number.ts';
import { isProblem, type Problem, problemSentence, says } from './problem.ts';
import { tokensOf } from './quantity.ts';
import { type Refusal, refuse } from './refusal.ts';
import { shownTyping } from './typed-text.ts';
import { type Token, vocabulary } from './typed-tokens.ts';

export type TypedMinutes = { readonly minutes: number; readonly typed: string };

type TimeUnit = 'd' | 'h' | 'min' | ':';

const TIME_WORDS = vocabulary<TimeUnit>({
  d: ['d', 'day', 'days'],
  h: ['h', 'hr', 'hrs', 'hour', 'hours'],
  min: ['min', 'min.', 'mins', 'm', 'minute', 'minutes', "'"],
  ':': [':'],
});

const MINUTES_PER: Readonly<Record<Exclude<TimeUnit, ':'>, number>> = { d: 1440, h: 60, min: 1 };
const FALLING: readonly TimeUnit[] = ['d', 'h', 'min'];

/** A year of elapsed time. */
const DURATION_LIMIT_MINUTES = 525_600;

/** Reads `1 h 50`, `1:50`, `1.5 h`, `90 min`, `24 h`; a bare number is minutes. Whole minutes come out. */
export function parseMinutes(
  text: string,
  options: {
    readonly minMinutes?: number | undefined;
    readonly maxMinutes?: number | undefined;
    readonly field?: string | undefined;
    readonly decimalComma?: boolean | undefined;
  } = {},
): TypedMinutes | Refusal {
  const { minMinutes = 0, maxMinutes = DURATION_LIMIT_MINUTES, field = 'minutes', decimalComma } = options;
  const tokens = tokensOf(text, TIME_WORDS, decimalComma);
  const read = isProblem(tokens) ? tokens : readMinutes(tokens);
  const allowed = `${formatMinutes(minMinutes)} to ${formatMinutes(maxMinutes)}`;
  const got = shownTyping(text);
  if (typeof read !== 'number') {
    return refuse(field, {
      allowed,
      got,
      why: problemSentence(read, 'Type a time such as 1 h 50, 1:50 or 110.'),
    });
  }
  const minutes = Math.round(read);
  if (minutes < minMinutes || minutes > maxMinutes) {
    return refuse(field, { allowed, got, why: `That is outside this field: it takes ${allowed}.` });
  }
  return { minutes, typed: text };
}

function readMinutes(tokens: readonly Token<TimeUnit>[]): number | Problem {
  if (isSign(tokens[0], '-')) return says('A working time is not below nothing.');
  let minutes = 0;
  let lastRank = -1;
  let at = 0;
  do {
    const number = readMixedNumber(tokens, at);
    if (isProblem(number)) return number;
    const token = tokens[number.next];
    if (token !== undefined && token.kind !== 'unit') return says('Something is left over behind the time.');
    const clock = token?.unit === ':';
    if (clock && (lastRank >= 0 || numberAt(tokens, number.next + 1)?.text.length !== 2)) {
      return says('Hours and minutes are written 1:05.');
    }
    const unit = token === undefined ? 'min' : token.unit === ':' ? 'h' : token.unit;
    const rank = FALLING.indexOf(unit);
    if (rank <= lastRank) return says('Days come first, then hours, then minutes.');
    if (lastRank >= 0 && unit === 'min' && number.value >= 60) return says('An hour has 60 minutes.');
    minutes += number.value * MINUTES_PER[unit];
    lastRank = rank;
    at = token === undefined ? number.next : number.next + 1;
  } while (at < tokens.length);
  return minutes;
}

/** `1 h 50`, `2 h`, `45 min`. Rounded to the minute. */
export function formatMinutes(minutes: number): string {
  const whole = Math.round(Math.abs(minutes));
  const sign = minutes < 0 && whole > 0 ? '\u2212' : '';
  const rest = whole % 60;
  if (whole < 60) return `${sign}${whole} min`;
  const hours = Math.floor(whole / 60);
  return `${sign}${hours} h${rest === 0 ? '' : ` ${String(rest).padStart(2, '0')}`}`;
}

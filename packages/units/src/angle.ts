// Angles: radians inside, degrees (7.5°) or degrees and minutes (7°30') at the edge.
import { isSign, readMixedNumber } from './mixed-number.ts';
import { isProblem, type Problem, problemSentence, says } from './problem.ts';
import { tokensOf, trimmedText } from './quantity.ts';
import { type Refusal, refuse } from './refusal.ts';
import { shownTyping } from './typed-text.ts';
import { type Token, vocabulary } from './typed-tokens.ts';

export type TypedAngle = {
  readonly angleRad: number;
  readonly degrees: number;
  readonly typed: string;
};

export type AngleOptions = {
  readonly minDegrees?: number | undefined;
  readonly maxDegrees?: number | undefined;
  readonly field?: string | undefined;
  readonly decimalComma?: boolean | undefined;
};

type AngleUnit = '°' | "'" | '"';

const ANGLE_WORDS = vocabulary<AngleUnit>({
  '°': ['°', 'º', 'deg', 'deg.', 'degree', 'degrees'],
  "'": ["'", 'min', 'min.', 'minutes', 'arcmin'],
  '"': ['"', 'sec', 'sec.', 'seconds', 'arcsec'],
});

const PARTS_PER_DEGREE: Readonly<Record<AngleUnit, number>> = { '°': 1, "'": 60, '"': 3600 };
const ORDER: readonly AngleUnit[] = ['°', "'", '"'];

/** Reads `7.5`, `7.5°`, `7°30'`, `7° 30' 15"`; a bare number is degrees. */
export function parseAngle(text: string, options: AngleOptions = {}): TypedAngle | Refusal {
  const { minDegrees = -360, maxDegrees = 360, field = 'angle', decimalComma = false } = options;
  const allowed = `${formatDegrees(minDegrees, { decimalComma })} to ${formatDegrees(maxDegrees, { decimalComma })}`;
  const tokens = tokensOf(text, ANGLE_WORDS, decimalComma);
  const read = isProblem(tokens) ? tokens : readDegrees(tokens);
  if (typeof read !== 'number') {
    const why = problemSentence(read, "Type an angle such as 7.5° or 7°30'.");
    return refuse(field, { allowed, got: shownTyping(text), why });
  }
  if (read < minDegrees || read > maxDegrees) {
    const why = `That is outside this field: it takes ${allowed}.`;
    return refuse(field, { allowed, got: shownTyping(text), why });
  }
  return { angleRad: (read * Math.PI) / 180, degrees: read, typed: text };
}

function readDegrees(tokens: readonly Token<AngleUnit>[]): number | Problem {
  const signed = isSign(tokens[0], '-') || isSign(tokens[0], '+');
  let seconds = 0;
  let lastRank = -1;
  for (let at = signed ? 1 : 0; at < tokens.length || lastRank < 0; ) {
    const number = readMixedNumber(tokens, at);
    if (isProblem(number)) return number;
    const token = tokens[number.next];
    const unit = token?.kind === 'unit' ? token.unit : nextUnit(lastRank);
    const rank = ORDER.indexOf(unit);
    if (rank <= lastRank) return says('Degrees come first, then minutes, then seconds.');
    if (lastRank >= 0 && number.value >= 60) return says('A degree has 60 minutes, a minute 60 seconds.');
    seconds += (number.value * 3600) / PARTS_PER_DEGREE[unit];
    lastRank = rank;
    at = token?.kind === 'unit' ? number.next + 1 : number.next;
    if (token !== undefined && token.kind !== 'unit') return says('Something is left over behind the angle.');
  }
  const degrees = Number((seconds / 3600).toFixed(9));
  return isSign(tokens[0], '-') && degrees !== 0 ? -degrees : degrees;
}

/** A bare number is degrees; behind degrees it is minutes, as in 7°30. */
function nextUnit(lastRank: number): AngleUnit {
  return ORDER[Math.min(lastRank + 1, 2)] ?? '°';
}

export function degreesFromRad(angleRad: number): number {
  return (angleRad * 180) / Math.PI;
}

export type AngleFormat = {
  /** Decimals of a degree, 1 where nothing is said: a saw's scale shows half degrees. */
  readonly digits?: number | undefined;
  /** `7°30'` in place of `7.5°`. */
  readonly minutes?: boolean | undefined;
  readonly decimalComma?: boolean | undefined;
};

/** `7.5°`, or `7°30'` to the whole minute. */
export function formatAngle(angleRad: number, format: AngleFormat = {}): string {
  return formatDegrees(degreesFromRad(angleRad), format);
}

function formatDegrees(degrees: number, { digits = 1, minutes = false, decimalComma }: AngleFormat): string {
  if (!minutes) return `${trimmedText(degrees, digits, decimalComma)}°`;
  const allMinutes = Math.round(Math.abs(degrees) * 60);
  const sign = degrees < 0 && allMinutes > 0 ? '\u2212' : '';
  return `${sign}${Math.floor(allMinutes / 60)}°${String(allMinutes % 60).padStart(2, '0')}'`;
}

// The sentences of measuring: what differs, what was rejected and why, what to look at twice. Verdict first, then the
// number, then how sure.
import type {
  BuiltBoxFit,
  BuiltDifference,
  DriverFitCaution,
  Fitted,
  SweepReading,
  SweepRejection,
} from '@gusset/contracts/measurement';

/** Shows a length in the shop's unit. */
export type ShowLength = (mm: number) => string;

const plain = (value: number, digits: number): string => value.toFixed(digits);

/** "29.51 ± 0.03"; as many decimals as the doubt deserves, four figures at most. */
export function fittedWords({ value, plusMinus }: Fitted, unit = ''): string {
  const wanted = plusMinus > 0 ? Math.ceil(-Math.log10(plusMinus)) + 1 : 3;
  const room = 3 - Math.floor(Math.log10(Math.max(Math.abs(value), 1e-3)));
  const digits = Math.min(Math.max(Math.min(wanted, room), 0), 4);
  const doubt = plain(plusMinus, digits);
  const shown = Number(doubt) === 0 ? plain(value, digits) : `${plain(value, digits)} ± ${doubt}`;
  return unit === '' ? shown : `${shown} ${unit}`;
}

export function percentWords(percent: number): string {
  const rounded = Math.abs(percent) < 10 ? plain(Math.abs(percent), 1) : plain(Math.abs(percent), 0);
  if (Number(rounded) === 0) return 'the same';
  return `${percent > 0 ? '+' : '−'}${rounded} %`;
}

export const DIFFERENCE_NAMES: Readonly<Record<BuiltDifference['code'], string>> = {
  'net-volume': 'Net volume',
  tuning: 'Tuning',
  'port-length': 'Port length',
  'leak-q': 'Leak Q',
  resonance: 'Box resonance',
  'system-q': 'System Q',
  'free-air': 'Driver’s own resonance',
};

const DIGITS: Readonly<Record<BuiltDifference['unit'], number>> = { litres: 1, Hz: 1, mm: 0, '': 2 };
const UNITS: Readonly<Record<Exclude<BuiltDifference['unit'], 'mm'>, string>> = {
  litres: ' L',
  Hz: ' Hz',
  '': '',
};

/** A value of this difference with its unit; lengths in the shop's own. */
export function valueWords(unit: BuiltDifference['unit'], value: number, show: ShowLength): string {
  return unit === 'mm' ? show(value) : `${plain(value, DIGITS[unit])}${UNITS[unit]}`;
}

/** Give or take; never a bare nought. */
export function doubtWords(unit: BuiltDifference['unit'], plusMinus: number, show: ShowLength): string {
  const least = 10 ** -DIGITS[unit];
  return plusMinus < least / 2 ? `under ${valueWords(unit, least, show)}` : valueWords(unit, plusMinus, show);
}

/** "About 2.1 L smaller than drawn", "Port 14 mm long"; only of a difference that has something to say. */
export function differenceWords(difference: BuiltDifference, show: ShowLength): string {
  const { code, unit, built } = difference;
  const by = difference.difference ?? 0;
  const amount = valueWords(unit, Math.abs(by), show);
  switch (code) {
    case 'net-volume':
      return `About ${amount} ${by < 0 ? 'smaller' : 'larger'} than drawn`;
    case 'port-length':
      return `Port ${amount} ${by < 0 ? 'short' : 'long'}`;
    case 'tuning':
      return `Tuned ${amount} ${by < 0 ? 'below' : 'above'} the drawing`;
    case 'leak-q':
      return `Leaks more than it should: Q ${plain(built.value, 1)}`;
    case 'resonance':
      return `Resonance ${amount} ${by < 0 ? 'below' : 'above'} the drawing`;
    case 'system-q':
      return `System Q ${amount} ${by < 0 ? 'below' : 'above'} the drawing`;
    case 'free-air':
      return `The driver’s own resonance lies ${amount} ${by < 0 ? 'below' : 'above'} its sheet`;
  }
}

/** What to do about it, in one sentence; null where the words alone are enough. */
export function differenceAdvice({ code, difference }: BuiltDifference): string | null {
  const over = (difference ?? 0) > 0;
  switch (code) {
    case 'net-volume':
      return over
        ? 'A brace left out, or a driver that takes less room than its sheet says.'
        : 'Braces, terminals and glue blocks that the drawing does not have, or thicker lining.';
    case 'port-length':
      return over
        ? 'Trim it, a few millimetres at a time.'
        : 'A longer port, or less air, brings the tuning down.';
    case 'leak-q':
      return 'Run a hand along the seams and terminals while a low tone plays quietly; seal what blows.';
    case 'free-air':
      return 'Suspensions settle in and drift with warmth; measure the driver in free air before blaming the box.';
    default:
      return null;
  }
}

export type BuiltVerdict = { readonly tone: 'pass' | 'check'; readonly words: string };

/** Differences worth a word, the largest matter first: volume, port, tuning, leaks. */
export function builtVerdict(
  { differences }: Pick<BuiltBoxFit, 'differences'>,
  show: ShowLength,
): BuiltVerdict {
  const beyond = differences.filter((difference) => difference.beyond);
  // Volume and port explain the tuning and the resonance: one of them is enough for the headline.
  const causes = beyond.filter(
    ({ code }) => code === 'net-volume' || code === 'port-length' || code === 'leak-q',
  );
  const said = causes.length > 0 ? causes : beyond;
  if (said.length === 0) return { tone: 'pass', words: 'Built as drawn' };
  const [first = '', ...rest] = said.map((difference) => differenceWords(difference, show));
  const lower = rest.map((words) => words.charAt(0).toLowerCase() + words.slice(1));
  return { tone: 'check', words: [first, ...lower].join(', ') };
}

export function rejectionWords(rejection: SweepRejection): string {
  const hz = (value: number) => `${plain(value, value < 100 ? 1 : 0)} Hz`;
  switch (rejection.code) {
    case 'noisy':
      return `${
        rejection.snrDb < 0
          ? `${plain(-rejection.snrDb, 1)} dB under the noise`
          : `Only ${plain(rejection.snrDb, 1)} dB above the noise`
      } at ${hz(rejection.atHz)}; ${plain(rejection.leastDb, 0)} dB above it are asked for. Play louder or wait for quiet.`;
    case 'short':
      return `Runs from ${hz(rejection.lowHz)} to ${hz(rejection.highHz)}; ${hz(rejection.neededLowHz)} to ${hz(rejection.neededHighHz)} are needed.`;
    case 'noise-short':
      return `The noise was measured from ${hz(rejection.lowHz)} to ${hz(rejection.highHz)} only, so this can’t be judged.`;
  }
}

const FIT_FIELDS = { fsHz: 'Fs', qms: 'Qms', qes: 'Qes', qts: 'Qts' } as const;
export const FIT_FIELD_WORDS: Readonly<Record<keyof typeof FIT_FIELDS, string>> = FIT_FIELDS;

export function cautionWords(caution: DriverFitCaution): { readonly words: string; readonly advice: string } {
  switch (caution.code) {
    case 'readings-differ':
      return {
        words: `${FIT_FIELDS[caution.field]} reads ${percentWords(caution.percent)} by the peak alone`,
        advice:
          'Inductance, a loose clamp or too few rows round the peak do that. The fit uses the whole curve.',
      };
    case 'little-shift':
      return {
        words: `The second resonance lies at ${plain(caution.ratio * 100, 0)} % of the first`,
        advice:
          'Vas hangs on a small difference. Add mass until it falls to about 75 %, or use a smaller box.',
      };
    case 'poor-fit':
      return {
        words: `The curve differs from any such driver by ${plain(caution.residualPercent, 1)} %`,
        advice: 'Look for a buzz, a second resonance or a poor contact, and sweep again at a lower level.',
      };
  }
}

/** How a file was read: "240 rows, ohm, phase in degrees". */
export function readingWords({
  rowsRead,
  magnitude,
  phase,
  decimalComma,
}: Omit<SweepReading, 'columns'>): string {
  const unit = magnitude === 'ohm' ? 'magnitude in ohm' : 'magnitude in dB';
  const third = phase === null ? 'no phase' : `phase in ${phase}`;
  return `${rowsRead} rows: ${unit}, ${third}${decimalComma ? ', decimal commas' : ''}.`;
}

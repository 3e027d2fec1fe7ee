// Figures off a data sheet or a meter: 4.6, 0,52, 3.6 ohm, 1.2 kW. One number, with the unit's prefix if typed.
import { type QuantityKind, readQuantity, trimmedText } from './quantity.ts';
import { isRefusal, type Refusal } from './refusal.ts';
import { vocabulary } from './typed-tokens.ts';

/** The unit the field is in, printed beside it; `none` for counts and quality factors. */
export type FigureUnit =
  | 'none'
  | 'ohm'
  | 'millihenry'
  | 'volt'
  | 'amp'
  | 'amp-hour'
  | 'watt'
  | 'hertz'
  | 'decibel'
  | 'tesla-metre'
  | 'gram'
  | 'minute'
  | 'metre-per-second';

export type FigureOptions = {
  readonly unit: FigureUnit;
  readonly min?: number | undefined;
  readonly max?: number | undefined;
  readonly field?: string | undefined;
  readonly decimalComma?: boolean | undefined;
};

export type TypedFigure = { readonly value: number; readonly typed: string; readonly note: string | null };

/** Spellings and what each is worth in the field's unit. Case tells mega from milli. */
const SPELLINGS: Readonly<Record<FigureUnit, Readonly<Record<string, readonly string[]>>>> = {
  none: { 1: [] },
  ohm: { 1: ['Ω', 'ohm', 'ohms', 'R'], 0.001: ['mΩ', 'mohm', 'milliohm', 'milliohms'], 1000: ['kΩ', 'kohm'] },
  millihenry: { 1: ['mH', 'millihenry'], 1000: ['H', 'henry'], 0.001: ['μH', 'uH'] },
  volt: { 1: ['V', 'volt', 'volts', 'Vdc', 'VDC'], 0.001: ['mV'] },
  amp: { 1: ['A', 'amp', 'amps', 'ampere', 'amperes'], 0.001: ['mA'] },
  'amp-hour': { 1: ['Ah', 'amp-hours', 'amp hours'] },
  watt: { 1: ['W', 'watt', 'watts', 'W RMS', 'Wrms'], 1000: ['kW'], 0.001: ['mW'] },
  hertz: { 1: ['Hz', 'hertz'], 1000: ['kHz'] },
  decibel: { 1: ['dB', 'decibel', 'decibels'] },
  'tesla-metre': { 1: ['T·m', 'Tm', 'T m', 'N/A'] },
  gram: { 1: ['g', 'gram', 'grams'], 1000: ['kg'], 0.001: ['mg'] },
  minute: { 1: ['min', 'mins', 'minutes', 'minute'], 60: ['h', 'hr', 'hrs', 'hour', 'hours'] },
  'metre-per-second': { 1: ['m/s'] },
};

/** What stands behind the number on screen. */
const SHOWN_UNIT: Readonly<Record<FigureUnit, string>> = {
  none: '',
  ohm: ' Ω',
  millihenry: ' mH',
  volt: ' V',
  amp: ' A',
  'amp-hour': ' Ah',
  watt: ' W',
  hertz: ' Hz',
  decibel: ' dB',
  'tesla-metre': ' T·m',
  gram: ' g',
  minute: ' min',
  'metre-per-second': ' m/s',
};

/** Larger than any figure on a data sheet. */
const FIGURE_LIMIT = 1e9;

/** Reads one figure in the field's unit; a range such as 3.2-3.8 is asked about. */
export function parseNumber(text: string, options: FigureOptions): TypedFigure | Refusal {
  const { unit, min = -FIGURE_LIMIT, max = FIGURE_LIMIT, field = 'number', decimalComma } = options;
  const show = (value: number) => formatNumber(value, unit, { decimalComma });
  const kind: QuantityKind<string> = {
    words: vocabulary<string>(SPELLINGS[unit]),
    toBase: (value, worth) => value * Number(worth),
    example: `Type a number such as ${decimalComma ? '4,6' : '4.6'}${SHOWN_UNIT[unit]}.`,
  };
  const allowed = `${show(min)} to ${show(max)}`;
  const read = readQuantity(text, kind, { unit: '1', min, max, allowed, field, decimalComma });
  return isRefusal(read) ? read : { value: read.base, typed: read.typed, note: read.note };
}

/** `3.6 Ω`, `0.52 mH`; at most `digits` decimals, three where nothing is said. */
export function formatNumber(
  value: number,
  unit: FigureUnit,
  format: { readonly digits?: number | undefined; readonly decimalComma?: boolean | undefined } = {},
): string {
  return `${trimmedText(value, format.digits ?? 3, format.decimalComma)}${SHOWN_UNIT[unit]}`;
}

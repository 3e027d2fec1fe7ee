// Percentages: basis points inside (one hundredth of a percent), so that rates stay whole where money is.
import { type QuantityKind, readQuantity, trimmedText } from './quantity.ts';
import { isRefusal, type Refusal, refuse } from './refusal.ts';
import { shownTyping } from './typed-text.ts';
import { vocabulary } from './typed-tokens.ts';

export type TypedPercent = {
  /** 7.25 % = 725. Tax rates with a third and fourth decimal (8.875 %) keep them: 887.5. */
  readonly basisPoints: number;
  readonly typed: string;
  readonly note: string | null;
};

const PERCENT: QuantityKind<'%' | 'bp'> = {
  words: vocabulary<'%' | 'bp'>({ '%': ['%', 'percent', 'per cent', 'pct'], bp: ['bp', 'bps'] }),
  toBase: (value, unit) => (unit === '%' ? value * 100 : value),
  example: 'Type a percentage such as 7.25 %.',
};

/** The finest rate kept: a hundredth of a basis point, one millionth. */
const STEPS_PER_BASIS_POINT = 100;

/** Reads a typed percentage; a bare number is in percent. */
export function parsePercent(
  text: string,
  options: {
    readonly minBasisPoints?: number | undefined;
    readonly maxBasisPoints?: number | undefined;
    readonly field?: string | undefined;
    readonly decimalComma?: boolean | undefined;
  } = {},
): TypedPercent | Refusal {
  const { minBasisPoints = 0, maxBasisPoints = 10_000, field = 'percent', decimalComma } = options;
  const allowed = `${formatPercent(minBasisPoints, { decimalComma })} to ${formatPercent(maxBasisPoints, { decimalComma })}`;
  const read = readQuantity(text, PERCENT, {
    unit: '%',
    min: minBasisPoints,
    max: maxBasisPoints,
    allowed,
    field,
    decimalComma,
  });
  if (isRefusal(read)) return read;
  const steps = read.base * STEPS_PER_BASIS_POINT;
  if (Math.abs(steps - Math.round(steps)) > FLOAT_NOISE) {
    return refuse(field, {
      allowed,
      got: shownTyping(text),
      why: 'A percentage takes at most four decimals, such as 8.875 %.',
    });
  }
  return { basisPoints: Math.round(steps) / STEPS_PER_BASIS_POINT, typed: text, note: read.note };
}

/** What a product of a decimal and 10,000 may be off in floating point; a fifth decimal is off by 0.1. */
const FLOAT_NOISE = 1e-6;

/** `7.25 %`, `20 %`; decimals as needed, four at most. */
export function formatPercent(
  basisPoints: number,
  format: { readonly decimalComma?: boolean | undefined; readonly digits?: number | undefined } = {},
): string {
  return `${trimmedText(basisPoints / 100, format.digits ?? 4, format.decimalComma)} %`;
}

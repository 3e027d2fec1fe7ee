// How a reading of a survey is written and read back: lengths in this device's unit, angles in degrees.

import type { Dimension, MeasuringMethod } from '@gusset/contracts/cargo';
import {
  degreesFromRad,
  formatAngle,
  formatLength,
  type InchDenominator,
  type LengthUnit,
} from '@gusset/units';

export type LengthManner = { readonly unit: LengthUnit; readonly denominator: InchDenominator };

export const METHOD_WORDS: Readonly<Record<MeasuringMethod, string>> = {
  tape: 'tape',
  'steel-rule': 'steel rule',
  caliper: 'caliper',
  laser: 'laser',
  'straightedge-offsets': 'straightedge and offsets',
  'card-template': 'card template',
  'scribed-template': 'scribed template',
  scan: 'scan',
};

/** `812 mm`, `19 5/8″`, `18.5°`. */
export function valueWords(dimension: Pick<Dimension, 'unit'>, value: number, manner: LengthManner): string {
  return dimension.unit === 'angle' ? formatAngle(value) : formatLength(value, lengthFormat(manner));
}

/** The figure alone, for a dimension line. */
export function figureWords(dimension: Pick<Dimension, 'unit'>, value: number, manner: LengthManner): string {
  return dimension.unit === 'angle'
    ? formatAngle(value)
    : formatLength(value, { ...lengthFormat(manner), style: 'drawing' });
}

function lengthFormat({ unit, denominator }: LengthManner) {
  return unit === 'mm' ? { unit, digits: 1 } : { unit, denominator };
}

/** `±4.5`, `±0.18″`, `±1°`: how sure, never finer than it means. */
export function plusMinusWords(
  dimension: Pick<Dimension, 'unit'>,
  plusMinus: number,
  manner: LengthManner,
): string {
  if (dimension.unit === 'angle') return `±${tenths(degreesFromRad(plusMinus))}°`;
  if (manner.unit === 'mm') return `±${tenths(plusMinus)}`;
  return `±${(plusMinus / 25.4).toFixed(2)}″`;
}

const tenths = (value: number): string => String(Math.round(value * 10) / 10);

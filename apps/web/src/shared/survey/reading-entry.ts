// From what was typed at a letter to a reading. Pure: the screen arranges, this decides.

import { defaultPlusMinus } from '@gusset/cargo';
import type { Dimension, MeasuringMethod } from '@gusset/contracts/cargo';
import type { Reading } from '@gusset/contracts/survey';
import { readingRefusal } from '@gusset/sheets';
import { degreesFromRad, isRefusal, type LengthUnit, parseAngle, parseLength } from '@gusset/units';

export type Entry = {
  readonly text: string;
  readonly method: MeasuringMethod;
  /** mm or radians; null = the usual of the method. */
  readonly plusMinus: number | null;
};

export type EntryOutcome =
  | { readonly kind: 'reading'; readonly reading: Reading }
  | { readonly kind: 'empty' }
  | { readonly kind: 'refused'; readonly why: string };

const NAMES_ITS_UNIT = /[a-z'"″′°]/iu;
/** As many characters as the server keeps of what was typed. */
const TYPED_LIMIT = 40;

/** A bare number is in the device's unit; the unit is written into what is kept, so that it stays true elsewhere. */
export function readEntry(
  dimension: Dimension,
  { text, method, plusMinus }: Entry,
  unit: LengthUnit,
): EntryOutcome {
  const typed = text.trim();
  if (typed === '') return { kind: 'empty' };
  const value = dimension.unit === 'angle' ? angleOf(dimension, typed) : lengthOf(dimension, typed, unit);
  if (typeof value === 'string') return { kind: 'refused', why: value };
  const suffix = dimension.unit === 'angle' ? '°' : ` ${unit}`;
  const reading: Reading = {
    key: dimension.key,
    value,
    typed: (NAMES_ITS_UNIT.test(typed) ? typed : `${typed}${suffix}`).slice(0, TYPED_LIMIT),
    plusMinus: plusMinus ?? defaultPlusMinus(dimension, method),
    method,
  };
  const refusal = readingRefusal(dimension, reading);
  if (refusal === null) return { kind: 'reading', reading };
  return { kind: 'refused', why: `${refusal.refusal.why}. Accepted: ${refusal.refusal.allowed}.` };
}

/** A sentence where it cannot be read. */
function angleOf(dimension: Dimension, typed: string): number | string {
  const limits =
    dimension.unit === 'angle'
      ? { minDegrees: degreesFromRad(dimension.minRad), maxDegrees: degreesFromRad(dimension.maxRad) }
      : {};
  const read = parseAngle(typed, limits);
  return isRefusal(read) ? read.refusal.why : read.angleRad;
}

function lengthOf(dimension: Dimension, typed: string, unit: LengthUnit): number | string {
  const limits = dimension.unit === 'length' ? { minMm: dimension.minMm, maxMm: dimension.maxMm } : {};
  const read = parseLength(typed, { unit, ...limits });
  return isRefusal(read) ? read.refusal.why : read.mm;
}

/** Steps of ± to choose from beside the usual one, mm or radians. */
export function plusMinusSteps(dimension: Dimension, method: MeasuringMethod): readonly number[] {
  const usual = defaultPlusMinus(dimension, method);
  const steps =
    dimension.unit === 'angle'
      ? [0.5, 1, 2, 3].map((degrees) => (degrees * Math.PI) / 180)
      : [1, 2, 3, 5, 10];
  return [usual, ...steps.filter((step) => Math.abs(step - usual) > 1e-9)];
}

export function isUsual(
  dimension: Dimension,
  { method, plusMinus }: Pick<Reading, 'method' | 'plusMinus'>,
): boolean {
  return Math.abs(plusMinus - defaultPlusMinus(dimension, method)) < 1e-9;
}

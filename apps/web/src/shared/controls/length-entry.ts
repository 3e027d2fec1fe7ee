// What the length field decides: how a stored length is shown in it, what a typed one comes to, and one step
// up or down. Pure, so that the rules are tested without a screen.

import {
  displayStepMm,
  formatLength,
  type InchDenominator,
  isRefusal,
  type LengthUnit,
  parseLength,
  storedMm,
  type TypedLength,
} from '@gusset/units';
import type { TypedReading } from './typed-reading.ts';

/** A stored length with what was typed for it; null texts where it was computed. */
export type LengthValue = {
  readonly mm: number;
  readonly typed: string | null;
  readonly unit: LengthUnit | null;
};

export type LengthEntryRules = {
  readonly unit: LengthUnit;
  readonly denominator: InchDenominator;
  readonly minMm: number;
  readonly maxMm: number;
};

/** Decimals of millimetres in a field: an inch fraction to 1/64 shows its hundredths (0.40). */
const FIELD_DIGITS_MM = 2;

/** The length as the field shows it: the unit stands beside the field, an inch rest is shown, never rounded off. */
export function lengthInField(mm: number, { unit, denominator }: LengthEntryRules): string {
  return unit === 'mm'
    ? formatLength(mm, { unit, digits: FIELD_DIGITS_MM, style: 'drawing' })
    : formatLength(mm, { unit, denominator });
}

export function readLengthEntry(text: string, rules: LengthEntryRules): TypedReading<TypedLength> {
  if (text.trim() === '') return { kind: 'empty' };
  const { unit, minMm, maxMm } = rules;
  const read = parseLength(text, { unit, minMm, maxMm });
  return isRefusal(read)
    ? { kind: 'refused', why: read.refusal.why }
    : { kind: 'value', value: read, note: read.note };
}

/** One tape or rule division from what stands in the field, held inside the field's range. */
export function stepLength(text: string, steps: number, rules: LengthEntryRules): TypedLength | null {
  const read = readLengthEntry(text, rules);
  if (read.kind !== 'value') return null;
  const { unit, denominator, minMm, maxMm } = rules;
  const stepMm = displayStepMm(unit === 'mm' ? { unit, digits: 0 } : { unit, denominator });
  const mm = storedMm(Math.min(maxMm, Math.max(minMm, read.value.mm + steps * stepMm)));
  return { mm, unit, typed: lengthInField(mm, rules), note: null };
}

/** The line under the field: the other unit, and what was typed when the field doesn't show it as typed. */
export function lengthNote(value: LengthValue | null, rules: LengthEntryRules): string | null {
  if (value === null) return null;
  const other = rules.unit === 'mm' ? 'in' : 'mm';
  const inOther = formatLength(value.mm, { unit: other, denominator: rules.denominator });
  const typedElsewhere = value.typed !== null && value.unit !== rules.unit;
  return typedElsewhere ? `${inOther} · typed ${value.typed}` : inOther;
}

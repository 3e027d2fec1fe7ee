// Masses: kilograms inside, pounds and ounces on request.
import { KG_PER_OUNCE, KG_PER_POUND } from './conversion.ts';
import { fixedText, type QuantityKind, readQuantity } from './quantity.ts';
import { isRefusal, type Refusal } from './refusal.ts';
import { vocabulary } from './typed-tokens.ts';

export type MassUnit = 'kg' | 'g' | 'lb' | 'oz';

export type MassOptions = {
  readonly unit: MassUnit;
  readonly minKg?: number | undefined;
  readonly maxKg?: number | undefined;
  readonly field?: string | undefined;
  readonly decimalComma?: boolean | undefined;
};

export type TypedMass = {
  readonly kg: number;
  readonly typed: string;
  readonly unit: MassUnit;
  readonly note: string | null;
};

const KG_PER: Readonly<Record<MassUnit, number>> = { kg: 1, g: 0.001, lb: KG_PER_POUND, oz: KG_PER_OUNCE };

/** A loaded light van: nothing the shop weighs is heavier. */
const MASS_LIMIT_KG = 5000;

const MASS: QuantityKind<MassUnit> = {
  words: vocabulary<MassUnit>({
    kg: ['kg', 'kgs', 'kilogram', 'kilograms'],
    g: ['g', 'gram', 'grams'],
    lb: ['lb', 'lbs', 'lb.', 'lbs.', 'pound', 'pounds'],
    oz: ['oz', 'oz.', 'ounce', 'ounces'],
  }),
  toBase: (value, unit) => value * KG_PER[unit],
  example: 'Type a weight such as 12.5 kg or 27 1/2 lb.',
};

/** Reads a typed weight to kilograms. */
export function parseMass(text: string, options: MassOptions): TypedMass | Refusal {
  const { unit, minKg = 0, maxKg = MASS_LIMIT_KG, field = 'mass', decimalComma } = options;
  const system = unit === 'lb' || unit === 'oz' ? 'imperial' : 'metric';
  const allowed = `${formatMass(minKg, system, { decimalComma })} to ${formatMass(maxKg, system, { decimalComma })}`;
  const read = readQuantity(text, MASS, { unit, min: minKg, max: maxKg, allowed, field, decimalComma });
  return isRefusal(read) ? read : { kg: read.base, typed: read.typed, unit: read.unit, note: read.note };
}

/** `23.4 kg`, `51.6 lb`; below a kilogram `350 g`, below a pound `12.3 oz`; both: `23.4 kg (51.6 lb)`. */
export function formatMass(
  kg: number,
  system: 'metric' | 'imperial',
  format: { readonly both?: boolean | undefined; readonly decimalComma?: boolean | undefined } = {},
): string {
  const { both = false, decimalComma = false } = format;
  const shown = system === 'metric' ? metricMass(kg, decimalComma) : imperialMass(kg, decimalComma);
  if (!both) return shown;
  return `${shown} (${formatMass(kg, system === 'metric' ? 'imperial' : 'metric', { decimalComma })})`;
}

function metricMass(kg: number, decimalComma: boolean): string {
  if (kg === 0) return '0 kg';
  return Math.abs(kg) < 0.9995 ? `${fixedText(kg * 1000, 0)} g` : `${fixedText(kg, 1, decimalComma)} kg`;
}

function imperialMass(kg: number, decimalComma: boolean): string {
  if (kg === 0) return '0 lb';
  return Math.abs(kg) < KG_PER_POUND * 0.995
    ? `${fixedText(kg / KG_PER_OUNCE, 1, decimalComma)} oz`
    : `${fixedText(kg / KG_PER_POUND, 1, decimalComma)} lb`;
}

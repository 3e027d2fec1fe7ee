// Areas: square metres inside. Cones come in square centimetres, carpet in square metres or square feet.
import { M2_PER_SQUARE_FOOT, M2_PER_SQUARE_INCH } from './conversion.ts';
import { fixedText, type QuantityKind, readQuantity } from './quantity.ts';
import { isRefusal, type Refusal } from './refusal.ts';
import { vocabulary } from './typed-tokens.ts';

export type AreaUnit = 'm²' | 'cm²' | 'mm²' | 'ft²' | 'in²';

export type AreaOptions = {
  readonly unit: AreaUnit;
  readonly minM2?: number | undefined;
  readonly maxM2?: number | undefined;
  readonly field?: string | undefined;
  readonly decimalComma?: boolean | undefined;
};

export type TypedArea = {
  readonly areaM2: number;
  readonly typed: string;
  readonly unit: AreaUnit;
  readonly note: string | null;
};

const M2_PER: Readonly<Record<AreaUnit, number>> = {
  'm²': 1,
  'cm²': 1e-4,
  'mm²': 1e-6,
  'ft²': M2_PER_SQUARE_FOOT,
  'in²': M2_PER_SQUARE_INCH,
};

/** The floor of a large workshop. */
const AREA_LIMIT_M2 = 10_000;

const AREA: QuantityKind<AreaUnit> = {
  words: vocabulary<AreaUnit>({
    'm²': ['m²', 'm2', 'm^2', 'sq m', 'sqm'],
    'cm²': ['cm²', 'cm2', 'cm^2', 'sq cm'],
    'mm²': ['mm²', 'mm2', 'mm^2', 'sq mm'],
    'ft²': ['ft²', 'ft2', 'ft^2', 'sq ft', 'sq. ft.', 'sqft', 'square feet'],
    'in²': ['in²', 'in2', 'in^2', 'sq in', 'sq. in.', 'sqin', 'square inches'],
  }),
  toBase: (value, unit) => value * M2_PER[unit],
  example: 'Type an area such as 2.4 m², 330 cm² or 26 ft².',
};

/** Reads a typed area to square metres. */
export function parseArea(text: string, options: AreaOptions): TypedArea | Refusal {
  const { unit, minM2 = 0, maxM2 = AREA_LIMIT_M2, field = 'area', decimalComma } = options;
  const allowed = `${formatArea(minM2, unit, { decimalComma })} to ${formatArea(maxM2, unit, { decimalComma })}`;
  const read = readQuantity(text, AREA, { unit, min: minM2, max: maxM2, allowed, field, decimalComma });
  return isRefusal(read) ? read : { areaM2: read.base, typed: read.typed, unit: read.unit, note: read.note };
}

const AREA_DIGITS: Readonly<Record<AreaUnit, number>> = { 'm²': 2, 'cm²': 0, 'mm²': 0, 'ft²': 1, 'in²': 1 };

/** `2.40 m²`, `330 cm²`, `25.8 ft²`. */
export function formatArea(
  areaM2: number,
  unit: AreaUnit,
  format: { readonly decimalComma?: boolean | undefined } = {},
): string {
  const value = areaM2 / M2_PER[unit];
  return `${value === 0 ? '0' : fixedText(value, AREA_DIGITS[unit], format.decimalComma)} ${unit}`;
}

// Volumes: litres inside, litres and cubic feet side by side where a customer or a maker quotes either.
import { LITRES_PER_CUBIC_FOOT, LITRES_PER_CUBIC_INCH } from './conversion.ts';
import { fixedText, type QuantityKind, readQuantity } from './quantity.ts';
import { isRefusal, type Refusal } from './refusal.ts';
import { vocabulary } from './typed-tokens.ts';

/** Litres and millilitres, or cubic feet and cubic inches. */
export type VolumeSystem = 'metric' | 'imperial';
export type VolumeUnit = 'L' | 'mL' | 'm³' | 'ft³' | 'in³';

export type VolumeOptions = {
  /** What a bare number means; litres or cubic feet by the shop's system. */
  readonly unit: VolumeUnit;
  readonly minLitres?: number | undefined;
  readonly maxLitres?: number | undefined;
  readonly field?: string | undefined;
  readonly decimalComma?: boolean | undefined;
};

export type TypedVolume = {
  readonly litres: number;
  readonly typed: string;
  readonly unit: VolumeUnit;
  readonly note: string | null;
};

const LITRES_PER: Readonly<Record<VolumeUnit, number>> = {
  L: 1,
  mL: 0.001,
  'm³': 1000,
  'ft³': LITRES_PER_CUBIC_FOOT,
  'in³': LITRES_PER_CUBIC_INCH,
};

/** A large van's whole load space. */
const VOLUME_LIMIT_LITRES = 20_000;

const VOLUME: QuantityKind<VolumeUnit> = {
  words: vocabulary<VolumeUnit>({
    L: ['L', 'l', 'litre', 'litres', 'liter', 'liters', 'dm³', 'dm3'],
    mL: ['mL', 'ml', 'cc', 'cm³', 'cm3', 'cm^3'],
    'm³': ['m³', 'm3', 'm^3'],
    'ft³': ['ft³', 'ft3', 'ft^3', 'cu ft', 'cu. ft.', 'cu.ft.', 'cuft', 'cubic feet', 'cubic foot'],
    'in³': ['in³', 'in3', 'in^3', 'cu in', 'cu. in.', 'cu.in.', 'cuin', 'cubic inches', 'cubic inch'],
  }),
  toBase: (value, unit) => value * LITRES_PER[unit],
  example: 'Type a volume such as 42.5 L, 1 1/2 ft³ or 90 in³.',
};

/** Reads a typed volume to litres. */
export function parseVolume(text: string, options: VolumeOptions): TypedVolume | Refusal {
  const { unit, minLitres = 0, maxLitres = VOLUME_LIMIT_LITRES, field = 'volume', decimalComma } = options;
  const system = unit === 'ft³' || unit === 'in³' ? 'imperial' : 'metric';
  const allowed = `${formatVolume(minLitres, system, { decimalComma })} to ${formatVolume(maxLitres, system, { decimalComma })}`;
  const read = readQuantity(text, VOLUME, {
    unit,
    min: minLitres,
    max: maxLitres,
    allowed,
    field,
    decimalComma,
  });
  return isRefusal(read) ? read : { litres: read.base, typed: read.typed, unit: read.unit, note: read.note };
}

export type VolumeFormat = {
  /** The other system in brackets behind it. */
  readonly both?: boolean | undefined;
  readonly decimalComma?: boolean | undefined;
};

/** `42.5 L`, `1.50 ft³`; small ones as `0.35 L` and `21.4 in³`; both: `42.5 L (1.50 ft³)`. */
export function formatVolume(litres: number, system: VolumeSystem, format: VolumeFormat = {}): string {
  const { both = false, decimalComma = false } = format;
  const shown =
    system === 'metric' ? metricVolume(litres, decimalComma) : imperialVolume(litres, decimalComma);
  if (!both) return shown;
  return `${shown} (${formatVolume(litres, system === 'metric' ? 'imperial' : 'metric', { decimalComma })})`;
}

/** Below this a hundredth of a litre matters (driver and port displacement). */
const FINE_BELOW_LITRES = 10;

/** Below this cubic feet say too little: cubic inches (0.1 ft³). */
const CUBIC_INCHES_BELOW_LITRES = LITRES_PER_CUBIC_FOOT / 10;

function metricVolume(litres: number, decimalComma: boolean): string {
  if (litres === 0) return '0 L';
  return `${fixedText(litres, Math.abs(litres) < FINE_BELOW_LITRES ? 2 : 1, decimalComma)} L`;
}

function imperialVolume(litres: number, decimalComma: boolean): string {
  if (litres === 0) return '0 ft³';
  return Math.abs(litres) < CUBIC_INCHES_BELOW_LITRES
    ? `${fixedText(litres / LITRES_PER_CUBIC_INCH, 1, decimalComma)} in³`
    : `${fixedText(litres / LITRES_PER_CUBIC_FOOT, 2, decimalComma)} ft³`;
}

// Temperatures: degrees Celsius inside (glue and finish limits are stated in them), Fahrenheit on request.
import { type QuantityKind, readQuantity, trimmedText } from './quantity.ts';
import { isRefusal, type Refusal } from './refusal.ts';
import { vocabulary } from './typed-tokens.ts';

export type TemperatureUnit = '°C' | '°F';

export type TypedTemperature = {
  readonly celsius: number;
  readonly typed: string;
  readonly unit: TemperatureUnit;
  readonly note: string | null;
};

const TEMPERATURE: QuantityKind<TemperatureUnit> = {
  words: vocabulary<TemperatureUnit>({ '°C': ['°C', '° C', 'C', 'degC'], '°F': ['°F', '° F', 'F', 'degF'] }),
  toBase: (value, unit) => (unit === '°C' ? value : celsiusFromFahrenheit(value)),
  example: 'Type a temperature such as 18 °C or 64 °F.',
};

/** Between a parked car in winter and one in the sun. */
const COLDEST_C = -60;
const HOTTEST_C = 150;

/** Reads a typed temperature to degrees Celsius. */
export function parseTemperature(
  text: string,
  options: {
    readonly unit: TemperatureUnit;
    readonly minCelsius?: number | undefined;
    readonly maxCelsius?: number | undefined;
    readonly field?: string | undefined;
    readonly decimalComma?: boolean | undefined;
  },
): TypedTemperature | Refusal {
  const {
    unit,
    minCelsius = COLDEST_C,
    maxCelsius = HOTTEST_C,
    field = 'temperature',
    decimalComma,
  } = options;
  const allowed = `${formatTemperature(minCelsius, unit, { decimalComma })} to ${formatTemperature(maxCelsius, unit, { decimalComma })}`;
  const read = readQuantity(text, TEMPERATURE, {
    unit,
    min: minCelsius,
    max: maxCelsius,
    allowed,
    field,
    decimalComma,
  });
  return isRefusal(read) ? read : { celsius: read.base, typed: read.typed, unit: read.unit, note: read.note };
}

/** `18 °C`, `64.4 °F`. */
export function formatTemperature(
  celsius: number,
  unit: TemperatureUnit,
  format: { readonly decimalComma?: boolean | undefined } = {},
): string {
  const value = unit === '°C' ? celsius : fahrenheitFromCelsius(celsius);
  return `${trimmedText(value, 1, format.decimalComma)} ${unit}`;
}

export function celsiusFromFahrenheit(fahrenheit: number): number {
  return ((fahrenheit - 32) * 5) / 9;
}

export function fahrenheitFromCelsius(celsius: number): number {
  return (celsius * 9) / 5 + 32;
}

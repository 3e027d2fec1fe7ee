export {
  type AngleFormat,
  type AngleOptions,
  degreesFromRad,
  formatAngle,
  parseAngle,
  type TypedAngle,
} from './angle.ts';
export { type AreaOptions, type AreaUnit, formatArea, parseArea, type TypedArea } from './area.ts';
export {
  inchesFromMm,
  KG_PER_OUNCE,
  KG_PER_POUND,
  LITRES_PER_CUBIC_FOOT,
  LITRES_PER_CUBIC_INCH,
  M2_PER_SQUARE_FOOT,
  M2_PER_SQUARE_INCH,
  MM_PER_FOOT,
  MM_PER_INCH,
  MM3_PER_LITRE,
  mmFromInches,
  storedMm,
} from './conversion.ts';
export { formatMinutes, parseMinutes, type TypedMinutes } from './duration.ts';
export {
  type DrawingLength,
  displayStepMm,
  formatLength,
  type InchDenominator,
  type LengthFormat,
  type LengthUnit,
  roundedForDrawing,
} from './format-length.ts';
export { formatMass, type MassOptions, type MassUnit, parseMass, type TypedMass } from './mass.ts';
export {
  addMoney,
  allocate,
  applyRate,
  currencyExponent,
  divideRounded,
  isCurrency,
  type Money,
  money,
  rateWithin,
} from './money.ts';
export { decimalOf, formatMoney, MONEY_LIMIT_MINOR, type MoneyOptions, parseMoney } from './money-text.ts';
export { LENGTH_LIMIT_MM, type LengthOptions, parseLength, type TypedLength } from './parse-length.ts';
export { formatPercent, parsePercent, type TypedPercent } from './percent.ts';
export {
  type FigureOptions,
  type FigureUnit,
  formatNumber,
  parseNumber,
  type TypedFigure,
} from './plain-number.ts';
export { isRefusal, type Refusal, type RefusalDetail, refuse } from './refusal.ts';
export {
  addDays,
  addElapsedMinutes,
  daysBetween,
  formatInstant,
  formatShopDate,
  type InstantFormat,
  isInstant,
  isShopDate,
  isTimeZone,
  type ShopDate,
  type ShopTime,
  toInstant,
  toShopTime,
  weekdayOf,
} from './shop-time.ts';
export {
  celsiusFromFahrenheit,
  fahrenheitFromCelsius,
  formatTemperature,
  parseTemperature,
  type TemperatureUnit,
  type TypedTemperature,
} from './temperature.ts';
export {
  formatVolume,
  parseVolume,
  type TypedVolume,
  type VolumeFormat,
  type VolumeOptions,
  type VolumeSystem,
  type VolumeUnit,
} from './volume.ts';

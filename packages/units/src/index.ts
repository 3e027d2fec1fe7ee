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
export {
  type DrawingLength,
  displayStepMm,
  formatLength,
  type InchDenominator,
  type LengthFormat,
  type LengthUnit,
  roundedForDrawing,
} from './format-length.ts';
export {
  LENGTH_LIMIT_MM,
  type LengthOptions,
  parseLength,
  type TypedLength,
} from './parse-length.ts';
export { isRefusal, type Refusal, type RefusalDetail, refuse } from './refusal.ts';

// Exact conversions between the inch-pound and metric systems, by definition of 1959, and the one rounding of
// stored lengths. Everything inch-like in Gusset goes through these numbers and no others.

export const MM_PER_INCH = 25.4; // exact
export const MM_PER_FOOT = 304.8; // exact, 12 in
export const LITRES_PER_CUBIC_FOOT = 28.316846592; // exact, 304.8³ mm³
export const LITRES_PER_CUBIC_INCH = 0.016387064; // exact, 25.4³ mm³
export const M2_PER_SQUARE_FOOT = 0.09290304; // exact, 0.3048²
export const M2_PER_SQUARE_INCH = 0.00064516; // exact, 0.0254²
export const KG_PER_POUND = 0.45359237; // exact
export const KG_PER_OUNCE = 0.028349523125; // exact, a sixteenth of a pound
export const MM3_PER_LITRE = 1_000_000;

/** Stored lengths are whole nanometres: six decimals of a millimetre hold every 1/64 in (0.396875 mm) exactly. */
export const NM_PER_MM = 1_000_000;

/** Nearest whole nanometre, halves away from zero, so that mirrored lengths stay mirrored; never -0. */
export function storedMm(mm: number): number {
  const nanometres = Math.round(Math.abs(mm) * NM_PER_MM);
  return nanometres === 0 ? 0 : (Math.sign(mm) * nanometres) / NM_PER_MM;
}

export function mmFromInches(inches: number): number {
  return storedMm(inches * MM_PER_INCH);
}

export function inchesFromMm(mm: number): number {
  return mm / MM_PER_INCH;
}

// What a board's figures come to. Pure.

export type SheetFiguresSoFar = {
  readonly nominalThicknessMm?: number | null;
  readonly measuredThicknessMm?: number | null;
  readonly lengthMm?: number | null;
  readonly widthMm?: number | null;
  readonly densityKgPerM3?: number | null;
};

export type SheetFacts = {
  /** Calliper reading less nominal; null while one of them is missing. */
  readonly offMm: number | null;
  readonly areaM2: number | null;
  readonly massKg: number | null;
  readonly needsTwo: boolean;
};

/** Usual limit for one person lifting without help, close to the body (common occupational guidance). */
const ONE_PERSON_KG = 25;
const MM2_PER_M2 = 1e6;
const MM3_PER_M3 = 1e9;
/** Callipers in a workshop read to hundredths. */
const READING_STEP_MM = 0.01;

export function sheetFacts(figures: SheetFiguresSoFar): SheetFacts {
  const { nominalThicknessMm, measuredThicknessMm, lengthMm, widthMm, densityKgPerM3 } = figures;
  const areaMm2 = lengthMm && widthMm ? lengthMm * widthMm : null;
  const thicknessMm = measuredThicknessMm ?? nominalThicknessMm ?? null;
  const massKg =
    areaMm2 !== null && thicknessMm !== null && densityKgPerM3
      ? (areaMm2 * thicknessMm * densityKgPerM3) / MM3_PER_M3
      : null;
  return {
    offMm:
      measuredThicknessMm && nominalThicknessMm
        ? Math.round((measuredThicknessMm - nominalThicknessMm) / READING_STEP_MM) * READING_STEP_MM
        : null,
    areaM2: areaMm2 === null ? null : areaMm2 / MM2_PER_M2,
    massKg,
    needsTwo: massKg !== null && massKg > ONE_PERSON_KG,
  };
}

// What a box uses up beside its panels, from plain sizes. Quantities are rounded up to what can be measured out;
// how they are bought (tins, rolls, boxes) is the catalogue's business. Figures to start from, all to be edited,
// are in `usual-supplies.ts`.
import type { BoxFinish, BoxSuppliesInput, BoxSupply } from '@gusset/contracts/estimating';

const WHOLE_BASIS_POINTS = 10_000;

/** Every supply with a quantity above 0, in the order of the work: glue, screws, sealant, finish, hardware. */
export function suppliesFromBox(input: BoxSuppliesInput): BoxSupply[] {
  const boltCount = input.drivers.reduce((sum, driver) => sum + driver.boltCount, 0);
  const gasketM = input.drivers.reduce((sum, driver) => sum + driver.gasketM, 0);
  const all: readonly BoxSupply[] = [
    { code: 'wood-glue', name: 'Wood glue', quantity: upTo(glueKg(input), 0.01), unit: 'kg' },
    { code: 'joint-screws', name: 'Screws for joints', quantity: jointScrews(input), unit: 'pcs' },
    {
      code: 'seam-sealant',
      name: 'Sealant for inside seams',
      quantity: upTo(sealantLitres(input), 0.01),
      unit: 'L',
    },
    ...finishSupplies(input.finish),
    { code: 'driver-bolts', name: 'Driver bolts and inserts', quantity: boltCount, unit: 'pcs' },
    { code: 'gasket-tape', name: 'Gasket tape', quantity: upTo(gasketM, 0.1), unit: 'm' },
  ];
  return all.filter(({ quantity }) => quantity > 0);
}

function glueKg(input: BoxSuppliesInput): number {
  const lengthM = input.jointLengthsM.reduce((sum, jointM) => sum + jointM, 0);
  const areaM2 = (lengthM * input.jointWidthMm) / 1000;
  return withWaste((areaM2 * input.glueGramsPerM2) / 1000, input.glueWasteBasisPoints);
}

/** Per joint: one at each end, clear of the corner, and between them no further apart than the spacing. */
function jointScrews({ screws, jointLengthsM }: BoxSuppliesInput): number {
  if (screws === null) return 0;
  return jointLengthsM.reduce((count, jointM) => {
    if (jointM === 0) return count;
    const betweenEndsMm = jointM * 1000 - 2 * screws.fromCornerMm;
    if (betweenEndsMm <= 0) return count + 1; // too short for two: one in the middle
    return count + 1 + wholeUp(betweenEndsMm / screws.spacingMm);
  }, 0);
}

/** A fillet's section is a right-angled triangle: leg² / 2. */
function sealantLitres({ sealedSeamM, filletLegMm, sealantWasteBasisPoints }: BoxSuppliesInput): number {
  const mm3 = ((filletLegMm * filletLegMm) / 2) * sealedSeamM * 1000;
  return withWaste(mm3 / 1_000_000, sealantWasteBasisPoints);
}

function finishSupplies(finish: BoxFinish): BoxSupply[] {
  switch (finish.kind) {
    case 'none':
      return [];
    case 'coating':
      return [{ code: 'coating', name: finish.name, quantity: upTo(coatingLitres(finish), 0.01), unit: 'L' }];
    case 'carpet':
      return carpetSupplies(finish);
  }
}

/** Area x coats / coverage x (1 + waste) + what the roller keeps. No area: no roller is wetted. */
export function coatingLitres(coating: Extract<BoxFinish, { kind: 'coating' }>): number {
  if (coating.areaM2 === 0) return 0;
  const filmLitres = (coating.areaM2 * coating.coats) / coating.coverageM2PerLitre;
  return withWaste(filmLitres, coating.wasteBasisPoints) + coating.rollerLossLitres;
}

/** Carpet in metres of its roll, and adhesive for what is covered. */
function carpetSupplies(carpet: Extract<BoxFinish, { kind: 'carpet' }>): BoxSupply[] {
  const coveredM2 = (carpet.wrapMm * carpet.acrossMm) / 1_000_000 + carpet.endsM2;
  const adhesiveLitres = withWaste(coveredM2 / carpet.adhesiveM2PerLitre, carpet.adhesiveWasteBasisPoints);
  return [
    { code: 'carpet', name: carpet.name, quantity: upTo(carpetRollM(carpet), 0.1), unit: 'm' },
    { code: 'carpet-adhesive', name: 'Carpet adhesive', quantity: upTo(adhesiveLitres, 0.01), unit: 'L' },
  ];
}

/**
 * Length off the roll. The strip is longer than the wrap by its overlap and wider than the box by a turn-in at each
 * end; it lies along the roll, in as many widths as it takes, or across it where that is shorter. The ends are cut
 * behind it, not beside it: what is left beside a strip is seldom wide enough.
 */
export function carpetRollM(carpet: Extract<BoxFinish, { kind: 'carpet' }>): number {
  const lengthMm = carpet.wrapMm + carpet.overlapMm;
  const widthMm = carpet.acrossMm + 2 * carpet.turnInMm;
  const alongMm = lengthMm * wholeUp(widthMm / carpet.rollWidthMm);
  const acrossMm = widthMm * wholeUp(lengthMm / carpet.rollWidthMm);
  const endsMm = (carpet.endsM2 * 1_000_000) / carpet.rollWidthMm;
  return withWaste((Math.min(alongMm, acrossMm) + endsMm) / 1000, carpet.wasteBasisPoints);
}

function withWaste(quantity: number, wasteBasisPoints: number): number {
  return (quantity * (WHOLE_BASIS_POINTS + wasteBasisPoints)) / WHOLE_BASIS_POINTS;
}

/** Up to the next whole step; floating-point dust of a billionth makes no further step. */
function upTo(quantity: number, step: number): number {
  return Number((wholeUp(quantity / step) * step).toFixed(6));
}

function wholeUp(value: number): number {
  return Math.ceil(value - FLOAT_DUST);
}

const FLOAT_DUST = 1e-9;

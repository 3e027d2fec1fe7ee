// Lowest bending mode of a panel, thin plate, simply supported on all four edges: a careful floor, since glued
// edges are stiffer. Timoshenko and Woinowsky-Krieger, "Theory of Plates and Shells": f = (π/2) √(D / (ρ t)) (1/a² + 1/b²).
import type { PanelStock } from '@gusset/contracts/enclosure';

/** Poisson's ratio of sheet goods; 0.2 to 0.3 changes f by under 3 %. */
const POISSON = 0.25;

export type Plate = { readonly stock: PanelStock; readonly thicknessMm: number };

/** (π/2) √(D / (ρ t)), in Hz m². The layers of a doubled panel are one sheet: glued, and of one stock. */
function stiffnessHzM2({ stock, thicknessMm }: Plate): number {
  const thicknessM = thicknessMm / 1_000;
  const bendingNm = (stock.modulusGPa * 1e9 * thicknessM ** 3) / (12 * (1 - POISSON ** 2));
  return (Math.PI / 2) * Math.sqrt(bendingNm / (stock.densityKgM3 * thicknessM));
}

/** First mode of a clear span of `acrossMm` by `upMm`, Hz. */
export function firstModeHz(plate: Plate, acrossMm: number, upMm: number): number {
  return stiffnessHzM2(plate) * ((1_000 / acrossMm) ** 2 + (1_000 / upMm) ** 2);
}

/** Widest span across at which a panel `upMm` high still reaches `targetHz`; null where any width does. */
export function widestSpanMm(plate: Plate, upMm: number, targetHz: number): number | null {
  const needed = targetHz / stiffnessHzM2(plate) - (1_000 / upMm) ** 2; // 1/m²
  return needed <= 0 ? null : 1_000 / Math.sqrt(needed);
}

/** Thickness at which the same span reaches `targetHz`: f rises in step with t. */
export function thicknessForModeMm(plate: Plate, modeHz: number, targetHz: number): number {
  return (plate.thicknessMm * targetHz) / modeHz;
}

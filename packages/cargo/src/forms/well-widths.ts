// How wide a well with rounded corners and sloping sides is, by place: slabs that never reach past the true outline.
import type { PointMm } from '@gusset/contracts/geometry';
import { rectangle } from '../plane/polygon.ts';
import type { PlannedSlab } from './construction.ts';

export type WellWidths = {
  readonly rimWidthMm: number;
  readonly bottomWidthMm: number;
  /** How far the corners bend, seen from above at the rim; half of the length = round. */
  readonly cornerReachMm: number;
};

type WellEnds = {
  readonly frontRim: PointMm;
  readonly rearRim: PointMm;
  readonly frontBottom: PointMm;
  readonly rearBottom: PointMm;
};

/** Steps of a bent corner along the car, and of the sloping sides up. More would be finer than the tape is. */
const CORNER_STEPS = 4;
const HEIGHT_STEPS = 2;
/** A width that a place without any is given, mm: a slab has one. */
const NO_WIDTH_MM = 1;

/**
 * Steps up the well, each as narrow as at its foot; within a step the bent corners in steps along the car, each as narrow
 * as at its outer end. Equal angles of the bend make the steps: the first are short, where the side bends the most.
 */
export function wellSlabs(ends: WellEnds, widths: WellWidths): PlannedSlab[] {
  const depthMm = ends.frontRim.yMm;
  const slopes = widths.bottomWidthMm < widths.rimWidthMm || ends.frontBottom.xMm > ends.frontRim.xMm;
  const steps = slopes ? HEIGHT_STEPS : 1;
  return Array.from({ length: steps }, (_, step) => {
    const low = step / steps;
    const between = (bottom: number, top: number) => bottom + (top - bottom) * low;
    const footprint = {
      frontMm: between(ends.frontBottom.xMm, ends.frontRim.xMm),
      rearMm: between(ends.rearBottom.xMm, ends.rearRim.xMm),
      widthMm: between(widths.bottomWidthMm, widths.rimWidthMm),
    };
    const id = steps === 1 || step === steps - 1 ? 'top' : `bottom-${step}`;
    const heights = { yMinMm: depthMm * low, yMaxMm: (depthMm * (step + 1)) / steps };
    return slabsOfStep(id, footprint, widths.cornerReachMm, heights, ends);
  }).flat();
}

type Footprint = { readonly frontMm: number; readonly rearMm: number; readonly widthMm: number };
type Heights = { readonly yMinMm: number; readonly yMaxMm: number };

function slabsOfStep(
  id: string,
  { frontMm, rearMm, widthMm }: Footprint,
  cornerReachMm: number,
  heights: Heights,
  { frontRim, rearRim }: WellEnds,
): PlannedSlab[] {
  const reachMm = Math.max(0, Math.min(cornerReachMm, (rearMm - frontMm) / 2, widthMm / 2));
  const where = id === 'top' ? 'at the rim' : 'at the bottom';
  const slab = (part: string, xMinMm: number, xMaxMm: number, width: number): PlannedSlab => ({
    id: part === '' ? id : `${id}-${part}`,
    name: part === '' ? where : `${where}, bend`,
    polygon: rectangle({ xMinMm, xMaxMm, ...heights }),
    widthMm: Math.max(NO_WIDTH_MM, width),
  });
  const whole = slab('', Math.min(frontMm, frontRim.xMm), Math.max(rearMm, rearRim.xMm), widthMm);
  if (reachMm === 0) return [whole];
  const bends = Array.from({ length: CORNER_STEPS }, (_, step) => {
    const [from, to] = [step, step + 1].map((it) => (it / CORNER_STEPS) * (Math.PI / 2));
    const [outerMm, innerMm] = [reachMm * (1 - Math.cos(from ?? 0)), reachMm * (1 - Math.cos(to ?? 0))];
    const narrowMm = widthMm - 2 * reachMm * (1 - Math.sin(from ?? 0));
    // The first step also covers what the sloping end leaves above it: nothing is wider there.
    const startMm = step === 0 ? Math.min(frontMm, frontRim.xMm) : frontMm + outerMm;
    const endMm = step === 0 ? Math.max(rearMm, rearRim.xMm) : rearMm - outerMm;
    return [
      slab(`front-${step}`, startMm, frontMm + innerMm, narrowMm),
      slab(`rear-${step}`, rearMm - innerMm, endMm, narrowMm),
    ];
  }).flat();
  return [whole, ...bends];
}

// What is done at each step of the glue-up, in the words of the bench.
import type { AssemblyPlan, AssemblyStep } from '@gusset/contracts/cutting';
import { formatMinutes } from '@gusset/units';

type LengthWords = (mm: number) => string;

const TITLES: Readonly<Record<AssemblyStep['what'], string>> = {
  openings: 'Cut the openings',
  laminate: 'Glue the doublers on',
  dry: 'Put it together dry',
  glue: 'Glue',
  strips: 'Corner strips and fillets',
  try: 'Stop: carry it into the vehicle',
  close: 'Close the box',
  leak: 'Listen for leaks',
  flush: 'Trim flush and round over',
};

export function stepTitle(step: AssemblyStep): string {
  return TITLES[step.what];
}

/** The sentence under the title. */
export function stepDetail(step: AssemblyStep, { baseMark, closingMark }: AssemblyPlan): string {
  switch (step.what) {
    case 'openings':
      return 'Recesses first, then what goes through, while each panel still lies flat on the bench.';
    case 'laminate':
      return 'Spread the whole face, clamp round the edge, scrape the cut-out clean before it sets.';
    case 'dry':
      return 'Clamped, without glue: every joint closed, both diagonals alike, drivers in their recesses.';
    case 'glue':
      return step.marks.includes(baseMark)
        ? `${baseMark} lies flat; the others stand on it square to each other.`
        : 'Within the open time; wipe what is squeezed out on the inside.';
    case 'strips':
      return 'Everything inside that the last panel will hide: strips glued in, each seam run round with sealant.';
    case 'try':
      return `In through the opening, to its place, out again, with ${closingMark} still off. What does not fit is cheap to alter now.`;
    case 'close':
      return 'Cables through, lining in, seams of the last panel sealed from the driver’s cut-out.';
    case 'leak':
      return 'Drivers in: press a cone gently and let go; it comes back slowly if the box is tight.';
    case 'flush':
      return 'Bearing bit along the faces that stay, then the edges; no screws within the radius.';
  }
}

/** Screws, clamps and glue line; empty where nothing is glued. */
export function stepFigures(step: AssemblyStep, length: LengthWords): string {
  if (step.clamps === 0 && step.screws === 0) return '';
  return [
    ...(step.seamMm > 0 ? [`${length(step.seamMm)} of glue line`] : []),
    ...(step.screws > 0 ? [`${step.screws} screws`] : []),
    ...(step.clamps > 0 && step.clampMinutes > 0 ? [`${step.clamps} clamps`] : []),
  ].join(', ');
}

/** `clamps 1 h, then leave it alone until 2 h`; empty where nothing has to set. */
export function waitWords({ clampMinutes, waitMinutes }: AssemblyStep): string {
  if (waitMinutes === 0) return '';
  const left = `leave it ${formatMinutes(waitMinutes)} before it is carried or cut`;
  return clampMinutes === 0 ? left : `in clamps for ${formatMinutes(clampMinutes)}, ${left}`;
}

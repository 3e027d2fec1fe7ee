// The search for a box of a given net volume: one outside dimension moves, everything else stays.
import type { BoxDesign, BoxShape } from '@gusset/contracts/enclosure';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { type BoxPlan, planBox } from './box-plan.ts';
import { OUTSIDE_MM, TARGET_LITRES } from './limits.ts';
import { polygonExtent } from './plane.ts';

export type VariedDimension = 'depth' | 'height' | 'width';

export type NetVolumeSearch = {
  readonly design: BoxDesign;
  readonly targetNetLitres: number;
  readonly vary: VariedDimension;
};

/** Fixed count of braces in place of a suggestion, so that the volume grows with the box without steps. */
type Braces = number | 'as designed';

const BRACE_COUNTS = [0, 1, 2, 3, 4, 5, 6];
/** Halvings of 3 m: down to 1e-11 mm, which no volume can show any more. */
const HALVINGS = 48;

/** The outside dimension that is moved, as the design has it. */
function currentMm(shape: BoxShape, vary: VariedDimension): number {
  if (vary === 'width') return shape.widthMm;
  if (shape.kind === 'profile') {
    const { xMinMm, xMaxMm, yMinMm, yMaxMm } = polygonExtent(shape.walls);
    return vary === 'depth' ? xMaxMm - xMinMm : yMaxMm - yMinMm;
  }
  if (vary === 'height') return shape.heightMm;
  return shape.kind === 'rectangular' ? shape.depthMm : shape.depthBottomMm;
}

/**
 * The shape with one dimension set. A wedge's depth moves top and bottom together, so its slope stays; its height
 * keeps both depths, and a knee keeps its share of the height. A free profile is stretched.
 */
function withDimension(shape: BoxShape, vary: VariedDimension, mm: number): BoxShape {
  if (vary === 'width') return { ...shape, widthMm: mm };
  if (shape.kind === 'profile') return stretched(shape, vary, mm);
  if (vary === 'height') {
    return shape.kind === 'clipped-wedge'
      ? { ...shape, heightMm: mm, kneeHeightMm: (shape.kneeHeightMm * mm) / shape.heightMm }
      : { ...shape, heightMm: mm };
  }
  if (shape.kind === 'rectangular') return { ...shape, depthMm: mm };
  return { ...shape, depthBottomMm: mm, depthTopMm: mm - (shape.depthBottomMm - shape.depthTopMm) };
}

function stretched(
  shape: Extract<BoxShape, { kind: 'profile' }>,
  vary: 'depth' | 'height',
  mm: number,
): BoxShape {
  const { xMinMm, yMinMm } = polygonExtent(shape.walls);
  const factor = mm / currentMm(shape, vary);
  const walls = shape.walls.map(({ face, xMm, yMm }) =>
    vary === 'depth'
      ? { face, xMm: (xMm - xMinMm) * factor, yMm: yMm - yMinMm }
      : { face, xMm: xMm - xMinMm, yMm: (yMm - yMinMm) * factor },
  );
  return { ...shape, walls };
}

function candidate({ design, vary }: NetVolumeSearch, mm: number, braces: Braces): BoxDesign {
  const shape = withDimension(design.shape, vary, mm);
  const { bracing } = design;
  if (braces === 'as designed' || bracing.kind !== 'suggested') return { ...design, shape };
  if (braces === 0) return { ...design, shape, bracing: { kind: 'none' } };
  const { solidFraction, offCentre } = bracing;
  return { ...design, shape, bracing: { kind: 'count', count: braces, solidFraction, offCentre } };
}

const netOf = (plan: BoxPlan | Refusal) => (isRefusal(plan) ? null : plan.volumes.netLitres);

type Found = { readonly design: BoxDesign; readonly plan: BoxPlan };

/** Bisects between a box too small (or none at all) and the largest. Null where even the largest is too small. */
function solve(search: NetVolumeSearch, braces: Braces): Found | null {
  const { targetNetLitres } = search;
  let highMm = largestMm(search, braces);
  const largest = netOf(planBox(candidate(search, highMm, braces)));
  if (largest === null || largest < targetNetLitres) return null;
  let lowMm = 0;
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middleMm = (lowMm + highMm) / 2;
    const net = netOf(planBox(candidate(search, middleMm, braces)));
    if (net === null || net < targetNetLitres) lowMm = middleMm;
    else highMm = middleMm;
  }
  const design = candidate(search, highMm, braces);
  const plan = planBox(design);
  return isRefusal(plan) ? null : { design, plan };
}

/** The largest dimension that the door lets through; steep wedges turn too flat before the box is 3 m high. */
function largestMm(search: NetVolumeSearch, braces: Braces): number {
  const fits = (mm: number) => !isRefusal(planBox(candidate(search, mm, braces)));
  if (fits(OUTSIDE_MM.max)) return OUTSIDE_MM.max;
  let goodMm = currentMm(search.design.shape, search.vary);
  let badMm = OUTSIDE_MM.max;
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middleMm = (goodMm + badMm) / 2;
    if (fits(middleMm)) goodMm = middleMm;
    else badMm = middleMm;
  }
  return goodMm;
}

/** Net volume may miss the target by the rounding of the bisection, or because no smaller box can be built. */
const TARGET_HAIR = 1e-9;

const reaches = (net: number, target: number) => Math.abs(net - target) <= TARGET_HAIR * Math.max(1, target);

/** A suggestion that depends on the box's size is settled by trying each count, fewest first. */
function settle(search: NetVolumeSearch): Found | null {
  if (search.design.bracing.kind !== 'suggested') return solve(search, 'as designed');
  let last: Found | null = null;
  for (const count of BRACE_COUNTS) {
    const found = solve(search, count);
    if (found === null) continue;
    last = found;
    const suggested = planBox({ ...found.design, bracing: search.design.bracing });
    if (isRefusal(suggested)) continue;
    if (suggested.braces.frames.length === count) {
      return { design: { ...found.design, bracing: search.design.bracing }, plan: suggested };
    }
    if (suggested.braces.frames.length < count) return found;
  }
  return last;
}

function refuseTarget(search: NetVolumeSearch, why: string, got: number): Refusal {
  const { vary } = search;
  return refuse('targetNetLitres', { allowed: `a net volume that a change of ${vary} can reach`, got, why });
}

/**
 * The design with its `vary` dimension set so that the net volume is the target. Refused where no size of that
 * dimension gives it. Where braces are suggested and their number would jump just there, they come back counted.
 */
export function boxForNetVolume(search: NetVolumeSearch): BoxDesign | Refusal {
  const { design, targetNetLitres, vary } = search;
  if (!(targetNetLitres >= TARGET_LITRES.min && targetNetLitres <= TARGET_LITRES.max)) {
    return refuse('targetNetLitres', {
      allowed: `${TARGET_LITRES.min} to ${TARGET_LITRES.max} L`,
      got: targetNetLitres,
      why: 'no box holds that',
    });
  }
  const start = planBox(design);
  if (isRefusal(start)) return start;
  const found = settle(search);
  if (found === null) {
    return refuseTarget(search, `the largest ${vary} the shop can build is still too small`, targetNetLitres);
  }
  const net = found.plan.volumes.netLitres;
  return reaches(net, targetNetLitres)
    ? found.design
    : refuseTarget(
        search,
        `the smallest ${vary} that can be built already gives ${net.toFixed(2)} L`,
        targetNetLitres,
      );
}

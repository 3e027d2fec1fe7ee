// Buttons that set dimensions: one so that the net volume meets its target, or all of them from the section.
import { largestStraightBox, placeBox } from '@gusset/cargo';
import type { BoxFacts, BoxInput, BoxLength } from '@gusset/contracts/box';
import type { CavityResult, StraightBox, WallRole } from '@gusset/contracts/cargo';
import type { BoxDesign } from '@gusset/contracts/enclosure';
import { boxForNetVolume, type VariedDimension } from '@gusset/enclosure';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { type BoxUpstream, boxDesignOf } from './box-design.ts';
import { atBoxField } from './box-fields.ts';
import { usualBack } from './box-place.ts';

/** A saw cannot be set finer; the net volume then misses its target by less than a part in a thousand. */
const STEP_MM = 0.1;
/** Of a step: what division leaves behind. */
const HAIR = 1e-6;

/** The input with its depth, height or width set so that the net volume is what the sound sheet wants. */
export function boxWithNet(
  input: BoxInput,
  facts: BoxFacts,
  upstream: BoxUpstream,
  vary: VariedDimension,
): BoxInput | Refusal {
  const targetNetLitres = upstream.sound?.netLitres ?? null;
  if (targetNetLitres === null) {
    return refuse('targetNet', {
      allowed: 'a net volume on sheet 03',
      got: null,
      why: 'sheet 03 Sound has no target yet',
    });
  }
  const designed = boxDesignOf(input, facts, upstream);
  if ('missing' in designed) {
    const first = designed.missing[0];
    const why = `still missing: ${first?.what ?? 'a dimension'}`;
    return refuse(first?.field ?? 'outside', { allowed: 'a complete box', got: null, why });
  }
  const found = boxForNetVolume({ design: designed.design, targetNetLitres, vary });
  return isRefusal(found) ? { refusal: atBoxField(found.refusal) } : withDesign(input, found);
}

/** Sizes of the found design, and its braces where their number had to be fixed. */
function withDesign(input: BoxInput, { shape, bracing }: BoxDesign): BoxInput {
  if (shape.kind === 'profile') return withProfile(input, shape, bracing);
  const { outside } = input;
  const depthTop = shape.kind === 'rectangular' ? outside.depthTop : set(outside.depthTop, shape.depthTopMm);
  const kneeHeight =
    shape.kind === 'clipped-wedge' ? set(outside.kneeHeight, shape.kneeHeightMm) : outside.kneeHeight;
  return {
    ...input,
    outside: {
      width: set(outside.width, shape.widthMm),
      height: set(outside.height, shape.heightMm),
      depth: set(outside.depth, shape.kind === 'rectangular' ? shape.depthMm : shape.depthBottomMm),
      depthTop,
      kneeHeight,
    },
    bracing:
      bracing.kind === 'count'
        ? { kind: 'count', count: bracing.count }
        : bracing.kind === 'none'
          ? bracing
          : input.bracing,
  };
}

type Profile = Extract<BoxDesign['shape'], { kind: 'profile' }>;

/** Sizes of an L, read back from its corners. */
function withProfile(input: BoxInput, { walls, widthMm }: Profile, bracing: BoxDesign['bracing']): BoxInput {
  const { outside } = input;
  const depthMm = Math.max(...walls.map(({ xMm }) => xMm));
  const upright = walls.find(({ face }) => face === 'slope-1');
  const foot = walls.find(({ face }) => face === 'slope-2');
  if (upright === undefined || foot === undefined) return input;
  return {
    ...input,
    outside: {
      width: set(outside.width, widthMm),
      height: set(outside.height, Math.max(...walls.map(({ yMm }) => yMm))),
      depth: set(outside.depth, depthMm),
      depthTop: set(outside.depthTop, input.slopedFace === 'front' ? upright.xMm : depthMm - upright.xMm),
      kneeHeight: set(outside.kneeHeight, foot.yMm),
    },
    bracing: bracing.kind === 'count' ? { kind: 'count', count: bracing.count } : input.bracing,
  };
}

/** What was typed stays where the search did not move it. */
function set(before: BoxLength | null, valueMm: number): BoxLength {
  if (before !== null && Math.abs(before.mm - valueMm) < STEP_MM / 2) return before;
  return inTenths(valueMm);
}

/** As if it had been typed. */
function inTenths(valueMm: number): BoxLength {
  const figure = valueMm.toFixed(1).replace(/\.0$/u, '');
  return { mm: Number(figure), typed: figure, unit: 'mm' };
}

export type BoxFromSection = { readonly input: BoxInput; readonly found: StraightBox };

/**
 * The largest box of this shape that stands in the surveyed section with every wanted clearance at worst; null where
 * none does. Sizes are of the wood, so the finish is taken off the room there is.
 */
export function boxFromSection(
  input: BoxInput,
  facts: BoxFacts,
  upstream: BoxUpstream,
): BoxFromSection | null | Refusal {
  const cavity = upstream.survey?.cavity ?? null;
  if (cavity === null) {
    return refuse('survey', {
      allowed: 'a section on sheet 02',
      got: null,
      why: 'nobody has measured the car yet',
    });
  }
  const { shape, slopedFace, place, outside } = input;
  const askedBack = place.by === 'rest' ? place.back : null;
  const back = askedBack ?? usualBack(cavity);
  const { clearances } = facts;
  const wish = { shape: shape === 'wedge' ? 'wedge' : 'box', slope: slopedFace, back, clearances } as const;
  const found = largestStraightBox(cavity, wish);
  if (found === null || isRefusal(found)) return found;
  const gapMm = gapBehind(cavity, found, back);
  if (isRefusal(gapMm)) return gapMm;
  const cover = finishMm(input, facts, found);
  const deepAt = (upMm: number) => woodLength(depthAt(found, upMm) - cover.front - cover.back - STEP_MM);
  return {
    found,
    input: {
      ...input,
      outside: {
        width: woodLength(found.widthMm - cover.left - cover.right),
        height: woodLength(found.heightMm - cover.top - cover.bottom),
        depth: deepAt(cover.bottom),
        depthTop: shape === 'wedge' ? deepAt(found.heightMm - cover.top) : outside.depthTop,
        kneeHeight: outside.kneeHeight,
      },
      place: { by: 'rest', back: askedBack, gap: inTenths(Math.ceil(gapMm / STEP_MM) * STEP_MM) },
    },
  };
}

/** Of the finished box that much above its bottom: the wood of a wedge begins above its finish. */
function depthAt({ depthBottomMm, depthTopMm, heightMm }: StraightBox, upMm: number): number {
  return depthBottomMm + ((depthTopMm - depthBottomMm) * upMm) / heightMm;
}

/** Rounded down to what the saw can be set to. */
const woodLength = (mm: number) => inTenths(Math.floor(Math.max(0, mm) / STEP_MM + HAIR) * STEP_MM);

/** How far the found box stands off the wall behind it: what is wanted there and the ± of the survey. */
function gapBehind(cavity: CavityResult, found: StraightBox, back: WallRole): number | Refusal {
  const { profile, widthMm, pose } = found;
  const placed = placeBox({ cavity, profile, widthMm, pose });
  if (isRefusal(placed)) return placed;
  const behind = placed.clearances.filter(({ surface }) => surface.type === 'wall' && surface.role === back);
  return Math.max(0, Math.min(...behind.map(({ clearanceMm }) => clearanceMm)));
}

/** What the finish takes along the depth, height and width; on a leaning face more than its thickness. */
function finishMm({ finishes, shape, slopedFace }: BoxInput, facts: BoxFacts, found: StraightBox) {
  const of = (id: string | null) =>
    facts.finishes.find((finish) => finish.id === id)?.figures.thicknessMm ?? 0;
  const leanMm = found.depthBottomMm - found.depthTopMm;
  const stretch = Math.hypot(leanMm, found.heightMm) / found.heightMm;
  return {
    front: of(finishes.front) * (shape === 'wedge' && slopedFace === 'front' ? stretch : 1),
    back: of(finishes.back) * (shape === 'wedge' && slopedFace === 'back' ? stretch : 1),
    top: of(finishes.top),
    bottom: of(finishes.bottom),
    left: of(finishes.left),
    right: of(finishes.right),
  };
}

// The largest straight-sided box on the floor of a cavity: rectangular, or a wedge whose back or front slopes.
// For one height the sloping side is a line; the area it leaves is concave in its lean (each wall asks for one
// half-plane of lines), so scan and pattern search find the best lean, a bisection its place, another the front. The
// height is scanned and refined likewise. Clearances are kept after every ± of the survey.
import {
  type CavityResult,
  type ClearanceSettings,
  DEFAULT_CLEARANCES,
  type StraightBox,
  type WallRole,
} from '@gusset/contracts/cargo';
import type { PolygonMm } from '@gusset/contracts/geometry';
import { type Refusal, refuse } from '@gusset/units';
import { distanceRefusal } from './box-input.ts';
import { minus, plus } from './plane/vector.ts';
import { type Stand, standOf } from './rest-against.ts';
import { type Field, fieldFor, isClear, lineIsClear, prismsOf, type Quad } from './straight-box-field.ts';

export type StraightBoxWish = {
  readonly shape: 'box' | 'wedge';
  /** Which side of a wedge slopes inward on its way up. */
  readonly slope?: 'back' | 'front';
  /** Null or left out = as much as there is room for. */
  readonly widthMm?: number | null;
  readonly heightMm?: number | null;
  readonly depthBottomMm?: number | null;
  /** Top of a wedge: at least this deep. */
  readonly leastTopMm?: number;
  /** The wall behind the box; left out = cab wall if there is one, else seat back. */
  readonly back?: WallRole;
  readonly clearances?: ClearanceSettings;
};

/** Smaller than this is no box, mm. */
const LEAST_SIDE_MM = 40;
const MM3_PER_LITRE = 1e6;

/** Null = no such box stands there with the wanted clearances. */
export function largestStraightBox(
  cavity: CavityResult,
  wish: StraightBoxWish,
): StraightBox | null | Refusal {
  const wanted = wish.clearances ?? DEFAULT_CLEARANCES;
  const { widthMm = null, heightMm = null, depthBottomMm = null, leastTopMm = LEAST_SIDE_MM } = wish;
  const asked = { widthMm, heightMm, depthBottomMm, leastTopMm };
  for (const [field, value] of Object.entries(asked)) {
    if (value !== null && !(value > 0)) {
      return refuse(field, { allowed: 'above 0 mm', got: value, why: 'a box has three sizes' });
    }
  }
  const refusal = distanceRefusal(wanted);
  if (refusal !== null) return refusal;
  const stand = standOf(cavity, wish.back ?? usualBack(cavity));
  if ('refusal' in stand) return stand;
  if (stand.away.xMm * (stand.floor.to.xMm - stand.floor.from.xMm) < 0) {
    return refuse('back', {
      allowed: 'the wall where the floor begins',
      got: wish.back ?? null,
      why: 'the box is laid out from the wall at the far end of the floor from the opening',
    });
  }
  const slope = wish.shape === 'box' ? null : (wish.slope ?? 'back');
  const search = { slope, heightMm, depthBottomMm, leastTopMm };
  let best: StraightBox | null = null;
  for (const width of widthsToTry(cavity, wanted, widthMm)) {
    const section = largestSection(fieldFor(cavity, stand, width.widthMm, wanted), search);
    if (section === null) continue;
    const outsideLitres = (areaOf(section) * width.widthMm) / MM3_PER_LITRE;
    if (best === null || outsideLitres > best.outsideLitres) best = asBox(section, width, stand);
  }
  return best;
}

function usualBack(cavity: CavityResult): WallRole {
  return cavity.walls.some((wall) => wall.role === 'cab-wall') ? 'cab-wall' : 'seat-back';
}

type WidthToTry = { readonly widthMm: number; readonly limit: StraightBox['widthLimit'] };

/** Widest first: through the opening, between the sides of each slab, beside each obstruction. */
function widthsToTry(
  cavity: CavityResult,
  wanted: ClearanceSettings,
  askedMm: number | null,
): readonly WidthToTry[] {
  if (askedMm !== null) return [{ widthMm: askedMm, limit: 'asked' }];
  const { opening } = cavity;
  const openingMm = opening.widthMm - opening.widthPlusMinusMm - 2 * wanted.openingMm;
  const between = prismsOf(cavity, wanted).flatMap(({ kind, offCentreMm, wantedMm, acrossPlusMinusMm }) => {
    if (offCentreMm === null) return [];
    return [{ widthMm: 2 * (offCentreMm - wantedMm - acrossPlusMinusMm), limit: kind }];
  });
  const all: WidthToTry[] = [{ widthMm: openingMm, limit: 'opening' }, ...between];
  return all
    .filter(({ widthMm }) => widthMm >= LEAST_SIDE_MM && widthMm <= openingMm)
    .sort((a, b) => b.widthMm - a.widthMm)
    .filter((it, index, sorted) => it.widthMm !== sorted[index - 1]?.widthMm);
}

/** Along the floor: the back side from `backMm` (bottom) leaning by `backLeanMm`, the front likewise inward. */
type Section = {
  readonly backMm: number;
  readonly backLeanMm: number;
  readonly frontMm: number;
  readonly frontLeanMm: number;
  readonly heightMm: number;
};

type Search = {
  readonly slope: 'back' | 'front' | null;
  readonly heightMm: number | null;
  readonly depthBottomMm: number | null;
  readonly leastTopMm: number;
};

function areaOf({ backMm, backLeanMm, frontMm, frontLeanMm, heightMm }: Section): number {
  return heightMm * (frontMm - backMm - (backLeanMm + frontLeanMm) / 2);
}

function quadOf({ backMm, backLeanMm, frontMm, frontLeanMm, heightMm }: Section): Quad {
  return [
    { xMm: backMm, yMm: 0 },
    { xMm: frontMm, yMm: 0 },
    { xMm: frontMm - frontLeanMm, yMm: heightMm },
    { xMm: backMm + backLeanMm, yMm: heightMm },
  ];
}

const HEIGHT_STEPS = 48;
const HEIGHT_HALVINGS = 20;

function largestSection(field: Field, search: Search): Section | null {
  const { heightMm } = search;
  if (heightMm !== null) return sectionAt(field, search, heightMm);
  return climbed((atMm) => sectionAt(field, search, atMm), field.topMm, HEIGHT_STEPS, HEIGHT_HALVINGS);
}

/** Largest section over 0 to `topMm`: scanned in even steps, then one step each way from the best, halved in turn. */
function climbed(
  sectionOf: (atMm: number) => Section | null,
  topMm: number,
  steps: number,
  halvings: number,
): Section | null {
  let reachMm = topMm / steps;
  let atMm = 0;
  let best: Section | null = null;
  const tried = (tryMm: number): boolean => {
    const section = tryMm < 0 ? null : sectionOf(tryMm);
    if (section === null || (best !== null && areaOf(section) <= areaOf(best))) return false;
    best = section;
    atMm = tryMm;
    return true;
  };
  for (let step = 0; step <= steps; step += 1) tried(step * (topMm / steps));
  if (best === null) return null;
  for (let halving = 0; halving < halvings; ) {
    if (tried(atMm + reachMm) || tried(atMm - reachMm)) continue;
    reachMm /= 2;
    halving += 1;
  }
  return best;
}

const LEAN_STEPS = 16;
const LEAN_HALVINGS = 16;

/** Best section of one height. Where the depth is given, the least lean that stands gives the most. */
function sectionAt(field: Field, search: Search, heightMm: number): Section | null {
  if (heightMm < LEAST_SIDE_MM || heightMm > field.topMm) return null;
  const leanedBy = (leanMm: number) => leaned(field, search, heightMm, leanMm);
  const upright = leanedBy(0);
  if (search.slope === null) return upright;
  if (search.depthBottomMm === null) return climbed(leanedBy, field.farMm, LEAN_STEPS, LEAN_HALVINGS);
  const steepestMm = search.depthBottomMm - search.leastTopMm;
  if (upright !== null || steepestMm <= 0 || leanedBy(steepestMm) === null) return upright;
  return leanedBy(-farthest(-steepestMm, 0, (leanMm) => leanedBy(-leanMm) !== null));
}

function leaned(field: Field, search: Search, heightMm: number, leanMm: number): Section | null {
  const backLeanMm = search.slope === 'back' ? leanMm : 0;
  const frontLeanMm = search.slope === 'front' ? leanMm : 0;
  const backMm = nearestBack(field, heightMm, backLeanMm);
  if (backMm === null) return null;
  const leastBottomMm = leanMm + Math.max(LEAST_SIDE_MM, search.slope === null ? 0 : search.leastTopMm);
  const section = (frontMm: number): Section => ({ backMm, backLeanMm, frontMm, frontLeanMm, heightMm });
  const stands = (frontMm: number) => isClear(field, quadOf(section(frontMm)));
  if (search.depthBottomMm !== null) {
    const frontMm = backMm + search.depthBottomMm;
    return search.depthBottomMm >= leastBottomMm && stands(frontMm) ? section(frontMm) : null;
  }
  const nearMm = backMm + leastBottomMm;
  if (!stands(nearMm)) return null;
  return section(farthest(nearMm, field.farMm, stands));
}

const BISECTIONS = 34;

/** A deeper box holds the shallower one, so once it no longer stands it never does again. */
function farthest(goodMm: number, badMm: number, stands: (atMm: number) => boolean): number {
  let good = goodMm;
  let bad = Math.max(goodMm, badMm);
  for (let round = 0; round < BISECTIONS; round += 1) {
    const middle = (good + bad) / 2;
    if (stands(middle)) good = middle;
    else bad = middle;
  }
  return good;
}

/** Steps along the floor in which the first place for the back side is looked for. */
const BACK_STEPS = 60;

/** The place nearest the back where the back side stands clear; null = none on this floor. */
function nearestBack(field: Field, heightMm: number, leanMm: number): number | null {
  const clearAt = (atMm: number) =>
    lineIsClear(field, { xMm: atMm, yMm: 0 }, { xMm: atMm + leanMm, yMm: heightMm });
  const stepMm = field.farMm / BACK_STEPS;
  for (let step = 0; step <= BACK_STEPS; step += 1) {
    if (!clearAt(step * stepMm)) continue;
    if (step === 0) return 0;
    return -farthest(-step * stepMm, -(step - 1) * stepMm, (atMm) => clearAt(-atMm));
  }
  return null;
}

function asBox(section: Section, width: WidthToTry, stand: Stand): StraightBox {
  const { backMm, backLeanMm, frontMm, frontLeanMm, heightMm } = section;
  const at = plus(stand.floor.from, stand.away, backMm);
  const depthBottomMm = frontMm - backMm;
  const depthTopMm = depthBottomMm - backLeanMm - frontLeanMm;
  const profile: PolygonMm = quadOf(section).map((corner) => minus(corner, { xMm: backMm, yMm: 0 }));
  const areaMm2 = areaOf(section);
  return {
    depthBottomMm,
    depthTopMm,
    heightMm,
    widthMm: width.widthMm,
    profile: [...profile],
    pose: { xMm: at.xMm, yMm: at.yMm, thetaRad: Math.atan2(stand.away.yMm, stand.away.xMm), zMm: 0 },
    areaMm2,
    outsideLitres: (areaMm2 * width.widthMm) / MM3_PER_LITRE,
    widthLimit: width.limit,
  };
}

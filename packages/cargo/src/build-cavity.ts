// Survey -> cavity: closed counter-clockwise section with named walls and their ±, opening, widths, obstructions.
import type {
  CavityResult,
  CavityWall,
  Measurement,
  Obstruction,
  Opening,
  SectionForm,
  Surroundings,
  WidthSlab,
} from '@gusset/contracts/cargo';
import type { PointMm, PolygonMm } from '@gusset/contracts/geometry';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { correctionsOf } from './check-dimensions.ts';
import { likelyAcross, worstAlong } from './corner-spread.ts';
import { checkFindings, comparisonFindings } from './findings.ts';
import type { Construction } from './forms/construction.ts';
import { type OutlineWall, polygonOf } from './outline.ts';
import { boundsOf } from './plane/polygon.ts';
import { cross, lengthOf, minus, outwardNormal, plus, unit } from './plane/vector.ts';
import type { TakenValue } from './readings.ts';
import { likelyOf, type Spread, wallShares, worstOf } from './spread.ts';
import { admittedSurvey } from './survey-door.ts';
import { type Stand, standOf } from './survey-stand.ts';

export const NO_SURROUNDINGS: Surroundings = { obstructions: [], keepFree: [] };

/** What is assumed free beyond the opening reaches this many times the size of the section. */
const OUTSIDE_REACH = 3;

export type CavityOptions = {
  /**
   * The walls stand on values reconciled over all dimensions by least squares, where a redundant one was taken. Their
   * likely ± is carried with its covariance; the worst counts each reading's own ± and its correction.
   */
  readonly reconciles?: boolean;
};

/**
 * Builds the cavity of a survey, mm. Refused, with the dimension named, when a reading cannot be, a required one is
 * missing, or the walls cross. Contradictions that still leave a section are findings.
 */
export function buildCavity(
  form: SectionForm,
  measurements: readonly Measurement[],
  surroundings: Surroundings = NO_SURROUNDINGS,
  options: CavityOptions = {},
): CavityResult | Refusal {
  const admitted = admittedSurvey(form, measurements, surroundings);
  if (isRefusal(admitted)) return admitted;
  const stand = standOf(form, admitted, options);
  if (isRefusal(stand)) return stand;
  const { readings, used, assumptions } = admitted;
  const { construction, outline, spread, checks } = stand;
  const walls = withCrush(wallsOf(outline, stand, used), surroundings);
  const opening = openingOf(outline, construction, walls, spread);
  if (opening === null) {
    return refuse('form', {
      allowed: 'a wall with the role opening',
      got: null,
      why: 'the section has no opening left',
    });
  }
  const widthSlabs = slabsOf(construction, spread);
  return {
    kind: form.kind,
    polygon: [...polygonOf(outline)],
    walls,
    opening,
    widthSlabs,
    obstructions: [...lidFrame(construction, opening, widthSlabs, used), ...surroundings.obstructions],
    keepFree: surroundings.keepFree,
    outside: outsideOf(outline, opening),
    checks,
    corrections: correctionsOf(form, used, checks),
    findings: [
      ...comparisonFindings(construction, spread),
      ...checkFindings(checks),
      ...construction.findings,
      ...readings.findings,
      ...assumptions,
    ],
    ...(stand.reconciled === null ? {} : { adjusted: stand.reconciled.adjusted }),
    ...(surroundings.beyond === undefined ? {} : { beyond: surroundings.beyond }),
  };
}

function withCrush(walls: readonly CavityWall[], { softWalls = [] }: Surroundings): CavityWall[] {
  return walls.map((wall) => {
    const found = softWalls.find(({ wallId }) => wallId === wall.id);
    return found === undefined || found.crushMm === 0 ? wall : { ...wall, crushMm: found.crushMm };
  });
}

function wallsOf(
  outline: readonly OutlineWall[],
  { spread, reconciled }: Pick<Stand, 'spread' | 'reconciled'>,
  used: ReadonlyMap<string, TakenValue>,
): CavityWall[] {
  const juts = outline.map(({ start, end }, index) => {
    const before = outline[(index + outline.length - 1) % outline.length]?.start.at ?? start.at;
    return cross(minus(start.at, before), minus(end.at, start.at)) < 0;
  });
  return outline.map(({ wall, start, end }, index) => {
    const ends = [
      { cornerId: start.id, juts: juts[index] ?? false },
      { cornerId: end.id, juts: juts[(index + 1) % outline.length] ?? false },
    ];
    const normal = outwardNormal(start.at, end.at);
    const shares = wallShares(spread, ends, normal);
    const frame = used.get('lidFrame');
    const tied =
      reconciled === null
        ? null
        : likelyAcross(spread, reconciled.steps, reconciled.covariance, ends, normal);
    let frameMm = 0;
    // No frame was seen below the shut lid: how sure that is belongs to the opening plane itself.
    if (wall.role === 'opening' && frame !== undefined && frame.value === 0 && frame.plusMinus > 0) {
      frameMm = frame.plusMinus;
      shares.push({ key: 'lidFrame', plusMinusMm: frameMm });
    }
    return {
      ...wall,
      plusMinusMm: worstOf(shares),
      likelyPlusMinusMm: tied === null ? likelyOf(shares) : Math.hypot(tied, frameMm),
      shares,
    };
  });
}

function openingOf(
  outline: readonly OutlineWall[],
  construction: Construction,
  walls: readonly CavityWall[],
  spread: Spread,
): Opening | null {
  const wallIndex = walls.findIndex((wall) => wall.role === 'opening');
  const found = outline[wallIndex];
  if (found === undefined) return null;
  const from = found.start.at;
  const to = found.end.at;
  const along = unit(minus(to, from));
  return {
    wallIndex,
    from,
    to,
    heightMm: lengthOf(minus(to, from)),
    heightPlusMinusMm: stretchOf(found, spread),
    fromPlusMinusMm: worstAlong(spread, found.start.id, along),
    toPlusMinusMm: worstAlong(spread, found.end.id, along),
    widthMm: construction.openingWidthMm,
    widthPlusMinusMm: worstOf(spread.scalars.get('opening-width') ?? []),
  };
}

/** Worst case of the distance between the two ends of a wall. */
function stretchOf({ start, end }: OutlineWall, spread: Spread): number {
  const lengthMm = lengthOf(minus(end.at, start.at));
  const starts = spread.corners.get(start.id);
  const ends = spread.corners.get(end.id);
  const keys = new Set([...(starts?.keys() ?? []), ...(ends?.keys() ?? [])]);
  const still: PointMm = { xMm: 0, yMm: 0 };
  return [...keys].reduce((sum, key) => {
    const changes = [0, 1].map((way) => {
      const from = plus(start.at, starts?.get(key)?.[way] ?? still);
      const to = plus(end.at, ends?.get(key)?.[way] ?? still);
      return Math.abs(lengthOf(minus(to, from)) - lengthMm);
    });
    return sum + Math.max(...changes);
  }, 0);
}

function slabsOf(construction: Construction, spread: Spread): WidthSlab[] {
  const worst = (id: string) => worstOf(spread.scalars.get(id) ?? []);
  const likely = (id: string) => likelyOf(spread.scalars.get(id) ?? []);
  const sides = ['left', 'right', 'bottom', 'top'];
  return construction.slabs.map(({ id, name, polygon, widthMm }) => ({
    id,
    name,
    polygon: [...polygon],
    zMinMm: -widthMm / 2,
    zMaxMm: widthMm / 2,
    sidePlusMinusMm: worst(`width:${id}`) / 2,
    sectionPlusMinusMm: Math.max(...sides.map((side) => worst(`${side}:${id}`))),
    sideLikelyMm: likely(`width:${id}`) / 2,
    sectionLikelyMm: Math.max(...sides.map((side) => likely(`${side}:${id}`))),
  }));
}

/** What of the shut lid hangs below the plane of the opening: in the way of a box in its place, not on the way in. */
function lidFrame(
  construction: Construction,
  { from, to }: Opening,
  slabs: readonly WidthSlab[],
  used: ReadonlyMap<string, TakenValue>,
): Obstruction[] {
  if (construction.lidFrameMm <= 0) return [];
  const outward = outwardNormal(from, to);
  const inside = [plus(to, outward, -construction.lidFrameMm), plus(from, outward, -construction.lidFrameMm)];
  return [
    {
      id: 'lid-frame',
      name: 'Frame of the shut lid',
      polygon: [from, to, ...inside],
      zMinMm: Math.min(...slabs.map((slab) => slab.zMinMm)),
      zMaxMm: Math.max(...slabs.map((slab) => slab.zMaxMm)),
      plusMinusMm: used.get('lidFrame')?.plusMinus ?? 0,
      appliesTo: 'fit',
      moves: true,
    },
  ];
}

function outsideOf(outline: readonly OutlineWall[], { from, to }: Opening): CavityResult['outside'] {
  const { xMinMm, xMaxMm, yMinMm, yMaxMm } = boundsOf(polygonOf(outline));
  const reachMm = OUTSIDE_REACH * Math.hypot(xMaxMm - xMinMm, yMaxMm - yMinMm);
  const outward = outwardNormal(from, to);
  const region: PolygonMm = [from, plus(from, outward, reachMm), plus(to, outward, reachMm), to];
  return { assumes: 'free-straight-out-from-the-opening', region: [...region] };
}

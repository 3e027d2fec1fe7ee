// What stands in a scene across the width: sides beyond each width, jambs of the opening, obstructions, lid and bumper.
import type { BeyondOpening, CavityResult, ClearanceSettings, WidthSlab } from '@gusset/contracts/cargo';
import type { DryFitObstacle } from '@gusset/contracts/dryfit';
import type { PolygonMm } from '@gusset/contracts/geometry';
import { clippedTo, counterClockwise } from './plane/polygon.ts';
import { groundPrisms, type OpeningFrame } from './scene-ground.ts';
import { grownObstacle, grownOutline, properOutline } from './scene-obstacle.ts';
import { wantedToObstruction } from './wanted-clearance.ts';

export type SceneParts = {
  readonly cavity: CavityResult;
  readonly beyond: BeyondOpening;
  readonly frame: OpeningFrame;
  /** Between opening and free ground. */
  readonly channel: PolygonMm;
  readonly zRange: Interval;
  /** 1 = every ± against the body, 0 = as measured, -1 = in its favour. */
  readonly sign: number;
  readonly clearances: ClearanceSettings | null;
  readonly state: { readonly absent: readonly string[]; readonly present?: readonly string[] } | null;
};

type Interval = { readonly minMm: number; readonly maxMm: number };

/** Solid beside a width reaches this far past the sides of the scene, mm. */
const PAST_THE_SIDES_MM = 500;

/** From side to side at the widest place: a body is never farther out, for it could not come in from there. */
export function sceneWidth(
  cavity: CavityResult,
  sign: number,
  clearances: ClearanceSettings | null,
): Interval {
  const widths = [
    ...cavity.widthSlabs.map((slab) => slabWidth(slab, sign, clearances)),
    openingWidth(cavity, sign, clearances),
  ];
  return {
    minMm: Math.min(...widths.map(({ minMm }) => minMm)),
    maxMm: Math.max(...widths.map(({ maxMm }) => maxMm)),
  };
}

export function sceneObstacles(parts: SceneParts): DryFitObstacle[] {
  const { cavity, beyond, frame, channel, zRange, sign, clearances, state } = parts;
  const absent = new Set(state?.absent ?? []);
  const present = new Set(state?.present ?? []);
  const sides = cavity.widthSlabs.flatMap((slab) =>
    besides(`Side: ${slab.name}`, slabOutline(slab, frame, sign), slabWidth(slab, sign, clearances), zRange),
  );
  const jambs = besides('Side of the opening', channel, openingWidth(cavity, sign, clearances), zRange);
  const inTheWay = cavity.obstructions
    .filter((it) => it.appliesTo !== 'fit' && !absent.has(it.id))
    .filter((it) => it.offAsMeasured !== true || state === null || present.has(it.id))
    .flatMap((it) => {
      const { name, polygon, zMinMm, zMaxMm, plusMinusMm } = it;
      const wantedMm = clearances === null ? 0 : wantedToObstruction(it, clearances);
      const prism = { name, polygon, z: { minMm: zMinMm, maxMm: zMaxMm } };
      return grownObstacle(prism, sign * plusMinusMm + wantedMm) ?? [];
    });
  const ground = groundPrisms({ ...frame, from: cavity.opening.from, to: cavity.opening.to }, beyond).flatMap(
    (it) => {
      const wantedMm = it.moves ? (clearances?.movingMetalMm ?? 0) : (clearances?.otherMm ?? 0);
      return grownObstacle(it, sign * it.plusMinusMm + wantedMm) ?? [];
    },
  );
  return [...sides, ...jambs, ...inTheWay, ...ground];
}

function slabWidth(
  { zMinMm, zMaxMm, sidePlusMinusMm }: WidthSlab,
  sign: number,
  clearances: ClearanceSettings | null,
): Interval {
  const byMm = sign * sidePlusMinusMm + (clearances?.sidesMm ?? 0);
  return { minMm: zMinMm + byMm, maxMm: zMaxMm - byMm };
}

function openingWidth(
  { opening }: CavityResult,
  sign: number,
  clearances: ClearanceSettings | null,
): Interval {
  const halfMm = opening.widthMm / 2 - (sign * opening.widthPlusMinusMm) / 2 - (clearances?.openingMm ?? 0);
  return { minMm: -halfMm, maxMm: halfMm };
}

/** Where the slab holds, its own ± counted, as far as the opening: beyond it the car has no sides. */
function slabOutline(slab: WidthSlab, { from, outward }: OpeningFrame, sign: number): PolygonMm | null {
  const grown = grownOutline(counterClockwise(slab.polygon), sign * slab.sectionPlusMinusMm);
  if (grown === null) return null;
  return properOutline(clippedTo(grown, from, outward)) ?? grown;
}

/** Solid left and right of a width, as far as it is narrower than the scene. */
function besides(
  name: string,
  polygon: PolygonMm | null,
  { minMm, maxMm }: Interval,
  zRange: Interval,
): DryFitObstacle[] {
  if (polygon === null) return [];
  const outline = [...counterClockwise(polygon)];
  const left = { minMm: zRange.minMm - PAST_THE_SIDES_MM, maxMm: minMm };
  const right = { minMm: maxMm, maxMm: zRange.maxMm + PAST_THE_SIDES_MM };
  return [
    ...(minMm > zRange.minMm ? [{ name: `${name}, left`, polygon: outline, z: left }] : []),
    ...(maxMm < zRange.maxMm ? [{ name: `${name}, right`, polygon: outline, z: right }] : []),
  ];
}

// A box in its place: exact clearance to every wall, both sides, every obstruction and keep-free zone, with what the
// ± of the survey may take away. Says nothing about the way in.
import {
  type CavityResult,
  type CavityWall,
  type ClearanceSettings,
  DEFAULT_CLEARANCES,
  type KeepFreeZone,
  type Obstruction,
  type Placement,
  type SpacePoint,
  type SurfaceClearance,
  type SurfaceReference,
} from '@gusset/contracts/cargo';
import type { PolygonMm, Pose } from '@gusset/contracts/geometry';
import type { Refusal } from '@gusset/units';
import { boxRefusal, distanceRefusal, poseRefusal } from './box-input.ts';
import { closestToOutline } from './plane/distance.ts';
import { edgesOf, type Segment } from './plane/edges.ts';
import { CONTACT_SLACK_MM, depthBeyondWall, looselyHolds, meetsInside } from './plane/overlap.ts';
import { counterClockwise, posed } from './plane/polygon.ts';
import { type Prism, prismClearance } from './prism-clearance.ts';
import { wantedToObstruction, wantedToWall } from './wanted-clearance.ts';

export type PlaceBoxInput = {
  readonly cavity: CavityResult;
  /** Finished outside of the box in its own frame, mm: carpet or paint counted. */
  readonly profile: PolygonMm;
  /** Finished width, mm, across the car. */
  readonly widthMm: number;
  readonly pose: Pose;
  readonly clearances?: ClearanceSettings;
};

/** A box this near a floor stands on it, mm: an uneven carpet. */
const RESTS_WITHIN_MM = 0.5;

/** Clearances in mm. Refused only for a box that is none. */
export function placeBox(input: PlaceBoxInput): Placement | Refusal {
  const { cavity, profile, widthMm, pose, clearances: wanted = DEFAULT_CLEARANCES } = input;
  const refusal = boxRefusal(profile, widthMm) ?? poseRefusal(pose) ?? distanceRefusal(wanted);
  if (refusal !== null) return refusal;
  const body: Prism = {
    polygon: posed(counterClockwise(profile), pose),
    zMinMm: pose.zMm - widthMm / 2,
    zMaxMm: pose.zMm + widthMm / 2,
  };
  const clearances = [
    ...toWalls(cavity, body, wanted),
    ...toSides(cavity, body, wanted),
    ...cavity.obstructions.filter(countsInPlace).map((it) => toObstruction(it, body, wanted)),
    ...cavity.keepFree.map((zone) => toZone(zone, body, wanted)),
  ];
  clearances.sort((a, b) => spareOf(a) - spareOf(b) || (nameOf(a) < nameOf(b) ? -1 : 1));
  const outsideSection = !body.polygon.some((corner) => looselyHolds(cavity.polygon, corner));
  const overlapping = clearances
    .filter((it) => it.clearanceMm < -CONTACT_SLACK_MM)
    .map(({ surface, clearanceMm }) => ({ surface, byMm: -clearanceMm }));
  const fits = overlapping.length === 0 && !outsideSection;
  return {
    fits,
    fitsAtWorst: fits && clearances.every((it) => it.worstCaseMm >= -CONTACT_SLACK_MM),
    clearances,
    overlapping,
    outsideSection,
  };
}

function spareOf(it: SurfaceClearance): number {
  return it.worstCaseMm - it.wantedMm;
}

function nameOf({ surface }: SurfaceClearance): string {
  return `${surface.type} ${surface.id} ${surface.side ?? ''}`;
}

export function countsInPlace(obstruction: Obstruction): boolean {
  return obstruction.appliesTo !== 'motion';
}

/** An obstruction or a zone has one ±: worst and likely are the same. */
type Found = {
  readonly surface: SurfaceReference;
  readonly clearanceMm: number;
  readonly worstCaseMm: number;
  readonly likelyMm: number;
  readonly wantedMm: number;
  readonly rests?: boolean;
  /** Soft trim that may be pressed in: touching it is meant. */
  readonly gives?: boolean;
  readonly at: readonly [SpacePoint, SpacePoint];
};

function judged(found: Found): SurfaceClearance {
  const { surface, wantedMm, at, rests = false, gives = false } = found;
  const clearanceMm = Math.abs(found.clearanceMm) <= CONTACT_SLACK_MM ? 0 : found.clearanceMm;
  const worstCaseMm = rests ? clearanceMm : found.worstCaseMm;
  const likelyMm = rests ? clearanceMm : found.likelyMm;
  const verdict = gives
    ? pressedVerdict(clearanceMm, worstCaseMm)
    : verdictOf(clearanceMm, worstCaseMm, wantedMm, rests);
  return { surface, clearanceMm, worstCaseMm, likelyMm, wantedMm, verdict, rests, at: [at[0], at[1]] };
}

function verdictOf(
  clearanceMm: number,
  worstCaseMm: number,
  wantedMm: number,
  rests: boolean,
): SurfaceClearance['verdict'] {
  if (rests) return 'clear';
  if (clearanceMm <= 0) return 'touches';
  return worstCaseMm >= wantedMm ? 'clear' : 'tight';
}

/** Trim that may be pressed in is clear as long as even at worst it is not pressed farther than it gives. */
function pressedVerdict(clearanceMm: number, worstCaseMm: number): SurfaceClearance['verdict'] {
  if (clearanceMm < 0) return 'touches';
  return worstCaseMm >= -CONTACT_SLACK_MM ? 'clear' : 'tight';
}

function toWalls(cavity: CavityResult, body: Prism, wanted: ClearanceSettings): SurfaceClearance[] {
  const edges = edgesOf(cavity.polygon);
  return cavity.walls.flatMap((wall, index) => {
    const edge = edges[index];
    return edge === undefined ? [] : [toWall(wall, edge, body, wanted)];
  });
}

function toWall(wall: CavityWall, edge: Segment, body: Prism, wanted: ClearanceSettings): SurfaceClearance {
  const surface = { type: 'wall', id: wall.id, name: wall.name, role: wall.role, side: null } as const;
  const zMm = (body.zMinMm + body.zMaxMm) / 2;
  const { clearanceMm, a, b } = wallClearance(body.polygon, edge);
  const crushMm = wall.crushMm ?? 0;
  // Below 0 only what is left once the trim has given way all it may.
  const pressed = (mm: number) => (mm < 0 ? Math.min(0, mm + crushMm) : mm);
  return judged({
    surface,
    clearanceMm: pressed(clearanceMm),
    worstCaseMm: pressed(clearanceMm - wall.plusMinusMm),
    likelyMm: pressed(clearanceMm - wall.likelyPlusMinusMm),
    wantedMm: crushMm > 0 ? 0 : wantedToWall(wall, wanted),
    gives: crushMm > 0,
    rests: wall.role === 'floor' && clearanceMm >= -CONTACT_SLACK_MM && clearanceMm <= RESTS_WITHIN_MM,
    at: [
      { ...a, zMm },
      { ...b, zMm },
    ],
  });
}

/** Distance to a wall; negative = how far the wall would have to give way. */
export function wallClearance(body: PolygonMm, edge: Segment) {
  if (meetsInside(body, edge)) {
    const { depthMm, a, b } = depthBeyondWall(body, edge);
    return { clearanceMm: -depthMm, a, b };
  }
  const { distanceMm, a, b } = closestToOutline(body, edge);
  return { clearanceMm: distanceMm, a, b };
}

/** Beyond a slab's width everything is solid, left (z below 0, looking forward from behind) and right. */
function toSides(cavity: CavityResult, body: Prism, wanted: ClearanceSettings): SurfaceClearance[] {
  return cavity.widthSlabs.flatMap((slab) => {
    const { id, name, polygon, zMinMm, zMaxMm, sidePlusMinusMm, sectionPlusMinusMm } = slab;
    const { sideLikelyMm = sidePlusMinusMm, sectionLikelyMm = sectionPlusMinusMm } = slab;
    const solids = [
      { side: 'left', zMinMm: Number.NEGATIVE_INFINITY, zMaxMm: zMinMm },
      { side: 'right', zMinMm: zMaxMm, zMaxMm: Number.POSITIVE_INFINITY },
    ] as const;
    return solids.map(({ side, ...interval }) => {
      const solid = { polygon, ...interval };
      const found = prismClearance(body, solid, { sectionMm: sectionPlusMinusMm, acrossMm: sidePlusMinusMm });
      const likely = prismClearance(body, solid, { sectionMm: sectionLikelyMm, acrossMm: sideLikelyMm });
      return judged({
        surface: { type: 'side', id, name, role: null, side },
        ...found,
        likelyMm: likely.worstCaseMm,
        wantedMm: wanted.sidesMm,
      });
    });
  });
}

function toObstruction(it: Obstruction, body: Prism, wanted: ClearanceSettings): SurfaceClearance {
  const found = prismClearance(body, it, { sectionMm: it.plusMinusMm, acrossMm: it.plusMinusMm });
  return judged({
    surface: { type: 'obstruction', id: it.id, name: it.name, role: null, side: null },
    ...found,
    likelyMm: found.worstCaseMm,
    wantedMm: wantedToObstruction(it, wanted),
  });
}

function toZone(zone: KeepFreeZone, body: Prism, wanted: ClearanceSettings): SurfaceClearance {
  const found = prismClearance(body, zone, { sectionMm: zone.plusMinusMm, acrossMm: zone.plusMinusMm });
  return judged({
    surface: { type: 'keep-free', id: zone.id, name: zone.name, role: null, side: null },
    ...found,
    likelyMm: found.worstCaseMm,
    wantedMm: wanted.keepFreeMm,
  });
}

// How much clearance the best way keeps, or by how much the best one overlaps: bisection on the distance that is asked
// for, each answer a proved way or a proved no. What the search can't tell apart leaves the bracket open.
import type { DryFitCase, WayMargin } from '@gusset/contracts/dryfit';
import type { Pose } from '@gusset/contracts/geometry';
import { leastCaliperWidth } from '../../plane/hull.ts';
import { posed } from '../../plane/polygon.ts';
import { circlePlace } from '../body-place.ts';
import { CellMap } from '../cell-map.ts';
import { chainPoses } from '../chain-poses.ts';
import { distanceFrom, solidsAbreast } from '../check-motion.ts';
import { isOpeningTooNarrow } from '../dry-fit.ts';
import { flatBody } from '../flat-body.ts';
import { flatScene, layersAt } from '../flat-scene.ts';
import { type SearchLimits, searchWay } from '../search-way.ts';
import { extentOf, wayOut } from '../way-out.ts';

export type MarginSearch = {
  readonly margin: WayMargin;
  /** Way with the most clearance found; null where none without overlap is known. */
  readonly path: readonly Pose[] | null;
  /** Way with the least overlap found, where none without is known. */
  readonly overlapping: readonly Pose[] | null;
  readonly cells: number;
};

type Answer = {
  readonly kind: 'way' | 'none' | 'unknown';
  readonly path: readonly Pose[];
  readonly cells: number;
};

/** Brackets are halved until this narrow, mm. */
const NARROW_ENOUGH_MM = 1;
const MOST_CLEARANCE_MM = 64;
const MOST_OVERLAP_MM = 256;
const MOST_HALVINGS = 8;
/** Farthest that a body may come out on its first leg, which clearance does not bind, mm. */
const FIRST_LEG_MM = 80;

/** `knownWay`: a way at bare touching is known to exist (true), not to exist (false), or neither. */
export function wayMargin(input: DryFitCase, knownWay: boolean | null, limits: SearchLimits): MarginSearch {
  let [low, high]: [number | null, number | null] = [
    knownWay === true ? 0 : null,
    knownWay === false ? 0 : null,
  ];
  let path: readonly Pose[] | null = null;
  let overlapping: readonly Pose[] | null = null;
  let cells = 0;
  // Above this nothing was found, proved or not: where to look no farther.
  let ceiling: number | null = high;
  const ask = (clearanceMm: number): Answer['kind'] => {
    const answer =
      clearanceMm >= 0 ? atClearance(input, clearanceMm, limits) : atOverlap(input, -clearanceMm, limits);
    cells += answer.cells;
    if (answer.kind === 'way') {
      low = Math.max(low ?? clearanceMm, clearanceMm);
      if (clearanceMm >= 0) path = answer.path;
      else overlapping = answer.path;
    } else ceiling = Math.min(ceiling ?? clearanceMm, clearanceMm);
    if (answer.kind === 'none') high = Math.min(high ?? clearanceMm, clearanceMm);
    return answer.kind;
  };
  if (knownWay !== false) {
    for (let mm = 4; mm <= MOST_CLEARANCE_MM && ceiling === null && !limits.shouldStop(); mm *= 2) ask(mm);
  }
  if (low === null) {
    for (let mm = 4; mm <= MOST_OVERLAP_MM && low === null && !limits.shouldStop(); mm *= 2) ask(-mm);
  }
  for (let run = 0; run < MOST_HALVINGS && low !== null && ceiling !== null; run++) {
    if (ceiling - low <= NARROW_ENOUGH_MM || limits.shouldStop()) break;
    ask((low + ceiling) / 2);
  }
  return { margin: { atLeastMm: low, atMostMm: high }, path, overlapping, cells };
}

function atClearance(input: DryFitCase, clearanceMm: number, limits: SearchLimits): Answer {
  const solids = solidsAbreast(input, input.final, input.final, 0);
  const distanceMm = solids === null ? -1 : distanceFrom(posed(input.body.profile, input.final), solids);
  if (distanceMm < 0) return { kind: 'none', path: [], cells: 0 };
  const isLongerThanFirstLeg = leastCaliperWidth(input.body.profile).widthMm > FIRST_LEG_MM;
  if (isLongerThanFirstLeg && isOpeningTooNarrow(input, clearanceMm))
    return { kind: 'none', path: [], cells: 0 };
  const out = wayOut(input, { clearanceMm, atPlaceMm: 0, distanceMm }, limits);
  if (out.kind === 'way') return { kind: 'way', path: out.path, cells: out.cells };
  // A place nearer than the clearance is walled in at it whatever the way is like: that says nothing of the way.
  const isNo = out.kind === 'walled-in' && distanceMm >= clearanceMm;
  return { kind: isNo ? 'none' : 'unknown', path: [], cells: out.cells };
}

/** A way on which no wall lies deeper in the body than `overlapMm`: none is a proved no; a way is one of a smaller body. */
function atOverlap(input: DryFitCase, overlapMm: number, limits: SearchLimits): Answer {
  const scene = flatScene(input, 0);
  const body = flatBody(input.body.profile);
  const map = new CellMap(scene, body, -overlapMm, extentOf(input, body.radiusMm));
  const { x, y, theta } = circlePlace(body, input.final);
  const layers = layersAt(scene, input.final.zMm);
  const layer = layers[0];
  if (layer === undefined || map.tree.leafAt(x, y, theta) < 0) return { kind: 'unknown', path: [], cells: 0 };
  const found = searchWay(map, () => map.tree.leafAt(x, y, theta), layers, limits);
  if (found.outcome === 'undecided') return { kind: 'unknown', path: [], cells: found.cells };
  if (found.outcome === 'no-way') return { kind: 'none', path: [], cells: found.cells };
  const path = chainPoses(map, found.chain, { pose: input.final, layer }).map(({ pose }) => pose);
  return { kind: 'way', path, cells: found.cells };
}

// From the final place to wholly outside: a straight way if there is one, else the search, and its way made certain.
import type { DryFitCase } from '@gusset/contracts/dryfit';
import type { Pose } from '@gusset/contracts/geometry';
import { boundsOf } from '../plane/polygon.ts';
import { circlePlace } from './body-place.ts';
import { CellMap } from './cell-map.ts';
import { chainPoses } from './chain-poses.ts';
import { checkMotion } from './check-motion.ts';
import { convexCover } from './convex-cover.ts';
import { flatBody } from './flat-body.ts';
import { flatScene, layersAt } from './flat-scene.ts';
import { type LeavingSetting, type Start, startsFrom, straightWayOut } from './leave-place.ts';
import type { TreeExtent } from './pose-tree.ts';
import { type SearchLimits, searchWay } from './search-way.ts';
import { type LayeredPose, LegTester, smoothPath } from './smooth-path.ts';

export type WayOut =
  | {
      readonly kind: 'way';
      readonly by: 'straight-way' | 'search';
      readonly path: readonly Pose[];
      readonly leastMm: number;
      readonly cells: number;
    }
  /** Nothing leads out that keeps `clearanceMm`; a body that may come as near as it stands in its place can't either. */
  | { readonly kind: 'walled-in'; readonly cells: number }
  | { readonly kind: 'undecided'; readonly cells: number };

/**
 * `clearanceMm` is kept on the way; on the first leg `atPlaceMm` is, where that is less. `distanceMm`: from the final place to
 * the nearest solid.
 */
export function wayOut(
  input: DryFitCase,
  {
    clearanceMm,
    atPlaceMm,
    distanceMm,
  }: { readonly clearanceMm: number; readonly atPlaceMm: number; readonly distanceMm: number },
  limits: SearchLimits,
): WayOut {
  const scene = flatScene(input, clearanceMm);
  const layers = layersAt(scene, input.final.zMm);
  const layer = layers[0];
  if (layer === undefined) return { kind: 'undecided', cells: 0 };
  const body = flatBody(input.body.profile);
  const pieces = convexCover(input.body.profile);
  const setting: LeavingSetting = { input, scene, body, pieces, layer, atPlaceMm, movingMm: clearanceMm };
  const starts = startsFrom(setting, distanceMm);
  const straight = straightWayOut(setting, starts);
  if (straight !== null) {
    const checked = checkMotion(input, straight, clearanceMm);
    if (checked.holds)
      return { kind: 'way', by: 'straight-way', path: straight, leastMm: checked.leastMm, cells: 0 };
  }
  const map = new CellMap(scene, body, clearanceMm, extentOf(input, body.radiusMm));
  const start = starts[0] ?? { legs: [input.final], distanceMm };
  const from = start.legs.at(-1) ?? input.final;
  const { x, y, theta } = circlePlace(body, from);
  if (map.tree.leafAt(x, y, theta) < 0) return { kind: 'undecided', cells: 0 };
  const found = searchWay(map, () => map.tree.leafAt(x, y, theta), layersAt(scene, from.zMm), limits);
  if (found.outcome === 'no-way') return { kind: 'walled-in', cells: found.cells };
  if (found.outcome === 'undecided') return { kind: 'undecided', cells: found.cells };
  const way = certified(input, start, map, found.chain, clearanceMm);
  return way === null
    ? { kind: 'undecided', cells: found.cells }
    : { kind: 'way', by: 'search', ...way, cells: found.cells };
}

/** The chain made shorter, or as it is; null where the independent check confirms neither. */
function certified(
  input: DryFitCase,
  start: Start,
  map: CellMap,
  chain: readonly number[],
  clearanceMm: number,
) {
  const last = start.legs.at(-1) ?? input.final;
  const firstVertex = chain[0] ?? 0;
  const from: LayeredPose = { pose: last, layer: firstVertex % map.layers };
  const poses = chainPoses(map, chain, from);
  const before = start.legs.slice(0, -1);
  const tester = new LegTester(map.scene, map.body, clearanceMm);
  for (const candidate of [smoothPath(poses, tester), poses]) {
    const path = [...before, ...candidate.map(({ pose }) => pose)];
    const { holds, leastMm } = checkMotion(input, path, clearanceMm);
    if (holds) return { path, leastMm };
  }
  return null;
}

export function extentOf({ space, thetaRange }: DryFitCase, radiusMm: number): TreeExtent {
  const from = thetaRange?.minRad ?? -Math.PI;
  const span =
    thetaRange === null ? 2 * Math.PI : Math.min(thetaRange.maxRad - thetaRange.minRad, 2 * Math.PI);
  const isWholeTurn = span >= 2 * Math.PI - 1e-9;
  return { bounds: boundsOf(space), thetaFromRad: from, thetaSpanRad: span, isWholeTurn, radiusMm };
}

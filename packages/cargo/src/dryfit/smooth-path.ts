// Fewer and longer legs for a way that was found from cell to cell: legs are joined where the body provably keeps its
// clearance between their ends.
import type { Pose } from '@gusset/contracts/geometry';
import { placeOf } from './body-place.ts';
import { BLOCKED, cellState, FREE, type NearWalls } from './cell-state.ts';
import { between } from './check-motion.ts';
import type { FlatBody } from './flat-body.ts';
import type { FlatScene } from './flat-scene.ts';

/** A leg whose parts are shorter than this and still not shown to be free is not taken, mm. */
const SHORTEST_PART_MM = 0.4;

export class LegTester {
  private readonly scene: FlatScene;
  private readonly body: FlatBody;
  private readonly clearanceMm: number;
  private readonly near: NearWalls;
  /** Farthest body point from the profile's own origin, about which legs turn, mm. */
  private readonly radiusMm: number;

  constructor(scene: FlatScene, body: FlatBody, clearanceMm: number) {
    this.scene = scene;
    this.body = body;
    this.clearanceMm = clearanceMm;
    this.radiusMm = body.radiusMm + Math.hypot(body.centre.xMm, body.centre.yMm);
    const most = Math.max(0, ...scene.layers.map(({ walls }) => walls.length));
    this.near = { list: new Int32Array(2 * most + 2), end: 0 };
  }

  isFree(layer: number, from: Pose, to: Pose): boolean {
    const walls = this.scene.layers[layer]?.walls;
    if (walls === undefined) return false;
    const travel =
      Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm) +
      this.radiusMm * Math.abs(to.thetaRad - from.thetaRad);
    return this.isPartFree(layer, walls, from, to, travel);
  }

  private isPartFree(layer: number, walls: Int32Array, from: Pose, to: Pose, travelMm: number): boolean {
    const middle = between(from, to, 0.5);
    const scene = this.scene.layers[layer];
    if (scene === undefined) return false;
    this.near.list.set(walls, 0);
    this.near.end = walls.length;
    const place = placeOf(this.body, middle, travelMm / 2);
    const state = cellState(
      this.scene,
      scene,
      this.body,
      this.clearanceMm,
      place,
      this.near,
      0,
      walls.length,
    );
    if (state === FREE) return true;
    if (state === BLOCKED || travelMm < SHORTEST_PART_MM) return false;
    return (
      this.isPartFree(layer, walls, from, middle, travelMm / 2) &&
      this.isPartFree(layer, walls, middle, to, travelMm / 2)
    );
  }
}

export type LayeredPose = { readonly pose: Pose; readonly layer: number };

/** Keeps the first and the last pose; never joins legs across a change of layer. */
export function smoothPath(path: readonly LayeredPose[], tester: LegTester): readonly LayeredPose[] {
  const kept: LayeredPose[] = [];
  let at = 0;
  while (at < path.length) {
    const from = path[at];
    if (from === undefined) break;
    kept.push(from);
    let far = path.length - 1;
    while (far > at + 1) {
      const to = path[far];
      const sameLayer =
        to !== undefined && path.slice(at, far + 1).every(({ layer }) => layer === from.layer);
      if (sameLayer && tester.isFree(from.layer, from.pose, to.pose)) break;
      far = at + Math.max(1, (far - at) >> 1);
    }
    at = Math.max(far, at + 1);
  }
  return kept;
}

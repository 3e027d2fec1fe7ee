// A chain of cells as poses. Inside the chain the circle's centre runs straight from cell to cell; a pose runs straight
// in the profile's origin instead, so legs that turn are parted until the two differ by nothing that matters.
import { circlePlace, poseOfCircle } from './body-place.ts';
import type { CellMap } from './cell-map.ts';
import type { LayeredPose } from './smooth-path.ts';

/** How far origin and circle may run apart between two poses, mm: far below the finest cell. */
const APART_MM = 0.02;

export function chainPoses(map: CellMap, chain: readonly number[], from: LayeredPose): LayeredPose[] {
  const { body, tree, scene } = map;
  const poses: LayeredPose[] = [from];
  let last = { ...circlePlace(body, from.pose), layer: from.layer, z: from.pose.zMm };
  for (const vertex of chain) {
    const node = Math.floor(vertex / map.layers);
    const layer = vertex - node * map.layers;
    const theta = nearestTurn(tree.centreTheta(node), last.theta);
    const next = {
      x: tree.centreX(node),
      y: tree.centreY(node),
      theta,
      layer,
      z: sidewaysIn(scene.layers[layer], last.z),
    };
    const turn = Math.abs(next.theta - last.theta);
    const offset = Math.hypot(body.centre.xMm, body.centre.yMm);
    const parts = Math.max(1, Math.ceil(turn * Math.sqrt(offset / (8 * APART_MM))));
    for (let part = 1; part <= parts; part++) {
      const share = part / parts;
      const mix = (a: number, b: number) => a + (b - a) * share;
      const place = { x: mix(last.x, next.x), y: mix(last.y, next.y), theta: mix(last.theta, next.theta) };
      poses.push({ pose: poseOfCircle(body, place, mix(last.z, next.z)), layer });
    }
    last = next;
  }
  return poses;
}

function nearestTurn(theta: number, to: number): number {
  return theta + Math.round((to - theta) / (2 * Math.PI)) * 2 * Math.PI;
}

function sidewaysIn(
  layer: { readonly zMinMm: number; readonly zMaxMm: number } | undefined,
  z: number,
): number {
  return layer === undefined ? z : Math.min(Math.max(z, layer.zMinMm), layer.zMaxMm);
}

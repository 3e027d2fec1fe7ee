// Between a pose of the profile's own origin, which people and files use, and the place of the body's circle, which the
// search uses because turning moves it least.
import type { Pose } from '@gusset/contracts/geometry';
import type { CellPlace } from './cell-state.ts';
import type { FlatBody } from './flat-body.ts';

export type CirclePlace = { readonly x: number; readonly y: number; readonly theta: number };

export function circlePlace({ centre }: FlatBody, { xMm, yMm, thetaRad }: Pose): CirclePlace {
  const [cos, sin] = [Math.cos(thetaRad), Math.sin(thetaRad)];
  return {
    x: xMm + cos * centre.xMm - sin * centre.yMm,
    y: yMm + sin * centre.xMm + cos * centre.yMm,
    theta: thetaRad,
  };
}

export function poseOfCircle({ centre }: FlatBody, { x, y, theta }: CirclePlace, zMm: number): Pose {
  const [cos, sin] = [Math.cos(theta), Math.sin(theta)];
  return {
    xMm: x - cos * centre.xMm + sin * centre.yMm,
    yMm: y - sin * centre.xMm - cos * centre.yMm,
    thetaRad: theta,
    zMm,
  };
}

/** A pose as the cell predicates take it, no body point of which moves farther than `shift`, mm. */
export function placeOf(body: FlatBody, pose: Pose, shift: number): CellPlace {
  const { x, y } = circlePlace(body, pose);
  return { x, y, cos: Math.cos(pose.thetaRad), sin: Math.sin(pose.thetaRad), shift, turn: 0 };
}

// What the doors `dryfit` and `largest` share: outlines as pairs, degrees outside and radians inside.
import type { DryFitCaseInput } from '@gusset/contracts/dryfit';
import type { Pose } from '@gusset/contracts/geometry';
import { z } from 'zod';

const length = z.number().min(-20_000).max(20_000);
const corner = z.tuple([length, length]);
export const outlineSchema = z.array(corner).min(3).max(400);
const span = z.tuple([length, length]);
export const degreesSchema = z.number().min(-5_000).max(5_000);
export const poseSchema = z.strictObject({
  x: length,
  y: length,
  thetaDeg: degreesSchema,
  z: length.default(0),
});

export const vehicleSchema = z.strictObject({
  cavity: outlineSchema,
  opening: z.tuple([corner, corner]),
  outside: outlineSchema,
  space: outlineSchema,
  obstacles: z
    .array(z.strictObject({ name: z.string().max(120), polygon: outlineSchema, z: span.optional() }))
    .max(60)
    .default([]),
  zRange: span.optional(),
});

export const clearanceSchema = z
  .strictObject({ moving: z.number().min(0).max(500), final: z.number().min(0).max(500) })
  .default({ moving: 0, final: 0 });

type Surroundings = Pick<DryFitCaseInput, 'space' | 'outside' | 'opening' | 'obstacles' | 'zRange'>;

/** Across the vehicle only where the question is spatial. */
export function toSurroundings(vehicle: z.infer<typeof vehicleSchema>, isSpatial: boolean): Surroundings {
  const [from, to] = vehicle.opening;
  return {
    space: points(vehicle.space),
    outside: points(vehicle.outside),
    opening: { from: point(from), to: point(to) },
    obstacles: vehicle.obstacles.map(({ name, polygon, z: across }) => ({
      name,
      polygon: points(polygon),
      z: isSpatial && across !== undefined ? { minMm: across[0], maxMm: across[1] } : null,
    })),
    zRange:
      isSpatial && vehicle.zRange !== undefined
        ? { minMm: vehicle.zRange[0], maxMm: vehicle.zRange[1] }
        : null,
  };
}

export function toPose({ x, y, thetaDeg, z: across }: z.infer<typeof poseSchema>): Pose {
  return { xMm: x, yMm: y, thetaRad: radians(thetaDeg), zMm: across };
}

export function writtenPose({ xMm, yMm, thetaRad, zMm }: Pose, isSpatial: boolean): number[] {
  const flat = [xMm, yMm, (thetaRad * 180) / Math.PI];
  return isSpatial ? [...flat, zMm] : flat;
}

export function points(corners: readonly (readonly [number, number])[]) {
  return corners.map(point);
}

function point([xMm, yMm]: readonly [number, number]) {
  return { xMm, yMm };
}

export function radians(value: number): number {
  return (value * Math.PI) / 180;
}

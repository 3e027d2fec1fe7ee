// Plane geometry that crosses a boundary. Section plane of a vehicle and of a box standing in it: x toward the
// opening (the way out), y up, z across the width (0 on the centre line). Millimetres throughout.
import { z } from 'zod';

/** Largest coordinate that any drawing of a vehicle or a sheet needs. */
export const COORDINATE_LIMIT_MM = 20_000;

export const coordinateMmSchema = z.number().min(-COORDINATE_LIMIT_MM).max(COORDINATE_LIMIT_MM);

/** A point in a plane, mm. */
export const pointMmSchema = z.strictObject({ xMm: coordinateMmSchema, yMm: coordinateMmSchema });
export type PointMm = Readonly<z.infer<typeof pointMmSchema>>;

/** A closed polygon by its corners, first corner not repeated; counter-clockwise where a package says so. */
export const polygonMmSchema = z.array(pointMmSchema).min(3).max(400);
export type PolygonMm = readonly PointMm[];

/** Where a body stands: world point = (x, y) + rotation(theta) * local point, then shifted by z across the width. */
export const poseSchema = z.strictObject({
  xMm: coordinateMmSchema,
  yMm: coordinateMmSchema,
  thetaRad: z.number().min(-100).max(100),
  zMm: coordinateMmSchema.default(0),
});
export type Pose = Readonly<z.infer<typeof poseSchema>>;

// Whether a profile goes into a cargo space and comes out again. The names are the door's public ones; degrees outside,
// radians inside.
import { dryFit } from '@gusset/cargo';
import type { DryFitCaseInput } from '@gusset/contracts/dryfit';
import type { Pose } from '@gusset/contracts/geometry';
import { isRefusal } from '@gusset/units';
import { z } from 'zod';
import type { SolveEngine } from '../engine.ts';

const length = z.number().min(-20_000).max(20_000);
const corner = z.tuple([length, length]);
const outline = z.array(corner).min(3).max(400);
const span = z.tuple([length, length]);
const degrees = z.number().min(-5_000).max(5_000);
const poseSchema = z.strictObject({ x: length, y: length, thetaDeg: degrees, z: length.default(0) });

const requestSchema = z.strictObject({
  id: z.string().min(1).max(80),
  kind: z.enum(['2d', '3d']).default('2d'),
  vehicle: z.strictObject({
    cavity: outline,
    opening: z.tuple([corner, corner]),
    outside: outline,
    space: outline,
    obstacles: z
      .array(z.strictObject({ name: z.string().max(120), polygon: outline, z: span.optional() }))
      .max(60)
      .default([]),
    zRange: span.optional(),
  }),
  body: outline,
  width: z.number().min(1).max(20_000).optional(),
  clearance: z
    .strictObject({ moving: z.number().min(0).max(500), final: z.number().min(0).max(500) })
    .default({ moving: 0, final: 0 }),
  start: poseSchema,
  final: poseSchema,
  dof: z.array(z.enum(['x', 'y', 'theta', 'z'])).optional(),
  thetaRangeDeg: z.tuple([degrees, degrees]).optional(),
});
type Request = z.infer<typeof requestSchema>;

const answerSchema = z.strictObject({
  id: z.string(),
  fits: z.boolean(),
  finalClearanceMm: z.number().nullable(),
  loads: z.enum(['loads', 'does-not-load', 'too-close']),
  path: z.array(z.array(z.number())).optional(),
  clearanceMm: z.strictObject({ atLeast: z.number(), atMost: z.number() }).optional(),
  provedToMm: z.number().optional(),
  ms: z.number(),
});

export const engine: SolveEngine<Request, z.infer<typeof answerSchema>> = {
  name: 'dryfit',
  inputSchema: requestSchema,
  outputSchema: answerSchema,
  solve(request, { seconds }) {
    const startedAt = performance.now();
    const passedMs = () => performance.now() - startedAt;
    const result = dryFit(toCase(request), { shouldStop: () => passedMs() >= seconds * 1_000 });
    if (isRefusal(result)) return result;
    const { fits, finalClearanceMm, verdict, path, clearance, provedToMm } = result;
    return {
      id: request.id,
      fits,
      finalClearanceMm,
      loads: verdict,
      ...(path.length === 0 ? {} : { path: path.map((pose) => written(pose, request.kind)) }),
      ...(clearance === null
        ? {}
        : { clearanceMm: { atLeast: clearance.atLeastMm, atMost: clearance.atMostMm } }),
      provedToMm,
      ms: passedMs(),
    };
  },
};

function toCase({
  kind,
  vehicle,
  body,
  width,
  clearance,
  start,
  final,
  thetaRangeDeg,
}: Request): DryFitCaseInput {
  const isSpatial = kind === '3d';
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
    body: { profile: points(body), widthMm: isSpatial && width !== undefined ? width : null },
    clearance: { movingMm: clearance.moving, finalMm: clearance.final },
    start: pose(start),
    final: pose(final),
    thetaRange:
      thetaRangeDeg === undefined
        ? null
        : { minRad: radians(thetaRangeDeg[0]), maxRad: radians(thetaRangeDeg[1]) },
  };
}

function written({ xMm, yMm, thetaRad, zMm }: Pose, kind: Request['kind']): number[] {
  const flat = [xMm, yMm, (thetaRad * 180) / Math.PI];
  return kind === '3d' ? [...flat, zMm] : flat;
}

function pose({ x, y, thetaDeg, z: across }: z.infer<typeof poseSchema>): Pose {
  return { xMm: x, yMm: y, thetaRad: radians(thetaDeg), zMm: across };
}

function points(corners: readonly (readonly [number, number])[]) {
  return corners.map(point);
}

function point([xMm, yMm]: readonly [number, number]) {
  return { xMm, yMm };
}

function radians(value: number): number {
  return (value * Math.PI) / 180;
}

// Whether a profile goes into a cargo space and comes out again. The names are the door's public ones; degrees outside,
// radians inside.
import { dryFit } from '@gusset/cargo';
import type { DryFitCaseInput } from '@gusset/contracts/dryfit';
import { isRefusal } from '@gusset/units';
import { z } from 'zod';
import type { SolveEngine } from '../engine.ts';
import {
  clearanceSchema,
  degreesSchema,
  outlineSchema,
  points,
  poseSchema,
  radians,
  toPose,
  toSurroundings,
  vehicleSchema,
  writtenPose,
} from './dryfit-shapes.ts';

const requestSchema = z.strictObject({
  id: z.string().min(1).max(80),
  kind: z.enum(['2d', '3d']).default('2d'),
  vehicle: vehicleSchema,
  body: outlineSchema,
  width: z.number().min(1).max(20_000).optional(),
  clearance: clearanceSchema,
  start: poseSchema,
  final: poseSchema,
  dof: z.array(z.enum(['x', 'y', 'theta', 'z'])).optional(),
  thetaRangeDeg: z.tuple([degreesSchema, degreesSchema]).optional(),
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
      ...(path.length === 0 ? {} : { path: path.map((pose) => writtenPose(pose, request.kind === '3d')) }),
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
  return {
    ...toSurroundings(vehicle, isSpatial),
    body: { profile: points(body), widthMm: isSpatial && width !== undefined ? width : null },
    clearance: { movingMm: clearance.moving, finalMm: clearance.final },
    start: toPose(start),
    final: toPose(final),
    thetaRange:
      thetaRangeDeg === undefined
        ? null
        : { minRad: radians(thetaRangeDeg[0]), maxRad: radians(thetaRangeDeg[1]) },
  };
}

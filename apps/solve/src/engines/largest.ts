// The largest profile of a family that goes in and comes out, by section area. The names are the door's public ones.
import { largestProfile } from '@gusset/cargo';
import {
  type LargestProfileInput,
  type ProfileMeasures,
  profileFamilySchema,
} from '@gusset/contracts/dryfit';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { z } from 'zod';
import type { SolveEngine } from '../engine.ts';
import {
  clearanceSchema,
  poseSchema,
  toPose,
  toSurroundings,
  vehicleSchema,
  writtenPose,
} from './dryfit-shapes.ts';

const range = z.tuple([z.number().min(1).max(20_000), z.number().min(1).max(20_000)]);

const requestSchema = z.strictObject({
  id: z.string().min(1).max(80),
  vehicle: vehicleSchema,
  clearance: clearanceSchema,
  start: poseSchema,
  /** Pose of the profile's origin, its lower back corner. */
  anchor: poseSchema,
  family: profileFamilySchema,
  ranges: z.strictObject({ b: range, t: range.optional(), h: range, m: range.optional() }),
  /** b - t at least this. */
  taper: z.number().min(0).max(2_000).default(0),
});
type Request = z.infer<typeof requestSchema>;

const answerSchema = z.strictObject({
  id: z.string(),
  /** Null where no profile of the family was shown to load. */
  params: z.strictObject({ b: z.number(), t: z.number(), h: z.number(), m: z.number() }).nullable(),
  area: z.number().nullable(),
  upperBoundArea: z.number(),
  path: z.array(z.array(z.number())),
  seconds: z.number(),
});

export const engine: SolveEngine<Request, z.infer<typeof answerSchema>> = {
  name: 'largest',
  inputSchema: requestSchema,
  outputSchema: answerSchema,
  solve(request, { seconds }) {
    const missing = missingRange(request);
    if (missing !== null) return missing;
    const startedAt = performance.now();
    const passedSeconds = () => (performance.now() - startedAt) / 1_000;
    const found = largestProfile(toWish(request), { shouldStop: () => passedSeconds() >= seconds });
    if (isRefusal(found)) return found;
    const { best, upperBoundMm2 } = found;
    return {
      id: request.id,
      params: best === null ? null : asNamed(best.measures),
      area: best?.areaMm2 ?? null,
      upperBoundArea: upperBoundMm2,
      path: (best?.path ?? []).map((pose) => writtenPose(pose, false)),
      seconds: passedSeconds(),
    };
  },
};

function missingRange({ family, ranges }: Request): Refusal | null {
  const wanted = { box: [], wedge: ['t'], clipped: ['t', 'm'] } as const;
  const missing = wanted[family].find((key) => ranges[key] === undefined);
  if (missing === undefined) return null;
  const why = `a profile of the family ${family} has it`;
  return refuse(`ranges.${missing}`, { allowed: 'least and most, mm', got: null, why });
}

function toWish({ vehicle, clearance, start, anchor, family, ranges, taper }: Request): LargestProfileInput {
  const { b, t, h, m } = ranges;
  return {
    scene: {
      ...toSurroundings(vehicle, false),
      clearance: { movingMm: clearance.moving, finalMm: clearance.final },
      start: toPose(start),
    },
    anchor: toPose(anchor),
    family,
    ranges: { b: limits(b), h: limits(h), t: t && limits(t), m: m && limits(m) },
    taperMm: taper,
  };
}

function limits([minMm, maxMm]: readonly [number, number]) {
  return { minMm, maxMm };
}

function asNamed({ b, t, h, m }: ProfileMeasures) {
  return { b, t, h, m };
}

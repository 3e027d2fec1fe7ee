// A question of the shop as a case of the planner, with the walls at their worst, as measured or at their best.
import type { CavityResult } from '@gusset/contracts/cargo';
import { type DryFitCase, type DryFitQuestion, dryFitCaseSchema } from '@gusset/contracts/dryfit';
import type { PolygonMm, Pose } from '@gusset/contracts/geometry';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { type DryFitScene, dryFitScene, poseOutside, type SceneWalls } from '../../dry-fit-scene.ts';
import { counterClockwise, posed } from '../../plane/polygon.ts';
import { refuseCase } from '../check-case.ts';
import { distanceFrom, solidsAbreast } from '../check-motion.ts';

export type ReportCase = { readonly input: DryFitCase; readonly scene: DryFitScene };

export type CaseBody = {
  readonly profile: PolygonMm;
  readonly widthMm: number;
  readonly final: Pose;
  readonly thetaRange: DryFitQuestion['thetaRange'];
};

/** A box keeps its gap to the wall behind it, wherever that stands: so far it is looked for, mm. */
const FARTHEST_FOLLOWED_MM = 80;
const FOLLOWING_STEP_MM = 1;

/** Clearance on the way is `movingMm`, in place bare touching: the place is judged surface by surface elsewhere. */
export function reportCase(cavity: CavityResult, body: CaseBody, walls: SceneWalls): ReportCase | Refusal {
  const profile = counterClockwise(body.profile);
  const scene = dryFitScene(cavity, { walls });
  if (isRefusal(scene)) return scene;
  const zMm = body.final.zMm - body.widthMm / 2; // the planner counts from the left side
  const parsed = dryFitCaseSchema.safeParse({
    ...scene.scene,
    body: { profile: [...profile], widthMm: body.widthMm },
    clearance: { movingMm: 0, finalMm: 0 },
    start: poseOutside(scene, profile, body.final.thetaRad, zMm),
    final: { ...body.final, zMm },
    thetaRange: body.thetaRange,
  });
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    return refuse(issue?.path.join('.') ?? 'question', {
      allowed: 'as the schema has it',
      got: null,
      why: issue?.message ?? 'not readable',
    });
  }
  return refuseCase(parsed.data) ?? { input: standing(parsed.data, walls), scene };
}

/** Where walls were moved into the place, the box has moved along with the wall behind it, toward the opening. */
function standing(input: DryFitCase, walls: SceneWalls): DryFitCase {
  if (walls !== 'worst' || standsFree(input)) return input;
  const out = Math.sign(input.start.xMm - input.final.xMm) || 1;
  for (let byMm = FOLLOWING_STEP_MM; byMm <= FARTHEST_FOLLOWED_MM; byMm += FOLLOWING_STEP_MM) {
    const moved = { ...input, final: { ...input.final, xMm: input.final.xMm + out * byMm } };
    if (standsFree(moved)) return moved;
  }
  return input;
}

/** Whether the body overlaps nothing in its final place. */
export function standsFree(input: DryFitCase): boolean {
  const solids = solidsAbreast(input, input.final, input.final, 0);
  return solids !== null && distanceFrom(posed(input.body.profile, input.final), solids) >= 0;
}

/** A motion of the planner in the frame of the question: z in the middle of the width. */
export function middled(path: readonly Pose[], widthMm: number): Pose[] {
  return path.map((pose) => ({ ...pose, zMm: pose.zMm + widthMm / 2 }));
}

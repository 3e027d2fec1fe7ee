// Does it go in and come out again? Three answers: a motion that is proved, a no that is proved, or too close to call.
//
// A rigid body in the section plane, shifted sideways where the width counts; yaw and roll are not considered. What comes
// out goes in the same way: the motion is looked for from the final place outward.
import {
  type DryFitCase,
  type DryFitCaseInput,
  type DryFitResult,
  dryFitCaseSchema,
} from '@gusset/contracts/dryfit';
import { type Refusal, refuse } from '@gusset/units';
import { leastCaliperWidth } from '../plane/hull.ts';
import { posed } from '../plane/polygon.ts';
import { lengthOf, minus } from '../plane/vector.ts';
import { ON_OUTLINE_MM, offOutline, refuseCase } from './check-case.ts';
import { distanceFrom, solidsAbreast } from './check-motion.ts';
import { convexCover } from './convex-cover.ts';
import { wayOut } from './way-out.ts';

export type DryFitOptions = {
  /** Differences in movement below this are not told apart, mm. */
  readonly finestMm?: number;
  readonly mostCells?: number;
  /** Asked now and then; ends the search with what is known by then. */
  readonly shouldStop?: () => boolean;
};

const DEFAULT_FINEST_MM = 0.25;
const DEFAULT_MOST_CELLS = 600_000;
const SLACK_MM = 1e-6;

/** `given` as `dryFitCaseSchema` has it. Refused where it can't be; otherwise one of the three verdicts. */
export function dryFit(given: DryFitCaseInput, options: DryFitOptions = {}): DryFitResult | Refusal {
  const parsed = dryFitCaseSchema.safeParse(given);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    const field = issue?.path.join('.') ?? 'case';
    return refuse(field, {
      allowed: 'as the schema has it',
      got: null,
      why: issue?.message ?? 'not readable',
    });
  }
  return refuseCase(parsed.data) ?? decide(parsed.data, options);
}

function decide(input: DryFitCase, options: DryFitOptions): DryFitResult {
  const limits = {
    finestMm: options.finestMm ?? DEFAULT_FINEST_MM,
    mostCells: options.mostCells ?? DEFAULT_MOST_CELLS,
    shouldStop: options.shouldStop ?? (() => false),
  };
  const { final, clearance, body } = input;
  const solids = solidsAbreast(input, final, final, clearance.finalMm);
  const distanceMm = solids === null ? -1 : distanceFrom(posed(body.profile, final), solids);
  const fits = distanceMm >= clearance.finalMm - SLACK_MM;
  const answer: DryFitResult = {
    fits,
    finalClearanceMm: distanceMm < 0 ? null : distanceMm,
    verdict: 'does-not-load',
    path: [],
    clearance: null,
    provedToMm: limits.finestMm,
    decidedBy: 'place',
    cells: 0,
  };
  if (!fits) return answer;
  const atPlaceMm = Math.min(clearance.movingMm, clearance.finalMm);
  if (isOpeningTooNarrow(input, atPlaceMm)) return { ...answer, decidedBy: 'opening' };

  const out = wayOut(input, { clearanceMm: clearance.movingMm, atPlaceMm, distanceMm }, limits);
  if (out.kind === 'way') {
    const { path, leastMm, by, cells } = out;
    const found = { atLeastMm: leastMm, atMostMm: distanceMm };
    return { ...answer, verdict: 'loads', path, clearance: found, decidedBy: by, cells };
  }
  // A place closer than the clearance of the way is walled in at that clearance whatever the way is like: the no is
  // asked again with what the place allows.
  const no =
    atPlaceMm === clearance.movingMm
      ? out
      : wayOut(input, { clearanceMm: atPlaceMm, atPlaceMm, distanceMm }, limits);
  const verdict = no.kind === 'walled-in' ? 'does-not-load' : 'too-close';
  return { ...answer, verdict, decidedBy: 'search', cells: out.cells + (no === out ? 0 : no.cells) };
}

/**
 * A convex body passes between two points only if its least width does (Strang 1982, "The width of a chair"); so does every
 * convex piece of any body. Holds where the opening is all that joins the two regions.
 */
export function isOpeningTooNarrow({ opening, space, body }: DryFitCase, clearanceMm: number): boolean {
  const jambs = [opening.from, opening.to];
  if (jambs.some((jamb) => offOutline(space, jamb) > ON_OUTLINE_MM)) return false;
  const gap = lengthOf(minus(opening.to, opening.from)) - 2 * clearanceMm;
  return convexCover(body.profile).some(
    (piece) => leastCaliperWidth(piece).widthMm > gap + 2 * ON_OUTLINE_MM,
  );
}

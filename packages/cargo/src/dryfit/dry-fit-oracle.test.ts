// Random sections against two judges that share nothing with the search: a flood over a plain grid of poses, and the same
// scene mirrored, shifted or turned.
import { type DryFitCase, type DryFitCaseInput, dryFitCaseSchema } from '@gusset/contracts/dryfit';
import type { PointMm, Pose } from '@gusset/contracts/geometry';
import { describe, expect, it } from 'vitest';
import { randomCase, seeded } from '../../bench/random-scene.ts';
import { boundsOf, holds, posed } from '../plane/polygon.ts';
import { turned } from '../plane/vector.ts';
import { answered } from '../survey-fixture.ts';
import { checkMotion, distanceFrom } from './check-motion.ts';
import { dryFit } from './dry-fit.ts';

const STEP_MM = 40;
const TURNS = 90;
/** A flood that has looked at so many poses gives up. */
const MOST_POSES = 2_500;
const LIMITS = { finestMm: 4, mostCells: 40_000 };

function cases(count: number, seed: number): DryFitCaseInput[] {
  const random = seeded(seed);
  const found: DryFitCaseInput[] = [];
  while (found.length < count) {
    const next = randomCase(random);
    if (next !== null) found.push(next);
  }
  return found;
}

const verdictOf = (asked: DryFitCaseInput) => answered(dryFit(asked, LIMITS)).verdict;

/**
 * A way over grid poses whose body keeps so far off everything that all poses half a step round are free: a sure yes.
 * False says nothing. Begins at a pose up to one step above the final place that a straight lift reaches.
 */
function gridFindsWay(input: DryFitCase): boolean {
  const { profile } = input.body;
  const solids = { space: input.space, obstacles: input.obstacles.map(({ polygon }) => polygon) };
  const radius = Math.max(...profile.map(({ xMm, yMm }) => Math.hypot(xMm, yMm)));
  const reach = STEP_MM * Math.SQRT1_2 + (radius * Math.PI) / TURNS;
  const { xMinMm, xMaxMm, yMinMm, yMaxMm } = boundsOf(input.space);
  const [nx, ny] = [Math.ceil((xMaxMm - xMinMm) / STEP_MM), Math.ceil((yMaxMm - yMinMm) / STEP_MM)];
  const poseAt = (ix: number, iy: number, it: number): Pose => ({
    xMm: xMinMm + ix * STEP_MM,
    yMm: yMinMm + iy * STEP_MM,
    thetaRad: (2 * Math.PI * it) / TURNS,
    zMm: 0,
  });
  const isWide = (pose: Pose) => distanceFrom(posed(profile, pose), solids) >= reach;
  const seen = new Set<number>();
  const start = { ...input.final, yMm: input.final.yMm + reach + 5 };
  if (!isWide(start)) return false;
  if (!checkMotion(input, [input.final, start], 0).holds) return false;
  const turn = Math.round(((start.thetaRad / (2 * Math.PI)) * TURNS + TURNS) % TURNS) % TURNS;
  const queue = [
    [Math.round((start.xMm - xMinMm) / STEP_MM), Math.round((start.yMm - yMinMm) / STEP_MM), turn] as const,
  ];
  for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
    const [ix, iy, it] = at;
    const key = (it * ny + iy) * nx + ix;
    if (ix < 0 || iy < 0 || ix >= nx || iy >= ny || seen.has(key)) continue;
    if (seen.size >= MOST_POSES) return false;
    seen.add(key);
    const pose = poseAt(ix, iy, it);
    if (!isWide(pose)) continue;
    if (posed(profile, pose).every((corner) => holds(input.outside, corner))) return true;
    queue.push([ix, iy, (it + 1) % TURNS], [ix, iy, (it + TURNS - 1) % TURNS]);
    queue.push([ix - 1, iy, it], [ix, iy - 1, it], [ix, iy + 1, it], [ix + 1, iy, it]);
  }
  return false;
}

/** The scene with every point moved, and the poses to match: a pose is moved by its origin and turned by `byRad`. */
function movedBy(asked: DryFitCaseInput, move: (at: PointMm) => PointMm, byRad: number): DryFitCaseInput {
  const pose = (it: DryFitCaseInput['final']) => ({ ...move(it), thetaRad: it.thetaRad + byRad });
  return {
    ...asked,
    space: asked.space.map(move),
    outside: asked.outside.map(move),
    opening: { from: move(asked.opening.from), to: move(asked.opening.to) },
    start: pose(asked.start),
    final: pose(asked.final),
  };
}

function mirrored(asked: DryFitCaseInput): DryFitCaseInput {
  const flip = ({ xMm, yMm }: PointMm) => ({ xMm: -xMm, yMm });
  const pose = (it: DryFitCaseInput['final']) => ({ ...flip(it), thetaRad: -it.thetaRad });
  return {
    ...asked,
    space: asked.space.map(flip).reverse(),
    outside: asked.outside.map(flip).reverse(),
    opening: { from: flip(asked.opening.to), to: flip(asked.opening.from) },
    body: { ...asked.body, profile: asked.body.profile.map(flip).reverse() },
    start: pose(asked.start),
    final: pose(asked.final),
  };
}

describe('dry fit of random sections', () => {
  it('never says no where a flood over a grid of roomy poses comes out', () => {
    // Of half their size, so that there is room for a coarse grid to get through.
    const half = ({ xMm, yMm }: PointMm) => ({ xMm: xMm / 2, yMm: yMm / 2 });
    const asked = cases(10, 11).map((it) => ({
      ...it,
      body: { ...it.body, profile: it.body.profile.map(half) },
    }));
    const roomy = asked.filter((it) => gridFindsWay(dryFitCaseSchema.parse(it)));
    expect(roomy.length).toBeGreaterThan(0);
    expect(roomy.map(verdictOf)).not.toContain('does-not-load');
  });

  it('shows for every yes a motion that the independent check passes', () => {
    for (const asked of cases(8, 23)) {
      const result = answered(dryFit(asked, LIMITS));
      if (result.verdict !== 'loads') continue;
      expect(checkMotion(dryFitCaseSchema.parse(asked), result.path, 0).holds).toBe(true);
    }
  });

  it('never contradicts itself when the scene is mirrored, shifted or turned', () => {
    for (const asked of cases(4, 31)) {
      const others = [
        mirrored(asked),
        movedBy(asked, ({ xMm, yMm }) => ({ xMm: xMm + 137, yMm: yMm - 53 }), 0),
        movedBy(asked, (at) => turned(at, 0.4), 0.4),
      ];
      const said = new Set([asked, ...others].map(verdictOf));
      expect(said.has('loads') && said.has('does-not-load')).toBe(false);
    }
  });
});

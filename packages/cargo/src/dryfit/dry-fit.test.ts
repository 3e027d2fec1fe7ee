// Truth: thresholds that have a closed form, approached from both sides.
import { type DryFitCaseInput, type DryFitResult, dryFitCaseSchema } from '@gusset/contracts/dryfit';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkMotion } from './check-motion.ts';
import { dryFit } from './dry-fit.ts';

type Corner = readonly [number, number];
const polygon = (corners: readonly Corner[]) => corners.map(([xMm, yMm]) => ({ xMm, yMm }));
const rectangle = (b: number, h: number): Corner[] => [
  [0, 0],
  [b, 0],
  [b, h],
  [0, h],
];

type Scene = Pick<DryFitCaseInput, 'space' | 'outside' | 'opening' | 'obstacles'>;

/** A cargo space of depth and height behind a sill, with everything free beyond. */
function overSill({ depth, height, sill }: { depth: number; height: number; sill: number }): Scene {
  const beyond = depth + 2_500;
  return {
    space: polygon([
      [0, 0],
      [depth, 0],
      [depth, sill],
      [depth + 1, sill],
      [depth + 1, -400],
      [beyond, -400],
      [beyond, 2_200],
      [depth + 1, 2_200],
      [depth + 1, height],
      [0, height],
    ]),
    outside: polygon([
      [depth, sill],
      [depth + 1, sill],
      [depth + 1, -400],
      [beyond, -400],
      [beyond, 2_200],
      [depth + 1, 2_200],
      [depth + 1, height],
      [depth, height],
    ]),
    opening: { from: { xMm: depth, yMm: sill }, to: { xMm: depth, yMm: height } },
  };
}

/** Two corridors of widths a (lying) and b (standing) that meet at a right angle; outside is the standing one's far end. */
function aroundCorner(a: number, b: number): Scene {
  return {
    space: polygon([
      [0, 0],
      [1_500 + b, 0],
      [1_500 + b, 2_600],
      [1_500, 2_600],
      [1_500, a],
      [0, a],
    ]),
    outside: polygon([
      [1_500, 1_200],
      [1_500 + b, 1_200],
      [1_500 + b, 2_600],
      [1_500, 2_600],
    ]),
    opening: { from: { xMm: 1_500, yMm: 1_200 }, to: { xMm: 1_500 + b, yMm: 1_200 } },
  };
}

/** Longest bar of a thickness round the corner: the least over the tilt of (a cos p + b sin p - t) / (sin p cos p). */
function longestBar(a: number, b: number, thickness: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < 200_000; i++) {
    const p = (Math.PI / 2) * (i / 200_000);
    const [sin, cos] = [Math.sin(p), Math.cos(p)];
    least = Math.min(least, (a * cos + b * sin - thickness) / (sin * cos));
  }
  return least;
}

function ask(
  scene: Scene,
  profile: readonly Corner[],
  final: Corner = [1, 0],
  options: Parameters<typeof dryFit>[1] = {},
): { input: DryFitCaseInput; result: DryFitResult } {
  const input: DryFitCaseInput = {
    ...scene,
    body: { profile: polygon(profile) },
    clearance: { movingMm: 0, finalMm: 0 },
    start: { xMm: 2_000, yMm: 500, thetaRad: 0 },
    final: { xMm: final[0], yMm: final[1], thetaRad: 0 },
  };
  const result = dryFit(input, options);
  if (isRefusal(result)) throw new Error(JSON.stringify(result));
  return { input, result };
}

describe('dry fit', () => {
  it('takes a low box straight out over the sill', () => {
    const { result } = ask(overSill({ depth: 1_000, height: 700, sill: 200 }), rectangle(400, 300));
    expect(result).toMatchObject({ verdict: 'loads', decidedBy: 'straight-way', fits: true });
  });

  it('says at once that a box thicker than the opening is high does not come through it', () => {
    const { result } = ask(overSill({ depth: 1_000, height: 700, sill: 200 }), rectangle(600, 505));
    expect(result).toMatchObject({ verdict: 'does-not-load', decidedBy: 'opening' });
  });

  it.each([
    [-15, 'loads'],
    [60, 'does-not-load'],
  ] as const)('decides a bar %d mm from the longest that turns a right-angled corner: %s', (off, verdict) => {
    const length = longestBar(420, 360, 60) + off;
    const { input, result } = ask(aroundCorner(420, 360), rectangle(length, 60), [20, 10]);
    expect(result.verdict).toBe(verdict);
    if (result.verdict === 'loads')
      expect(checkMotion(dryFitCaseSchema.parse(input), result.path, 0).holds).toBe(true);
  });

  it.each([
    [-1, ['loads', 'too-close']],
    [1, ['does-not-load', 'too-close']],
  ] as const)('is never wrong %d mm from the longest bar', (off, allowed) => {
    const length = longestBar(420, 360, 60) + off;
    const { result } = ask(aroundCorner(420, 360), rectangle(length, 60), [20, 10], {
      finestMm: 2,
      mostCells: 60_000,
    });
    expect(allowed).toContain(result.verdict);
  });

  it.each([
    [5, ['loads', 'too-close']],
    [1, ['loads', 'too-close']],
    [-1, ['does-not-load', 'too-close']],
    [-5, ['does-not-load']],
  ] as const)(
    'tips a tall box flat through a slot with %d mm to spare: the width of a chair',
    (spare, allowed) => {
      const scene = overSill({ depth: 1_000, height: 700, sill: 395 });
      const { result } = ask(scene, rectangle(305 - spare, 600), [1, 0], { finestMm: 1, mostCells: 60_000 });
      expect(allowed).toContain(result.verdict);
    },
  );

  it('never turns a no into a yes by adding an obstacle, nor a yes into a no by shrinking the body', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 380, max: 520 }),
        fc.integer({ min: 250, max: 640 }),
        fc.integer({ min: 20, max: 160 }),
        (height, depth, stud) => {
          const scene = overSill({ depth: 760, height: 700, sill: 200 });
          const options = { finestMm: 4, mostCells: 60_000 };
          const plain = ask(scene, rectangle(depth, height), [1, 0], options).result.verdict;
          const obstacles = [
            {
              name: 'stud',
              polygon: polygon([
                [740, 650],
                [760, 650],
                [760, 700],
                [740, 700],
              ]),
            },
          ];
          const hindered = ask({ ...scene, obstacles }, rectangle(depth, height), [1, 0], options).result
            .verdict;
          const smaller = ask(scene, rectangle(depth - stud / 2, height - stud / 2), [1, 0], options).result
            .verdict;
          if (plain === 'does-not-load') expect(hindered).not.toBe('loads');
          if (plain === 'loads') expect(smaller).not.toBe('does-not-load');
        },
      ),
      { numRuns: 6, seed: 7 },
    );
  });

  it('refuses an outline that crosses itself and names its edges', () => {
    const scene = overSill({ depth: 1_000, height: 700, sill: 200 });
    const answer = dryFit({
      ...scene,
      body: {
        profile: polygon([
          [0, 0],
          [300, 300],
          [300, 0],
          [0, 300],
        ]),
      },
      clearance: { movingMm: 0, finalMm: 0 },
      start: { xMm: 2_000, yMm: 500, thetaRad: 0 },
      final: { xMm: 1, yMm: 0, thetaRad: 0 },
    });
    expect(answer).toMatchObject({ refusal: { field: 'body.profile' } });
  });
});

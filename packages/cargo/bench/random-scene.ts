// Invented cargo spaces of twenty-odd edges and profiles of up to ten, in poses that fit: for benches and oracles.
import type { DryFitCaseInput } from '@gusset/contracts/dryfit';
import type { PointMm, Pose } from '@gusset/contracts/geometry';
import { distanceFrom } from '../src/dryfit/check-motion.ts';
import { posed, signedAreaMm2 } from '../src/plane/polygon.ts';
import { crossingEdges } from '../src/plane/simple.ts';

export type Random = () => number;

/** Park and Miller's minimal standard generator: enough for invented shapes, the same everywhere. */
export function seeded(seed: number): Random {
  let state = (seed % 2_147_483_646) + 1;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return (state - 1) / 2_147_483_646;
  };
}

/** A space behind a lip, its outside with bumper and raised lid, and a body that stands in it; null where none does. */
export function randomCase(random: Random): DryFitCaseInput | null {
  const vehicle = randomVehicle(random);
  if (vehicle === null) return null;
  for (let attempt = 0; attempt < 60; attempt++) {
    const profile = randomProfile(random);
    if (profile === null) continue;
    const final = randomPlace(random, vehicle.space, vehicle.depth, profile);
    if (final === null) continue;
    const start: Pose = { xMm: vehicle.depth + 1_400, yMm: 600, thetaRad: 0, zMm: 0 };
    return {
      space: [...vehicle.space],
      outside: [...vehicle.outside],
      opening: vehicle.opening,
      body: { profile: [...profile] },
      clearance: { movingMm: 0, finalMm: 0 },
      start,
      final,
    };
  }
  return null;
}

function randomVehicle(random: Random) {
  const between = (low: number, high: number) => low + random() * (high - low);
  const depth = between(650, 1_150);
  const height = between(450, 850);
  const sill = between(20, 260);
  const lip = between(20, height - sill - 180);
  const floor = steps(random, 0, depth - 60, 5).map((x) => point(x, between(-25, 25)));
  const roof = steps(random, 60, depth - 40, 4)
    .reverse()
    .map((x) => point(x, height + between(-40, 40)));
  const back = [point(between(-120, 60), height * 0.66), point(between(-60, 30), height * 0.33)];
  const inside = [point(0, 0), ...floor.slice(1), point(depth, sill)];
  const over = [point(depth, height - lip), ...roof, point(between(-140, 40), height), ...back];
  const far = depth + 2_300;
  const bumper = [point(depth + between(40, 160), sill - between(0, 30)), point(depth + 170, -450)];
  const lid = [point(far, 2_400), point(depth + between(300, 700), height + between(250, 700))];
  const beyond = [...bumper, point(far, -450), ...lid];
  const space = [...inside, ...beyond, ...over];
  const outside = [point(depth, sill), ...beyond, point(depth, height - lip)];
  if ([space, outside].some((it) => crossingEdges(it) !== null || signedAreaMm2(it) <= 0)) return null;
  return { space, outside, depth, opening: { from: point(depth, sill), to: point(depth, height - lip) } };
}

/** Boxes, clipped wedges, Ls and rounder shapes. */
function randomProfile(random: Random): readonly PointMm[] | null {
  const between = (low: number, high: number) => low + random() * (high - low);
  const [b, h] = [between(240, 760), between(200, 560)];
  const kind = Math.floor(random() * 4);
  const [m, t] = [h * between(0.2, 0.8), b * between(0.4, 0.9)];
  const shapes = [
    [point(0, 0), point(b, 0), point(b, h), point(0, h)],
    [point(0, 0), point(b, 0), point(b, m), point(t, h), point(0, h)],
    [point(0, 0), point(b, 0), point(b, m), point(t, m), point(t, h), point(0, h)],
    roundish(random, b, h),
  ];
  const profile = shapes[kind] ?? null;
  return profile === null || crossingEdges(profile) !== null || signedAreaMm2(profile) <= 0 ? null : profile;
}

function roundish(random: Random, b: number, h: number): PointMm[] {
  return Array.from({ length: 10 }, (_, i) => {
    const angle = (2 * Math.PI * i) / 10;
    const share = 0.7 + 0.3 * random();
    return point((b / 2) * (1 + share * Math.cos(angle)), (h / 2) * (1 + share * Math.sin(angle)));
  });
}

/** On the floor, touching nothing deeper than by lying on it. */
function randomPlace(
  random: Random,
  space: readonly PointMm[],
  depth: number,
  profile: readonly PointMm[],
): Pose | null {
  for (let attempt = 0; attempt < 30; attempt++) {
    const xMm = random() * depth * 0.6;
    const thetaRad = random() < 0.7 ? 0 : (random() - 0.5) * 0.3;
    let low = -60;
    let high = 400;
    const fitsAt = (yMm: number) =>
      distanceFrom(posed(profile, { xMm, yMm, thetaRad, zMm: 0 }), { space, obstacles: [] }) >= 0;
    if (!fitsAt(high)) high = 120;
    if (!fitsAt(high)) continue;
    for (let i = 0; i < 12; i++) {
      const middle = (low + high) / 2;
      if (fitsAt(middle)) high = middle;
      else low = middle;
    }
    return { xMm, yMm: high + random() * 4, thetaRad, zMm: 0 };
  }
  return null;
}

function steps(random: Random, from: number, to: number, count: number): number[] {
  const size = (to - from) / count;
  return Array.from({ length: count }, (_, i) => from + size * (i + (i === 0 ? 0 : random() * 0.8)));
}

function point(xMm: number, yMm: number): PointMm {
  return { xMm, yMm };
}

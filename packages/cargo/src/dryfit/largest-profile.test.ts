// Truth: with the whole depth of the floor taken, a box can only come straight out, so the opening's height is its limit.
import type { LargestProfileInput } from '@gusset/contracts/dryfit';
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { dryFit } from './dry-fit.ts';
import { largestProfile } from './largest-profile.ts';
import { PROFILE_FAMILIES } from './profile-family.ts';

const polygon = (corners: readonly (readonly [number, number])[]) =>
  corners.map(([xMm, yMm]) => ({ xMm, yMm }));
const [DEPTH, HEIGHT, SILL, LIP] = [900, 620, 160, 60];
const beyond: (readonly [number, number])[] = [
  [DEPTH + 1, SILL],
  [DEPTH + 1, -400],
  [3_400, -400],
  [3_400, 2_200],
  [DEPTH + 1, 2_200],
  [DEPTH + 1, HEIGHT - LIP],
];
const scene: LargestProfileInput['scene'] = {
  space: polygon([
    [0, 0],
    [DEPTH, 0],
    [DEPTH, SILL],
    ...beyond,
    [DEPTH, HEIGHT - LIP],
    [DEPTH, HEIGHT],
    [-100, HEIGHT],
  ]),
  outside: polygon([[DEPTH, SILL], ...beyond, [DEPTH, HEIGHT - LIP]]),
  opening: { from: { xMm: DEPTH, yMm: SILL }, to: { xMm: DEPTH, yMm: HEIGHT - LIP } },
  clearance: { movingMm: 0, finalMm: 0 },
  start: { xMm: 3_000, yMm: 500, thetaRad: 0 },
};
const wish: LargestProfileInput = {
  scene,
  anchor: { xMm: 2, yMm: 0.5, thetaRad: 0 },
  family: 'box',
  ranges: { b: { minMm: 200, maxMm: 880 }, h: { minMm: 150, maxMm: 600 } },
};

describe('largest profile', () => {
  it('finds the box that just passes the opening, and a bound that is not far above it', () => {
    const found = largestProfile(wish, { within: 0.005, mostRuns: 24 });
    if (isRefusal(found)) throw new Error(JSON.stringify(found));
    const limit = 880 * (HEIGHT - LIP - SILL);
    expect(found.best?.areaMm2).toBeLessThanOrEqual(limit + 1);
    expect(found.best?.areaMm2).toBeGreaterThan(limit * 0.985);
    expect(found.upperBoundMm2).toBeGreaterThanOrEqual(found.best?.areaMm2 ?? Number.POSITIVE_INFINITY);
    expect(found.upperBoundMm2).toBeLessThan(limit * 1.03);
  });

  it('answers a profile that loads when it is asked for by itself', () => {
    const found = largestProfile({ ...wish, family: 'wedge', taperMm: 40 }, { within: 0.05, mostRuns: 14 });
    if (isRefusal(found) || found.best === null) throw new Error('nothing found');
    const { measures } = found.best;
    expect(measures.t).toBeLessThanOrEqual(measures.b - 40);
    const profile = [...PROFILE_FAMILIES.wedge.profile(measures)];
    const answer = dryFit({ ...scene, body: { profile }, final: wish.anchor });
    expect(answer).toMatchObject({ verdict: 'loads' });
  });

  it('finds nothing where not even the smallest of the family goes in', () => {
    const tall = { ...wish, ranges: { b: { minMm: 500, maxMm: 880 }, h: { minMm: 450, maxMm: 600 } } };
    expect(largestProfile(tall)).toMatchObject({ best: null });
  });

  it('refuses a range that runs backwards', () => {
    const backwards = { ...wish, ranges: { ...wish.ranges, b: { minMm: 500, maxMm: 400 } } };
    expect(largestProfile(backwards)).toMatchObject({ refusal: { field: 'ranges.b.maxMm', got: 400 } });
  });
});

import type { Pose } from '@gusset/contracts/geometry';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildCavity } from './build-cavity.ts';
import { BEHIND_SEAT } from './forms/behind-seat.ts';
import { HATCH_ESTATE } from './forms/hatch-estate.ts';
import { UNDER_SEAT } from './forms/under-seat.ts';
import { placeBox } from './place-box.ts';
import { restAgainst } from './rest-against.ts';
import { answered, changed, lengthReading, RECTANGLE, SLANTED, uprightProfile } from './survey-fixture.ts';

const slanted = answered(buildCavity(HATCH_ESTATE, SLANTED));

const clearances = (cavity: typeof slanted, heightMm: number, depthMm: number, pose: Pose) =>
  answered(placeBox({ cavity, profile: uprightProfile(depthMm, heightMm), widthMm: 600, pose })).clearances;

describe('restAgainst', () => {
  it('pushes a 400 mm box to 20 mm from a 3-4-5 seat: 325 mm along the floor', () => {
    const pose = answered(restAgainst(slanted, uprightProfile(150, 400), { back: 'seat-back', gapMm: 20 }));
    expect(pose.xMm).toBeCloseTo(325, 6);
    expect(pose.yMm).toBeCloseTo(0, 9);
    expect(pose).toMatchObject({ thetaRad: 0, zMm: 0 });
  });

  it('lies along a floor that rises', () => {
    const rising = answered(buildCavity(HATCH_ESTATE, changed(SLANTED, lengthReading('floorRise', 80))));
    const pose = answered(restAgainst(rising, uprightProfile(150, 300), { back: 'seat-back', gapMm: 15 }));
    expect(pose.thetaRad).toBeCloseTo(Math.asin(80 / 800), 9);
    const found = clearances(rising, 300, 150, pose);
    expect(found.find(({ surface }) => surface.id === 'floor')?.rests).toBe(true);
    expect(found.find(({ surface }) => surface.id === 'seat-back')?.clearanceMm).toBeCloseTo(15, 6);
  });

  it('stands on a hump that is under it', () => {
    const cavity = answered(
      buildCavity(UNDER_SEAT, [
        lengthReading('floorDepth', 460),
        lengthReading('backHeight', 260),
        lengthReading('frontHeight', 220),
        lengthReading('humpFrom', 160),
        lengthReading('humpLength', 120),
        lengthReading('humpHeight', 40),
        lengthReading('width', 1280),
        lengthReading('openingWidth', 1200),
      ]),
    );
    const pose = answered(restAgainst(cavity, uprightProfile(300, 150), { back: 'cab-wall', gapMm: 10 }));
    expect(pose).toMatchObject({ xMm: expect.closeTo(10, 6), yMm: expect.closeTo(40, 9) });
    const before = answered(restAgainst(cavity, uprightProfile(100, 150), { back: 'cab-wall', gapMm: 10 }));
    expect(before.yMm).toBeCloseTo(0, 9);
  });

  it('pushes the other way when the back is the seat in front of a cab wall', () => {
    const cavity = answered(
      buildCavity(BEHIND_SEAT, [
        lengthReading('floorDepth', 320),
        lengthReading('depthAt300', 290),
        lengthReading('height', 700),
        lengthReading('gapAtTop', 120),
        lengthReading('width', 1300),
        lengthReading('openingWidth', 1200),
      ]),
    );
    const pose = answered(restAgainst(cavity, uprightProfile(100, 500), { back: 'seat-back', gapMm: 12 }));
    const seat = clearances(cavity, 500, 100, pose).filter(({ surface }) => surface.role === 'seat-back');
    expect(Math.min(...seat.map((it) => it.clearanceMm))).toBeCloseTo(12, 6);
  });

  it('leaves exactly the gap, on the floor, for any wedge', () => {
    const size = fc.double({ min: 30, max: 350, noNaN: true });
    fc.assert(
      fc.property(size, size, fc.double({ min: 0, max: 40, noNaN: true }), (depthMm, heightMm, gapMm) => {
        const pose = answered(
          restAgainst(slanted, uprightProfile(depthMm, heightMm), { back: 'seat-back', gapMm }),
        );
        const found = clearances(slanted, heightMm, depthMm, pose);
        expect(found.find(({ surface }) => surface.id === 'seat-back')?.clearanceMm).toBeCloseTo(gapMm, 5);
        expect(found.find(({ surface }) => surface.id === 'floor')?.rests).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  it('refuses a back the section has not, and a gap that is none', () => {
    const cavity = answered(buildCavity(HATCH_ESTATE, RECTANGLE));
    expect(isRefusal(restAgainst(cavity, uprightProfile(100, 100), { back: 'cab-wall', gapMm: 10 }))).toBe(
      true,
    );
    expect(
      isRefusal(restAgainst(cavity, uprightProfile(100, 100), { back: 'seat-back', gapMm: Number.NaN })),
    ).toBe(true);
  });
});

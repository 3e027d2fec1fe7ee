import { type Obstruction, type Placement, placementSchema } from '@gusset/contracts/cargo';
import type { PolygonMm, Pose } from '@gusset/contracts/geometry';
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { buildCavity } from './build-cavity.ts';
import { HATCH_ESTATE } from './forms/hatch-estate.ts';
import { placeBox } from './place-box.ts';
import { answered, changed, lengthReading, RECTANGLE, SLANTED, uprightProfile } from './survey-fixture.ts';

const standing = (xMm: number, others: Partial<Pose> = {}): Pose => ({
  xMm,
  yMm: 0,
  thetaRad: 0,
  zMm: 0,
  ...others,
});

const clearanceTo = (placement: Placement, id: string, side: 'left' | 'right' | null = null) => {
  const found = placement.clearances.find(({ surface }) => surface.id === id && surface.side === side);
  if (found === undefined) throw new Error(`no clearance to ${id}`);
  return found;
};

const rectangleCavity = answered(buildCavity(HATCH_ESTATE, RECTANGLE));
const slantedCavity = answered(buildCavity(HATCH_ESTATE, SLANTED));

const hingeArm: Obstruction = {
  id: 'hinge-arm',
  name: 'Hinge arm, lid shut',
  polygon: [
    { xMm: 340, yMm: 430 },
    { xMm: 380, yMm: 430 },
    { xMm: 380, yMm: 500 },
    { xMm: 340, yMm: 500 },
  ],
  zMinMm: 400,
  zMaxMm: 440,
  plusMinusMm: 4,
  appliesTo: 'fit',
  moves: true,
};

const withArm = answered(buildCavity(HATCH_ESTATE, RECTANGLE, { obstructions: [hingeArm], keepFree: [] }));

describe('placeBox', () => {
  it('never puts the likely clearance below the worst, nor above what was measured', () => {
    const arch = changed(SLANTED, lengthReading('archTo', 795, 4), lengthReading('floorDepth', 800, 3));
    const cavity = answered(buildCavity(HATCH_ESTATE, arch));
    const slab = cavity.widthSlabs.find(({ id }) => id === 'between-arches');
    expect(slab?.sectionLikelyMm).toBeLessThanOrEqual(slab?.sectionPlusMinusMm ?? 0);
    for (const { likelyMm, worstCaseMm, clearanceMm } of answered(
      placeBox({ cavity, profile: uprightProfile(300, 200), widthMm: 900, pose: standing(120) }),
    ).clearances) {
      expect(likelyMm).toBeGreaterThanOrEqual(worstCaseMm - 1e-9);
      expect(likelyMm).toBeLessThanOrEqual(clearanceMm + 1e-9);
    }
  });

  describe('against trim that gives', () => {
    const soft = (crushMm: number, plusMinusMm = 0) =>
      answered(
        buildCavity(HATCH_ESTATE, changed(RECTANGLE, lengthReading('floorDepth', 800, plusMinusMm)), {
          obstructions: [],
          keepFree: [],
          softWalls: [{ wallId: 'seat-back', crushMm }],
        }),
      );
    const toSeat = (crushMm: number, xMm: number) => {
      const placement = answered(
        placeBox({
          cavity: soft(crushMm),
          profile: uprightProfile(300, 400),
          widthMm: 900,
          pose: standing(xMm),
        }),
      );
      return { ...clearanceTo(placement, 'seat-back'), fits: placement.fits };
    };

    it('is pressed in as far as it gives, and no farther', () => {
      expect(toSeat(12, -8)).toMatchObject({ clearanceMm: 0, verdict: 'clear', fits: true });
      expect(toSeat(12, -20)).toMatchObject({ clearanceMm: -8, verdict: 'touches', fits: false });
      expect(toSeat(0, -8)).toMatchObject({ clearanceMm: -8, verdict: 'touches', fits: false });
    });

    it('keeps its distance where the box does not touch it', () => {
      expect(toSeat(12, 5)).toMatchObject({ clearanceMm: 5, wantedMm: 0, verdict: 'clear', fits: true });
    });
  });

  it('measures to every wall of a rectangle by hand', () => {
    const placement = answered(
      placeBox({
        cavity: rectangleCavity,
        profile: uprightProfile(300, 400),
        widthMm: 900,
        pose: standing(20),
      }),
    );
    expect(clearanceTo(placement, 'seat-back').clearanceMm).toBeCloseTo(20, 9);
    expect(clearanceTo(placement, 'roof').clearanceMm).toBeCloseTo(100, 9);
    expect(clearanceTo(placement, 'opening').clearanceMm).toBeCloseTo(480, 9);
    expect(clearanceTo(placement, 'between-arches', 'left').clearanceMm).toBeCloseTo(50, 9);
    expect(clearanceTo(placement, 'floor')).toMatchObject({ clearanceMm: 0, rests: true, verdict: 'clear' });
    expect(placement).toMatchObject({
      fits: true,
      fitsAtWorst: true,
      overlapping: [],
      outsideSection: false,
    });
    expect(placementSchema.safeParse(placement).error).toBeUndefined();
  });

  it('measures a top corner square to a leaning seat: 20 mm by the 3-4-5 triangle', () => {
    const placement = answered(
      placeBox({
        cavity: slantedCavity,
        profile: uprightProfile(150, 400),
        widthMm: 900,
        pose: standing(325),
      }),
    );
    const seat = clearanceTo(placement, 'seat-back');
    expect(seat.clearanceMm).toBeCloseTo(20, 9);
    expect(seat.at[0]).toMatchObject({ xMm: 325, yMm: 400 });
    expect(seat.at[1].xMm).toBeCloseTo(325 - 16, 9);
    expect(seat.at[1].yMm).toBeCloseTo(400 + 12, 9);
  });

  it('is tight where the ± eats into the wanted clearance, and worst is less sure than likely', () => {
    const unsure = answered(
      buildCavity(
        HATCH_ESTATE,
        changed(RECTANGLE, lengthReading('seatHeight', 500, 3), lengthReading('opening', 500, 4)),
      ),
    );
    const placement = answered(
      placeBox({ cavity: unsure, profile: uprightProfile(300, 485), widthMm: 900, pose: standing(20) }),
    );
    const roof = clearanceTo(placement, 'roof');
    expect(roof).toMatchObject({ wantedMm: 10, verdict: 'tight' });
    expect(roof.worstCaseMm).toBeCloseTo(15 - 7, 9);
    expect(roof.likelyMm).toBeCloseTo(15 - 5, 9);
    expect(placement.fitsAtWorst).toBe(true);
  });

  it('touches at nothing left and overlaps beyond', () => {
    const at = (xMm: number) =>
      answered(
        placeBox({
          cavity: rectangleCavity,
          profile: uprightProfile(300, 400),
          widthMm: 900,
          pose: standing(xMm),
        }),
      );
    expect(clearanceTo(at(0), 'seat-back').verdict).toBe('touches');
    expect(at(0).fits).toBe(true);
    expect(at(-7).fits).toBe(false);
    expect(at(-7).overlapping).toEqual([
      { surface: expect.objectContaining({ id: 'seat-back' }), byMm: expect.closeTo(7, 9) },
    ]);
  });

  it('does not take a box beyond the walls for one that fits', () => {
    const outside = placeBox({
      cavity: rectangleCavity,
      profile: uprightProfile(300, 400),
      widthMm: 900,
      pose: standing(2000),
    });
    expect(answered(outside)).toMatchObject({ fits: false, outsideSection: true });
    const round = placeBox({
      cavity: rectangleCavity,
      profile: uprightProfile(2000, 1000),
      widthMm: 900,
      pose: standing(-500, { yMm: -200 }),
    });
    expect(answered(round).fits).toBe(false);
  });

  it('compares the width with the narrowest place it reaches', () => {
    const between = answered(
      placeBox({
        cavity: slantedCavity,
        profile: uprightProfile(100, 200),
        widthMm: 1050,
        pose: standing(400),
      }),
    );
    expect(between.overlapping.map(({ byMm }) => byMm)).toEqual([25, 25]);
    const above = answered(
      placeBox({
        cavity: slantedCavity,
        profile: uprightProfile(100, 150),
        widthMm: 1050,
        pose: standing(400, { yMm: 312 }),
      }),
    );
    expect(above.fits).toBe(true);
    expect(clearanceTo(above, 'between-arches', 'right').clearanceMm).toBeCloseTo(12, 9);
  });

  it('measures to an arm in the section where it lies over the box, in space where it lies beside it', () => {
    const over = answered(
      placeBox({ cavity: withArm, profile: uprightProfile(400, 400), widthMm: 900, pose: standing(20) }),
    );
    expect(clearanceTo(over, 'hinge-arm')).toMatchObject({
      clearanceMm: 30,
      worstCaseMm: 26,
      wantedMm: 15,
      verdict: 'clear',
    });
    const beside = answered(
      placeBox({ cavity: withArm, profile: uprightProfile(400, 400), widthMm: 600, pose: standing(20) }),
    );
    expect(clearanceTo(beside, 'hinge-arm').clearanceMm).toBeCloseTo(Math.hypot(30, 100), 9);
    expect(clearanceTo(beside, 'hinge-arm').worstCaseMm).toBeCloseTo(Math.hypot(26, 96), 9);
  });

  it('counts an arm in the box, by the least shift that frees it', () => {
    const placement = answered(
      placeBox({ cavity: withArm, profile: uprightProfile(400, 450), widthMm: 900, pose: standing(20) }),
    );
    expect(clearanceTo(placement, 'hinge-arm').clearanceMm).toBeCloseTo(-20, 9);
    expect(placement.fits).toBe(false);
  });

  it('leaves out what is in the way only during loading', () => {
    const onTheWay = answered(
      buildCavity(HATCH_ESTATE, RECTANGLE, {
        obstructions: [{ ...hingeArm, appliesTo: 'motion' }],
        keepFree: [],
      }),
    );
    const placement = answered(
      placeBox({ cavity: onTheWay, profile: uprightProfile(400, 450), widthMm: 900, pose: standing(20) }),
    );
    expect(placement.clearances.some(({ surface }) => surface.id === 'hinge-arm')).toBe(false);
  });

  it('does not fit where it blocks a keep-free zone', () => {
    const zone = {
      id: 'tether',
      name: 'Child-seat tether, middle',
      kind: 'child-seat-tether',
      polygon: uprightProfile(60, 300),
      zMinMm: -40,
      zMaxMm: 40,
      plusMinusMm: 5,
    } as const;
    const cavity = answered(buildCavity(HATCH_ESTATE, RECTANGLE, { obstructions: [], keepFree: [zone] }));
    const place = (xMm: number) =>
      answered(placeBox({ cavity, profile: uprightProfile(300, 400), widthMm: 900, pose: standing(xMm) }));
    expect(place(20).overlapping).toEqual([
      { surface: expect.objectContaining({ type: 'keep-free', id: 'tether' }), byMm: 40 },
    ]);
    expect(place(75).fits).toBe(true);
  });

  it('refuses a box that is none', () => {
    const place = (profile: PolygonMm, widthMm: number, pose = standing(0)) =>
      placeBox({ cavity: rectangleCavity, profile, widthMm, pose });
    const bowTie = [
      { xMm: 0, yMm: 0 },
      { xMm: 100, yMm: 100 },
      { xMm: 100, yMm: 0 },
      { xMm: 0, yMm: 110 },
    ];
    for (const answer of [
      place([], 900),
      place(bowTie, 900),
      place(uprightProfile(0, 400), 900),
      place(uprightProfile(Number.NaN, 400), 900),
      place(uprightProfile(300, 400), 0),
      place(uprightProfile(300, 400), 900, standing(Number.POSITIVE_INFINITY)),
    ]) {
      expect(isRefusal(answer)).toBe(true);
    }
  });
});

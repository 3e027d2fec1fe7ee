import {
  type CavityResult,
  DEFAULT_CLEARANCES,
  type Obstruction,
  type Placement,
  placementSchema,
} from '@gusset/contracts/cargo';
import type { PolygonMm, Pose } from '@gusset/contracts/geometry';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildCavity } from './build-cavity.ts';
import { freePointsForm } from './forms/free-section.ts';
import { HATCH_ESTATE } from './forms/hatch-estate.ts';
import { placeBox } from './place-box.ts';
import {
  angleReading,
  answered,
  changed,
  lengthReading,
  RECTANGLE,
  SLANTED,
  THREE_FOUR_RAD,
  uprightProfile,
} from './survey-fixture.ts';

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

/** A leaning four-cornered section by its corners, moved along and mirrored. */
function freeCavity(shiftMm: readonly [number, number], mirrored: boolean): CavityResult {
  const walls = [
    { id: 'a', wallName: 'Floor', role: 'floor', surface: 'soft' },
    { id: 'b', wallName: 'Opening', role: 'opening', surface: 'open' },
    { id: 'c', wallName: 'Roof', role: 'roof', surface: 'soft' },
    { id: 'd', wallName: 'Seat back', role: 'seat-back', surface: 'soft' },
  ] as const;
  const places = [
    [0, 0],
    [820, 10],
    [640, 530],
    [160, 560],
  ] as const;
  const readings = walls.flatMap(({ id }, index) => {
    const [x = 0, y = 0] = places[index] ?? [];
    return [
      lengthReading(`${id}-x`, (mirrored ? -x : x) + shiftMm[0], 1),
      lengthReading(`${id}-y`, y + shiftMm[1], 2),
    ];
  });
  const widths = [lengthReading('width', 1000), lengthReading('openingWidth', 950)];
  return answered(buildCavity(answered(freePointsForm('Free', walls)), [...readings, ...widths]));
}

const anyBox = fc.record({
  depthMm: fc.double({ min: 50, max: 500, noNaN: true }),
  heightMm: fc.double({ min: 50, max: 450, noNaN: true }),
  topMm: fc.double({ min: 20, max: 500, noNaN: true }),
  widthMm: fc.double({ min: 100, max: 1100, noNaN: true }),
  xMm: fc.double({ min: -50, max: 600, noNaN: true }),
  yMm: fc.double({ min: -20, max: 200, noNaN: true }),
  thetaRad: fc.double({ min: -1, max: 1, noNaN: true }),
  zMm: fc.double({ min: -100, max: 100, noNaN: true }),
});

type AnyBox = typeof anyBox extends fc.Arbitrary<infer T> ? T : never;

const wedgeOf = ({ depthMm, heightMm, topMm }: AnyBox) => [
  { xMm: 0, yMm: 0 },
  { xMm: depthMm, yMm: 0 },
  { xMm: Math.min(topMm, depthMm), yMm: heightMm },
  { xMm: 0, yMm: heightMm },
];

const bySurface = (placement: Placement) =>
  new Map(
    placement.clearances.map((it) => [`${it.surface.type} ${it.surface.name} ${it.surface.side ?? ''}`, it]),
  );

describe('laws of clearance', () => {
  it('does not change when car and box move together', () => {
    const here = freeCavity([0, 0], false);
    const there = freeCavity([410, -130], false);
    fc.assert(
      fc.property(anyBox, (box) => {
        const profile = wedgeOf(box);
        const first = answered(placeBox({ cavity: here, profile, widthMm: box.widthMm, pose: box }));
        const pose = { ...box, xMm: box.xMm + 410, yMm: box.yMm - 130 };
        const second = answered(placeBox({ cavity: there, profile, widthMm: box.widthMm, pose }));
        expect(second.fits).toBe(first.fits);
        const others = bySurface(second);
        for (const [name, { clearanceMm, worstCaseMm }] of bySurface(first)) {
          expect(others.get(name)?.clearanceMm).toBeCloseTo(clearanceMm, 6);
          expect(others.get(name)?.worstCaseMm).toBeCloseTo(worstCaseMm, 6);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('does not change when car and box are mirrored along the car', () => {
    const here = freeCavity([0, 0], false);
    const mirror = freeCavity([0, 0], true);
    fc.assert(
      fc.property(anyBox, (box) => {
        const profile = wedgeOf(box);
        const mirroredProfile = profile.map(({ xMm, yMm }) => ({ xMm: -xMm, yMm }));
        const pose = { ...box, xMm: -box.xMm, thetaRad: -box.thetaRad };
        const first = answered(placeBox({ cavity: here, profile, widthMm: box.widthMm, pose: box }));
        const second = answered(
          placeBox({ cavity: mirror, profile: mirroredProfile, widthMm: box.widthMm, pose }),
        );
        expect(second.fits).toBe(first.fits);
        const others = bySurface(second);
        for (const [name, { clearanceMm }] of bySurface(first)) {
          expect(others.get(name)?.clearanceMm).toBeCloseTo(clearanceMm, 6);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('swaps left and right when the box is mirrored across the car', () => {
    fc.assert(
      fc.property(anyBox, (box) => {
        const profile = wedgeOf(box);
        const at = (zMm: number) =>
          answered(placeBox({ cavity: slantedCavity, profile, widthMm: box.widthMm, pose: { ...box, zMm } }));
        const left = clearanceTo(at(box.zMm), 'above-arches', 'left').clearanceMm;
        expect(clearanceTo(at(-box.zMm), 'above-arches', 'right').clearanceMm).toBeCloseTo(left, 6);
      }),
      { numRuns: 40 },
    );
  });

  it('never loosens with more ±', () => {
    const cavityAt = (more: number) =>
      answered(
        buildCavity(
          HATCH_ESTATE,
          changed(
            SLANTED,
            lengthReading('floorDepth', 800, more),
            lengthReading('archWidth', 1000, more),
            lengthReading('archHeight', 300, more),
            angleReading('seatLean', THREE_FOUR_RAD, more / 500),
          ),
          { obstructions: [{ ...hingeArm, plusMinusMm: more }], keepFree: [] },
        ),
      );
    const some = cavityAt(2);
    const more = cavityAt(6);
    fc.assert(
      fc.property(anyBox, (box) => {
        const place = (cavity: CavityResult) =>
          answered(placeBox({ cavity, profile: wedgeOf(box), widthMm: box.widthMm, pose: box }));
        const sure = place(some);
        const unsure = bySurface(place(more));
        for (const [name, { worstCaseMm, clearanceMm }] of bySurface(sure)) {
          expect(unsure.get(name)?.worstCaseMm ?? 0).toBeLessThanOrEqual(worstCaseMm + 1e-9);
          expect(worstCaseMm).toBeLessThanOrEqual(clearanceMm + 1e-9);
        }
        expect(place(more).fitsAtWorst && !sure.fitsAtWorst).toBe(false);
      }),
      { numRuns: 60 },
    );
  });

  it('never gains from one more obstruction', () => {
    fc.assert(
      fc.property(
        anyBox,
        fc.double({ min: 0, max: 600, noNaN: true }),
        fc.double({ min: 0, max: 400, noNaN: true }),
        (box, xMm, yMm) => {
          const polygon = hingeArm.polygon.map((at) => ({
            xMm: at.xMm - 340 + xMm,
            yMm: at.yMm - 430 + yMm,
          }));
          const least = (placement: Placement) =>
            Math.min(...placement.clearances.map((it) => it.clearanceMm));
          const place = (cavity: CavityResult) =>
            answered(placeBox({ cavity, profile: wedgeOf(box), widthMm: box.widthMm, pose: box }));
          const empty = place(rectangleCavity);
          const cluttered = place({ ...rectangleCavity, obstructions: [{ ...hingeArm, polygon }] });
          expect(least(cluttered)).toBeLessThanOrEqual(least(empty));
          expect(cluttered.fits && !empty.fits).toBe(false);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('never turns a verdict for the worse by wanting less', () => {
    const relaxed = { ...DEFAULT_CLEARANCES, sidesMm: 6, seatBackMm: 10, movingMetalMm: 12 };
    fc.assert(
      fc.property(anyBox, (box) => {
        const place = (clearances = DEFAULT_CLEARANCES) =>
          bySurface(
            answered(
              placeBox({
                cavity: withArm,
                profile: wedgeOf(box),
                widthMm: box.widthMm,
                pose: box,
                clearances,
              }),
            ),
          );
        const less = place(relaxed);
        for (const [name, { verdict }] of place()) {
          if (verdict === 'clear') expect(less.get(name)?.verdict).toBe('clear');
        }
      }),
      { numRuns: 40 },
    );
  });
});

import {
  type BeyondOpening,
  type CavityResult,
  DEFAULT_CLEARANCES,
  NOTHING_BEYOND,
} from '@gusset/contracts/cargo';
import { type DryFitCaseInput, dryFitCaseSchema } from '@gusset/contracts/dryfit';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildCavity } from './build-cavity.ts';
import { type DryFitSceneOptions, dryFitScene, poseOutside, type SceneWalls } from './dry-fit-scene.ts';
import { refuseCase } from './dryfit/check-case.ts';
import { dryFit } from './dryfit/dry-fit.ts';
import { BEHIND_SEAT } from './forms/behind-seat.ts';
import { HATCH_ESTATE } from './forms/hatch-estate.ts';
import { SALOON_BOOT } from './forms/saloon-boot.ts';
import { looselyHolds } from './plane/overlap.ts';
import { boundsOf, signedAreaMm2 } from './plane/polygon.ts';
import { dot, minus, outwardNormal } from './plane/vector.ts';
import { answered, changed, lengthReading, RECTANGLE, SLANTED, uprightProfile } from './survey-fixture.ts';

const rectangle = (beyond: BeyondOpening = NOTHING_BEYOND, ...others: Parameters<typeof changed>[1][]) =>
  answered(
    buildCavity(HATCH_ESTATE, changed(RECTANGLE, ...others), { obstructions: [], keepFree: [], beyond }),
  );

const sceneOf = (
  cavity: CavityResult,
  walls: SceneWalls = 'nominal',
  more: Partial<DryFitSceneOptions> = {},
) => answered(dryFitScene(cavity, { walls, ...more }));

/** A box against the back wall on the floor. */
function question(
  cavity: CavityResult,
  walls: SceneWalls,
  box: { readonly depthMm: number; readonly heightMm: number; readonly widthMm: number },
): DryFitCaseInput {
  const built = sceneOf(cavity, walls);
  const profile = uprightProfile(box.depthMm, box.heightMm);
  return {
    ...built.scene,
    body: { profile, widthMm: box.widthMm },
    clearance: { movingMm: 0, finalMm: 0 },
    start: poseOutside(built, profile, 0, -box.widthMm / 2),
    final: { xMm: 100, yMm: 0, thetaRad: 0, zMm: -box.widthMm / 2 },
  };
}

const verdictOf = (asked: DryFitCaseInput) => answered(dryFit(asked, { finestMm: 1 })).verdict;

describe('dryFitScene', () => {
  it('joins the space to the free ground through a channel as thick as bodywork', () => {
    const { scene, moved } = sceneOf(rectangle(), 'nominal', { bodyMm: 600 });
    // Half plane 3 x 600 deep and 500 + 3 x 600 high; the channel is 1 thick and as high as the opening.
    const freeMm2 = 1800 * (500 + 1800);
    expect(signedAreaMm2(scene.outside)).toBeCloseTo(freeMm2 + 500, 3);
    expect(signedAreaMm2(scene.space)).toBeCloseTo(800 * 500 + freeMm2 + 500, 3);
    expect(scene.opening).toEqual({ from: { xMm: 800, yMm: 0 }, to: { xMm: 800, yMm: 500 } });
    expect(moved.every(({ inwardMm }) => inwardMm === 0)).toBe(true);
  });

  it('moves every wall by its ±, floors excepted, and each end of the opening by its own', () => {
    const cavity = rectangle(
      NOTHING_BEYOND,
      lengthReading('seatHeight', 500, 4),
      lengthReading('opening', 500, 6),
    );
    const roof = cavity.walls.find(({ id }) => id === 'roof');
    const { scene, moved } = sceneOf(cavity, 'worst');
    expect(moved).toContainEqual({ wallId: 'roof', inwardMm: roof?.plusMinusMm });
    expect(moved).toContainEqual({ wallId: 'floor', inwardMm: 0 });
    // The lip is exact; the seal stands one opening above it.
    expect(scene.opening.from.yMm).toBeCloseTo(0, 6);
    expect(scene.opening.to.yMm).toBeCloseTo(494, 6);
    const best = sceneOf(cavity, 'best').scene;
    expect(best.opening.to.yMm).toBeCloseTo(506, 6);
  });

  it('brings surfaces nearer by what is wanted, where that is given', () => {
    const { moved } = sceneOf(rectangle(), 'nominal', { clearances: DEFAULT_CLEARANCES });
    expect(moved).toContainEqual({ wallId: 'seat-back', inwardMm: 15 });
    expect(moved).toContainEqual({ wallId: 'roof', inwardMm: 10 });
    expect(moved).toContainEqual({ wallId: 'floor', inwardMm: 0 });
  });

  it('lets a box that is lower than the opening out, and none that is higher', () => {
    const low = question(rectangle(), 'nominal', { depthMm: 600, heightMm: 480, widthMm: 900 });
    expect(verdictOf(low)).toBe('loads');
    const sill = rectangle(NOTHING_BEYOND, lengthReading('sillHeight', 100), lengthReading('opening', 400));
    const high = question(sill, 'nominal', { depthMm: 600, heightMm: 480, widthMm: 900 });
    expect(verdictOf(high)).toBe('does-not-load');
  });

  it('says no at worst and yes at best where the ± decide', () => {
    const cavity = rectangle(NOTHING_BEYOND, lengthReading('opening', 500, 12));
    const box = { depthMm: 600, heightMm: 492, widthMm: 900 };
    expect(verdictOf(question(cavity, 'worst', box))).not.toBe('loads');
    expect(verdictOf(question(cavity, 'best', box))).toBe('loads');
  });

  it('lets nothing out that is wider than the opening, though the space is', () => {
    const asked = question(rectangle(), 'nominal', { depthMm: 300, heightMm: 200, widthMm: 970 });
    expect(asked.zRange).toEqual({ minMm: -500, maxMm: 500 });
    expect(verdictOf(asked)).not.toBe('loads');
  });

  it('hangs the open lid from the upper end of the opening and stands the bumper below the lip', () => {
    const beyond: BeyondOpening = {
      lid: { lengthMm: 600, thicknessMm: 50, openRad: Math.PI / 6, plusMinusMm: 0 },
      bumper: { outMm: 120, belowMm: 200, plusMinusMm: 0 },
      ground: { belowMm: 700, plusMinusMm: 0 },
    };
    const { scene, assumptions } = sceneOf(rectangle(beyond));
    const lid = scene.obstacles?.find(({ name }) => name === 'Open lid');
    const lidBounds = boundsOf(lid?.polygon ?? []);
    // Its underside ends 600 from the hinge at 30° up; its outer face is above it.
    expect(lidBounds.xMaxMm).toBeCloseTo(800 + 600 * Math.cos(Math.PI / 6), 6);
    expect(lidBounds.yMinMm).toBeCloseTo(500, 6);
    const bumper = boundsOf(scene.obstacles?.find(({ name }) => name === 'Bumper')?.polygon ?? []);
    expect(bumper).toEqual({ xMinMm: 800, xMaxMm: 920, yMinMm: -700, yMaxMm: -200 });
    expect(boundsOf(scene.outside).yMinMm).toBeCloseTo(-700, 6);
    expect(assumptions).toEqual(
      expect.arrayContaining(['lid-at-its-open-angle', 'bumper-as-measured', 'ground-as-measured']),
    );
  });

  it('says what nobody measured', () => {
    expect(sceneOf(rectangle()).assumptions).toEqual([
      'half-plane-beyond-the-opening',
      'lid-not-measured',
      'bumper-not-measured',
      'ground-not-measured',
      'floor-carries-the-box',
    ]);
  });

  it('leaves out what only counts in place, and what is gone in a state', () => {
    const across = { zMinMm: -400, zMaxMm: -350, plusMinusMm: 5, moves: false };
    const part = (id: string, appliesTo: 'fit' | 'motion' | 'both') => ({
      ...across,
      id,
      name: id,
      polygon: uprightProfile(80, 80),
      appliesTo,
    });
    const cavity = answered(
      buildCavity(HATCH_ESTATE, RECTANGLE, {
        obstructions: [part('arm', 'fit'), part('strut', 'motion'), part('jack', 'both')],
        keepFree: [],
      }),
    );
    const named = (more: Partial<DryFitSceneOptions>, walls: SceneWalls = 'nominal') =>
      (sceneOf(cavity, walls, more).scene.obstacles ?? []).filter(({ name }) => !name.startsWith('Side'));
    expect(named({}).map(({ name }) => name)).toEqual(['strut', 'jack']);
    expect(named({ state: { absent: ['jack'] } }).map(({ name }) => name)).toEqual(['strut']);
    expect(named({}, 'worst')[0]?.z).toEqual({ minMm: -405, maxMm: -345 });
    expect(boundsOf(named({}, 'worst')[0]?.polygon ?? []).xMaxMm).toBeCloseTo(85, 6);
    expect(boundsOf(named({}, 'best')[0]?.polygon ?? []).xMaxMm).toBeCloseTo(75, 6);
  });

  it('refuses an opening that the ± close, and says by how much', () => {
    const cavity = rectangle(NOTHING_BEYOND, lengthReading('opening', 500, 1));
    const narrow = {
      ...cavity,
      opening: { ...cavity.opening, heightMm: 20, fromPlusMinusMm: 12, toPlusMinusMm: 12 },
    };
    expect(dryFitScene(narrow, { walls: 'worst' })).toMatchObject({
      refusal: { field: 'opening', allowed: 'more than 24.0 mm high, ± and clearance counted' },
    });
  });

  it('refuses ground that reaches the lip', () => {
    const beyond = { ...NOTHING_BEYOND, ground: { belowMm: 5, plusMinusMm: 20 } };
    expect(dryFitScene(rectangle(beyond), { walls: 'worst' })).toMatchObject({
      refusal: { field: 'beyond.ground' },
    });
  });
});

const BOOT = [
  ...RECTANGLE.filter(({ key }) => !['opening', 'roofDepth', 'seatHeight'].includes(key)),
  lengthReading('seatHeight', 520, 5),
  lengthReading('shelfDepth', 300, 5),
  lengthReading('shelfEdgeHeight', 500, 5),
];
const CAB = [
  lengthReading('floorDepth', 320, 5),
  lengthReading('depthAt300', 260, 5),
  lengthReading('height', 760, 5),
  lengthReading('gapAtTop', 180, 5),
  lengthReading('width', 1320, 4),
  lengthReading('openingWidth', 1200, 4),
];
const SPACES = [
  ['a slanted hatch', HATCH_ESTATE, SLANTED],
  ['a saloon boot', SALOON_BOOT, BOOT],
  ['the room behind a seat, open at the top', BEHIND_SEAT, CAB],
] as const;

describe.each(SPACES)('the scene of %s', (_, form, readings) => {
  const loose = readings.map((it) => ('valueMm' in it ? { ...it, plusMinusMm: it.plusMinusMm || 4 } : it));

  it.each(['worst', 'nominal', 'best'] as const)('can be asked with its walls at %s', (walls) => {
    const built = sceneOf(answered(buildCavity(form, loose)), walls);
    const profile = uprightProfile(60, 60);
    const asked = dryFitCaseSchema.parse({
      ...built.scene,
      body: { profile, widthMm: 300 },
      clearance: { movingMm: 0, finalMm: 0 },
      start: poseOutside(built, profile, 0, -150),
      final: { xMm: 100, yMm: 20, thetaRad: 0, zMm: -150 },
    });
    expect(refuseCase(asked)).toBeNull();
  });

  it('has less room at worst than as measured, and more at best', () => {
    const area = (walls: SceneWalls) => {
      const { space, outside } = sceneOf(answered(buildCavity(form, loose)), walls).scene;
      return signedAreaMm2(space) - signedAreaMm2(outside);
    };
    expect(area('worst')).toBeLessThan(area('nominal'));
    expect(area('best')).toBeGreaterThan(area('nominal'));
  });
});

/** Half of what separates the walls of the slanted hatch at its narrowest (the roof), mm. */
const LEAST_ROOM_MM = 50;

describe('every car within the ± of its readings', () => {
  const sure = ['floorRise', 'sillLean', 'lidFrame']; // floors stay where they are by definition
  const plusMinusOf = (it: (typeof SLANTED)[number]) =>
    sure.includes(it.key) ? 0 : 'valueMm' in it ? 4 : 0.008;
  const measured = SLANTED.map((it) =>
    'valueMm' in it ? { ...it, plusMinusMm: plusMinusOf(it) } : { ...it, plusMinusRad: plusMinusOf(it) },
  );
  const cavity = answered(buildCavity(HATCH_ESTATE, measured));
  const worst = sceneOf(cavity, 'worst').scene;
  const best = sceneOf(cavity, 'best').scene;
  const share = fc.double({ min: -1, max: 1, noNaN: true });
  const cars = fc.array(share, { minLength: SLANTED.length, maxLength: SLANTED.length }).map((errors) =>
    answered(
      buildCavity(
        HATCH_ESTATE,
        SLANTED.map((it, i) =>
          'valueMm' in it
            ? { ...it, valueMm: it.valueMm + plusMinusOf(it) * (errors[i] ?? 0), plusMinusMm: 0 }
            : { ...it, valueRad: it.valueRad + plusMinusOf(it) * (errors[i] ?? 0), plusMinusRad: 0 },
        ),
      ),
    ),
  );
  const GRID_MM = 7;
  const grid = Array.from({ length: 140 * 90 }, (_, i) => ({
    xMm: -50 + GRID_MM * (i % 140) + 0.3,
    yMm: -20 + GRID_MM * Math.floor(i / 140) + 0.3,
  }));

  it('has nothing solid where the worst scene is free', () => {
    const free = grid.filter((at) => looselyHolds(worst.space, at) && !looselyHolds(worst.outside, at));
    expect(free.length).toBeGreaterThan(3_000);
    fc.assert(
      fc.property(cars, (car) => {
        const { from, to } = car.opening;
        const outward = outwardNormal(from, to);
        const solid = free.filter(
          (at) => dot(minus(at, from), outward) < 0 && !looselyHolds(car.polygon, at),
        );
        expect(solid).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });

  it('has no room that the best scene has not', () => {
    const solid = grid.filter((at) => !looselyHolds(best.space, at));
    expect(solid.length).toBeGreaterThan(1_000);
    fc.assert(
      fc.property(cars, (car) => {
        expect(solid.filter((at) => looselyHolds(car.polygon, at))).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });
});

describe('any ±', () => {
  it('gives a proper outline or says why not', () => {
    const plusMinus = fc.double({ min: 0, max: 60, noNaN: true });
    fc.assert(
      fc.property(fc.array(plusMinus, { minLength: 16, maxLength: 16 }), (sizes) => {
        const readings = SLANTED.map((it, i) =>
          'valueMm' in it
            ? { ...it, plusMinusMm: sizes[i] ?? 0 }
            : { ...it, plusMinusRad: (sizes[i] ?? 0) / 1000 },
        );
        const cavity = answered(buildCavity(HATCH_ESTATE, readings));
        for (const walls of ['worst', 'nominal', 'best'] as const) {
          const built = dryFitScene(cavity, { walls });
          if (isRefusal(built)) {
            // Only a cavity whose walls may meet has no scene, and only where they are moved in.
            expect({ walls, field: built.refusal.field }).toEqual({
              walls: 'worst',
              field: expect.any(String),
            });
            expect(cavity.walls.some(({ plusMinusMm }) => plusMinusMm > LEAST_ROOM_MM)).toBe(true);
            continue;
          }
          const profile = uprightProfile(50, 50);
          const asked = dryFitCaseSchema.parse({
            ...built.scene,
            body: { profile, widthMm: 100 },
            clearance: { movingMm: 0, finalMm: 0 },
            start: poseOutside(built, profile, 0),
            final: { xMm: 300, yMm: 100, thetaRad: 0 },
          });
          expect(refuseCase(asked)).toBeNull();
        }
      }),
      { numRuns: 60 },
    );
  });
});

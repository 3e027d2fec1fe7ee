import {
  type CavityResult,
  DEFAULT_CLEARANCES,
  type Obstruction,
  type Placement,
} from '@gusset/contracts/cargo';
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
} from './survey-fixture.ts';

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

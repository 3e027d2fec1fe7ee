import type { Measurement } from '@gusset/contracts/cargo';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildCavity } from './build-cavity.ts';
import { HATCH_ESTATE } from './forms/hatch-estate.ts';
import { placeBox } from './place-box.ts';
import { restAgainst } from './rest-against.ts';
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

const wallOf = (readings: readonly Measurement[], id: string) => {
  const wall = answered(buildCavity(HATCH_ESTATE, readings)).walls.find((it) => it.id === id);
  if (wall === undefined) throw new Error(`no wall ${id}`);
  return wall;
};

describe('± carried to the walls', () => {
  it('moves the sill by the ± of the floor and leaves the seat back alone', () => {
    const readings = changed(
      RECTANGLE,
      lengthReading('floorDepth', 800, 4),
      lengthReading('sillHeight', 100),
    );
    expect(wallOf(readings, 'sill').shares).toEqual([{ key: 'floorDepth', plusMinusMm: 4 }]);
    expect(wallOf(readings, 'seat-back').plusMinusMm).toBe(0);
  });

  it('swings the seat back about its foot: length times the angle', () => {
    const readings = changed(SLANTED, angleReading('seatLean', THREE_FOUR_RAD, 0.001));
    // The seat is 650 long; square to it the top moves 0.65 per milliradian.
    expect(wallOf(readings, 'seat-back').plusMinusMm).toBeCloseTo(0.65, 2);
  });

  it('adds shares for the worst case and squares them for the likely one', () => {
    const readings = changed(
      RECTANGLE,
      lengthReading('seatHeight', 500, 3),
      lengthReading('roofDepth', 800, 4),
    );
    const tilted = changed(readings, lengthReading('opening', 500, 4));
    const roof = wallOf(tilted, 'roof');
    expect(roof.plusMinusMm).toBeCloseTo(
      roof.shares.reduce((sum, it) => sum + it.plusMinusMm, 0),
      9,
    );
    expect(roof.likelyPlusMinusMm).toBeCloseTo(Math.hypot(...roof.shares.map((it) => it.plusMinusMm)), 9);
    expect(roof.shares.map((it) => it.key)).toContain('seatHeight');
    expect(roof.shares.map((it) => it.key)).toContain('opening');
  });

  it('takes the default of the method, and 3 mm more on soft trim', () => {
    const onTrim = wallOf(
      changed(RECTANGLE, lengthReading('floorDepth', 800, null), lengthReading('sillHeight', 100)),
      'sill',
    );
    expect(onTrim.plusMinusMm).toBe(4.5);
    const { opening } = answered(
      buildCavity(HATCH_ESTATE, changed(RECTANGLE, lengthReading('openingWidth', 950, null))),
    );
    expect(opening.widthPlusMinusMm).toBe(1.5);
  });

  it('gives each side half the ± of a width', () => {
    const readings = changed(RECTANGLE, lengthReading('archWidth', 1000, 6));
    expect(answered(buildCavity(HATCH_ESTATE, readings)).widthSlabs[0]?.sidePlusMinusMm).toBe(3);
  });

  it('counts the assumed ± of what nobody measured, and says so', () => {
    const unsure = RECTANGLE.filter(({ key }) => key !== 'lidFrame');
    const cavity = answered(buildCavity(HATCH_ESTATE, unsure));
    expect(cavity.findings).toContainEqual(
      expect.objectContaining({ code: 'assumed', key: 'lidFrame', value: 0 }),
    );
    expect(wallOf(unsure, 'opening').shares).toContainEqual({ key: 'lidFrame', plusMinusMm: 10 });
  });

  it('never shrinks when a reading gets less sure', () => {
    const keys = RECTANGLE.flatMap((it) => ('valueMm' in it ? [it.key] : []));
    fc.assert(
      fc.property(
        fc.constantFrom(...keys),
        fc.double({ min: 0, max: 8, noNaN: true }),
        fc.double({ min: 0, max: 8, noNaN: true }),
        (key, less, more) => {
          const at = (plusMinusMm: number) => {
            const readings = changed(SLANTED, lengthReading(key, lengthOfReading(key), plusMinusMm));
            return answered(buildCavity(HATCH_ESTATE, readings)).walls;
          };
          const sure = at(Math.min(less, more));
          for (const [index, wall] of at(Math.max(less, more)).entries()) {
            expect(wall.plusMinusMm).toBeGreaterThanOrEqual((sure[index]?.plusMinusMm ?? 0) - 1e-9);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});

function lengthOfReading(key: string): number {
  const reading = SLANTED.find((it) => it.key === key);
  if (reading === undefined || !('valueMm' in reading)) throw new Error(`no length ${key}`);
  return reading.valueMm;
}

describe('the worst case of a placement', () => {
  const readings = SLANTED.map((it) =>
    'valueMm' in it ? { ...it, plusMinusMm: 3 } : { ...it, plusMinusRad: 0.01 },
  );
  const surveyed = answered(buildCavity(HATCH_ESTATE, readings));
  /** Bends that moving one dimension at a time leaves out: (3 mm)² over some hundred mm. */
  const SECOND_ORDER_MM = 0.5;

  it('is never beaten by a car that agrees with every reading within its ±', () => {
    const off = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), {
      minLength: readings.length,
      maxLength: readings.length,
    });
    const box = fc.record({
      depthMm: fc.double({ min: 40, max: 300, noNaN: true }),
      heightMm: fc.double({ min: 40, max: 450, noNaN: true }),
      gapMm: fc.double({ min: 5, max: 120, noNaN: true }),
    });
    let compared = 0;
    fc.assert(
      fc.property(off, box, (shares, { depthMm, heightMm, gapMm }) => {
        const profile = uprightProfile(depthMm, heightMm);
        const pose = answered(restAgainst(surveyed, profile, { back: 'seat-back', gapMm }));
        const placed = (cavity: typeof surveyed) =>
          answered(placeBox({ cavity, profile, widthMm: 900, pose }));
        const promised = placed(surveyed);
        if (!promised.fits) return;
        const real = readings.map((it, index) => {
          const share = shares[index] ?? 0;
          return 'valueMm' in it
            ? { ...it, valueMm: Math.max(0, it.valueMm + share * it.plusMinusMm) }
            : { ...it, valueRad: it.valueRad + share * it.plusMinusRad };
        });
        // The floor carries the box up and down with it, and a frame grown from nothing is its own obstruction.
        const solid = ({ surface }: { surface: { role: string | null; type: string } }) =>
          surface.role !== 'floor' && surface.type !== 'obstruction';
        const least = Math.min(
          ...placed(answered(buildCavity(HATCH_ESTATE, real)))
            .clearances.filter(solid)
            .map((it) => it.clearanceMm),
        );
        const worst = Math.min(...promised.clearances.filter(solid).map((it) => it.worstCaseMm));
        expect(least).toBeGreaterThanOrEqual(worst - SECOND_ORDER_MM);
        compared += 1;
      }),
      { numRuns: 150 },
    );
    expect(compared).toBeGreaterThan(50);
  });
});

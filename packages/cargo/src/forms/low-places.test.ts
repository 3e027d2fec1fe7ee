// Spare-wheel well and footwell: worked by hand, every ± stated.
import type { Measurement } from '@gusset/contracts/cargo';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildCavity } from '../build-cavity.ts';
import { signedAreaMm2 } from '../plane/polygon.ts';
import { missingDimensions } from '../readings.ts';
import { sketchCavity } from '../sketch-cavity.ts';
import { angleReading, answered, changed, lengthReading, THREE_FOUR_RAD } from '../survey-fixture.ts';
import { FOOTWELL } from './footwell.ts';
import { SPARE_WHEEL_WELL } from './spare-wheel-well.ts';

/** A round well 640 across at the rim, 560 at the bottom, 200 deep. */
const WELL: readonly Measurement[] = [
  lengthReading('rimLength', 640),
  lengthReading('bottomLength', 560),
  lengthReading('depth', 200),
  lengthReading('rimWidth', 640),
  lengthReading('bottomWidth', 560),
  lengthReading('cornerReach', 320),
  lengthReading('openingWidth', 630),
];

/** Toe board 300 high leaning 3 in 4 away: its top stands 225 behind its foot; dash 500 to an edge 440 up. */
const FEET: readonly Measurement[] = [
  lengthReading('floorDepth', 300),
  lengthReading('toeHeight', 300),
  angleReading('toeLean', THREE_FOUR_RAD),
  lengthReading('dashDepth', 500),
  lengthReading('dashEdgeHeight', 440),
  lengthReading('floorRise', 0),
  lengthReading('floorWidth', 430),
  lengthReading('openingWidth', 420),
];

describe('a spare-wheel well', () => {
  it('closes over its bottom, open at the rim', () => {
    const { polygon, opening } = answered(buildCavity(SPARE_WHEEL_WELL, WELL));
    expect(polygon).toEqual([
      { xMm: 40, yMm: 0 },
      { xMm: 600, yMm: 0 },
      { xMm: 640, yMm: 200 },
      { xMm: 0, yMm: 200 },
    ]);
    expect(opening).toMatchObject({ heightMm: 640, widthMm: 630 });
  });

  it('is nowhere taken as wider than the circle that it is', () => {
    const { widthSlabs } = answered(buildCavity(SPARE_WHEEL_WELL, WELL));
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 639, noNaN: true }),
        fc.double({ min: 1, max: 199, noNaN: true }),
        (x, y) => {
          const here = widthSlabs.filter(({ polygon }) => {
            const xs = polygon.map((it) => it.xMm);
            const ys = polygon.map((it) => it.yMm);
            return (
              x >= Math.min(...xs) && x <= Math.max(...xs) && y >= Math.min(...ys) && y <= Math.max(...ys)
            );
          });
          const widthMm = Math.min(...here.map((it) => it.zMaxMm - it.zMinMm));
          // A cone's circle at this height; outside of it nothing is wide.
          const radiusMm = 280 + (40 * y) / 200;
          const chordMm = 2 * Math.sqrt(Math.max(0, radiusMm ** 2 - (x - 320) ** 2));
          expect(here.length).toBeGreaterThan(0);
          expect(widthMm).toBeLessThanOrEqual(Math.max(1, chordMm) + 1e-9);
        },
      ),
    );
  });

  it('has one width where its corners are square and its walls plumb', () => {
    const square = changed(
      WELL,
      lengthReading('bottomLength', 640),
      lengthReading('bottomWidth', 640),
      lengthReading('cornerReach', 0),
    );
    const { widthSlabs } = answered(buildCavity(SPARE_WHEEL_WELL, square));
    expect(widthSlabs).toMatchObject([{ id: 'top', zMinMm: -320, zMaxMm: 320 }]);
  });

  it('compares the hole in the floor with the rim, not with the bottom', () => {
    const { findings } = answered(buildCavity(SPARE_WHEEL_WELL, WELL));
    expect(findings).toEqual([]);
    const wide = answered(buildCavity(SPARE_WHEEL_WELL, changed(WELL, lengthReading('openingWidth', 655))));
    expect(wide.findings).toMatchObject([{ code: 'opening-wider-than-cavity', byMm: 15 }]);
  });

  it('goes round its wheel mount', () => {
    const mounted = [
      ...WELL,
      lengthReading('bossHeight', 50),
      lengthReading('bossFrom', 280),
      lengthReading('bossLength', 80),
    ];
    const { polygon } = answered(buildCavity(SPARE_WHEEL_WELL, mounted));
    expect(signedAreaMm2(polygon)).toBeCloseTo(((640 + 560) / 2) * 200 - 80 * 50, 6);
  });

  it('names by how much a wheel mount runs past the bottom, and what would be accepted', () => {
    const answer = buildCavity(SPARE_WHEEL_WELL, [
      ...WELL,
      lengthReading('bossHeight', 50),
      lengthReading('bossFrom', 580),
      lengthReading('bossLength', 80),
    ]);
    expect(answer).toMatchObject({
      refusal: {
        field: 'measurements.bossFrom',
        allowed: 'between 40 and 520.0 mm',
        why: 'the wheel mount runs 60.0 mm past the end of the bottom',
      },
    });
  });

  it('asks for the rest of a wheel mount that is only partly measured', () => {
    const answer = buildCavity(SPARE_WHEEL_WELL, [...WELL, lengthReading('bossHeight', 50)]);
    expect(answer).toMatchObject({ refusal: { field: 'measurements.bossFrom' } });
  });

  it('refuses corners that bend over more than half of it', () => {
    const answer = buildCavity(SPARE_WHEEL_WELL, changed(WELL, lengthReading('cornerReach', 360)));
    expect(answer).toMatchObject({
      refusal: { field: 'measurements.cornerReach', allowed: 'at most 320 mm, half of 640 mm' },
    });
  });

  it('says while still at the car by how much a diagonal disagrees', () => {
    const readings = [...WELL, lengthReading('frontRimToRearBottom', 612.5)];
    const { findings } = sketchCavity(SPARE_WHEEL_WELL, readings);
    const trueMm = Math.hypot(600, 200);
    expect(findings).toContainEqual(
      expect.objectContaining({ code: 'check-disagrees', byMm: expect.closeTo(612.5 - trueMm, 6) }),
    );
  });
});

describe('a footwell', () => {
  it('closes from the toe board under the dash', () => {
    const { polygon, opening } = answered(buildCavity(FOOTWELL, FEET));
    const expected = [
      [0, 0],
      [300, 0],
      [275, 440],
      [-225, 300],
    ];
    for (const [i, [xMm, yMm]] of expected.entries()) {
      expect(polygon[i]?.xMm).toBeCloseTo(xMm ?? 0, 9);
      expect(polygon[i]?.yMm).toBeCloseTo(yMm ?? 0, 9);
    }
    expect(opening.heightMm).toBeCloseTo(Math.hypot(25, 440), 9);
  });

  it('names the letters that are still missing', () => {
    const missing = missingDimensions(FOOTWELL, FEET.slice(0, 3)).map(({ letter }) => letter);
    expect(missing).toEqual(['D', 'E', 'K', 'N']);
  });

  it('is wider under the dash only where it is said how far down', () => {
    const upper = lengthReading('upperWidth', 500);
    const alone = answered(buildCavity(FOOTWELL, [...FEET, upper]));
    expect(alone.widthSlabs.map(({ id }) => id)).toEqual(['low']);
    expect(alone.findings).toContainEqual({
      code: 'partner-missing',
      key: 'upperWidth',
      missing: ['upperFrom'],
    });
    const both = answered(buildCavity(FOOTWELL, [...FEET, upper, lengthReading('upperFrom', 200)]));
    expect(both.widthSlabs.map(({ id, zMaxMm }) => ({ id, zMaxMm }))).toEqual([
      { id: 'low', zMaxMm: 215 },
      { id: 'high', zMaxMm: 250 },
    ]);
  });

  it('refuses a floor that ends above the edge of the dash, with the numbers', () => {
    const answer = buildCavity(
      FOOTWELL,
      changed(FEET, lengthReading('floorRise', 120), lengthReading('dashEdgeHeight', 100)),
    );
    expect(answer).toMatchObject({
      refusal: {
        field: 'measurements.dashEdgeHeight',
        why: 'the edge of the dash stands 20.0 mm below the end of the floor',
      },
    });
  });

  it('finds a way in that is wider than the room behind it', () => {
    const { findings } = answered(buildCavity(FOOTWELL, changed(FEET, lengthReading('openingWidth', 470))));
    expect(findings).toMatchObject([{ code: 'opening-wider-than-cavity', byMm: 40 }]);
  });
});

describe.each([SPARE_WHEEL_WELL, FOOTWELL])('the form of a $kind', (form) => {
  it('has letters, keys and places on the drawing of their own', () => {
    const { labels } = sketchCavity(form, []);
    const keys = form.dimensions.map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
    expect(new Set(form.dimensions.map(({ letter }) => letter)).size).toBe(keys.length);
    expect(labels.map(({ key }) => key).sort()).toEqual([...keys].sort());
  });

  it('draws itself closed before anything is measured', () => {
    const { walls } = sketchCavity(form, []);
    for (const [i, wall] of walls.entries()) expect(wall.to).toEqual(walls[(i + 1) % walls.length]?.from);
    expect(signedAreaMm2(walls.map(({ from }) => from))).toBeGreaterThan(0);
  });
});

import { cavitySchema, type Measurement, sectionFormSchema } from '@gusset/contracts/cargo';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildCavity } from './build-cavity.ts';
import { BEHIND_SEAT } from './forms/behind-seat.ts';
import { freePointsForm, stationsForm } from './forms/free-section.ts';
import { HATCH_ESTATE } from './forms/hatch-estate.ts';
import { SALOON_BOOT } from './forms/saloon-boot.ts';
import { UNDER_SEAT } from './forms/under-seat.ts';
import { signedAreaMm2 } from './plane/polygon.ts';
import { crossingEdges } from './plane/simple.ts';
import {
  angleReading,
  answered,
  changed,
  lengthReading,
  RECTANGLE,
  SLANTED,
  THREE_FOUR_RAD,
} from './survey-fixture.ts';

const rounded = (polygon: readonly { xMm: number; yMm: number }[]) =>
  polygon.map(({ xMm, yMm }) => [Math.round(xMm * 1e6) / 1e6, Math.round(yMm * 1e6) / 1e6]);

const refusalOf = (answer: object) =>
  'refusal' in answer ? (answer.refusal as { field: string; why: string }) : null;

const wallOf = (readings: readonly Measurement[], id: string) => {
  const wall = answered(buildCavity(HATCH_ESTATE, readings)).walls.find((it) => it.id === id);
  if (wall === undefined) throw new Error(`no wall ${id}`);
  return wall;
};

describe('buildCavity on a hatch', () => {
  it('puts the corners of a 3-4-5 section where they are by hand', () => {
    const cavity = answered(buildCavity(HATCH_ESTATE, SLANTED));
    expect(rounded(cavity.polygon)).toEqual([
      [0, 0],
      [800, 0],
      [800, 120],
      [500, 520],
      [390, 520],
    ]);
    expect(cavity.walls.map((wall) => wall.name)).toEqual([
      'Floor',
      'Sill',
      'Opening, lid shut',
      'Roof',
      'Seat back',
    ]);
    expect(cavity.opening.heightMm).toBeCloseTo(500, 9);
    expect(cavity.opening.widthMm).toBe(950);
    expect(cavity.findings).toEqual([]);
  });

  it('answers in the shape of the contract', () => {
    expect(cavitySchema.safeParse(buildCavity(HATCH_ESTATE, SLANTED)).error).toBeUndefined();
  });

  it('leaves out a sill of no height', () => {
    const cavity = answered(buildCavity(HATCH_ESTATE, RECTANGLE));
    expect(cavity.walls.map((wall) => wall.id)).toEqual(['floor', 'opening', 'roof', 'seat-back']);
    expect(rounded(cavity.polygon)).toEqual([
      [0, 0],
      [800, 0],
      [800, 500],
      [0, 500],
    ]);
  });

  it('bends the roof down to a seal that was measured', () => {
    const bent = changed(
      RECTANGLE,
      lengthReading('roofDepth', 500),
      lengthReading('opening', 400),
      lengthReading('sealDepth', 800),
    );
    expect(rounded(answered(buildCavity(HATCH_ESTATE, bent)).polygon)).toEqual([
      [0, 0],
      [800, 0],
      [800, 400],
      [500, 500],
      [0, 500],
    ]);
  });

  it('uses the width between the arches everywhere until the upper width is taken', () => {
    const narrow = SLANTED.filter(({ key }) => key !== 'upperWidth');
    const slabs = answered(buildCavity(HATCH_ESTATE, narrow)).widthSlabs;
    expect(slabs).toHaveLength(1);
    expect(slabs[0]).toMatchObject({ zMinMm: -500, zMaxMm: 500 });
  });

  it('has a narrow slab at the arches and a wide one round it', () => {
    const slabs = answered(buildCavity(HATCH_ESTATE, SLANTED)).widthSlabs;
    expect(slabs.map(({ id, zMaxMm }) => [id, zMaxMm])).toEqual([
      ['above-arches', 650],
      ['between-arches', 500],
    ]);
    expect(rounded(slabs[1]?.polygon ?? [])).toEqual([
      [100, 0],
      [600, 0],
      [600, 300],
      [100, 300],
    ]);
  });

  it('hangs the frame of the shut lid below the opening, in place only', () => {
    const framed = changed(RECTANGLE, lengthReading('lidFrame', 30, 2));
    const [frame] = answered(buildCavity(HATCH_ESTATE, framed)).obstructions;
    expect(frame).toMatchObject({ id: 'lid-frame', appliesTo: 'fit', moves: true, plusMinusMm: 2 });
    expect(rounded(frame?.polygon ?? [])).toEqual([
      [800, 0],
      [800, 500],
      [770, 500],
      [770, 0],
    ]);
  });

  it('says what it assumes to be free outside', () => {
    const { outside, polygon } = answered(buildCavity(HATCH_ESTATE, RECTANGLE));
    const reachMm = 3 * Math.hypot(800, 500);
    expect(outside.assumes).toBe('free-straight-out-from-the-opening');
    expect(Math.max(...outside.region.map((it) => it.xMm))).toBeCloseTo(800 + reachMm, 6);
    expect(signedAreaMm2(outside.region)).toBeGreaterThan(0);
    expect(polygon).toContainEqual(outside.region[0]);
  });
});

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

describe('contradictions', () => {
  it('finds an opening 40 mm taller than the cavity behind it', () => {
    const readings = changed(SLANTED, lengthReading('seatHeight', 480), lengthReading('roofDepth', 140));
    expect(answered(buildCavity(HATCH_ESTATE, readings)).findings).toEqual([
      {
        code: 'opening-taller-than-cavity',
        key: 'opening',
        openingMm: expect.closeTo(520, 6),
        cavityMm: 480,
        byMm: expect.closeTo(40, 6),
      },
    ]);
  });

  it('keeps quiet where the ± explain the difference', () => {
    const readings = changed(SLANTED, lengthReading('seatHeight', 516, 12), lengthReading('roofDepth', 113));
    expect(answered(buildCavity(HATCH_ESTATE, readings)).findings).toEqual([]);
  });

  it('finds an opening wider than any place behind it', () => {
    const readings = changed(RECTANGLE, lengthReading('openingWidth', 1035));
    expect(answered(buildCavity(HATCH_ESTATE, readings)).findings).toEqual([
      { code: 'opening-wider-than-cavity', key: 'openingWidth', openingMm: 1035, cavityMm: 1000, byMm: 35 },
    ]);
  });

  it('uses the tighter of two readings and finds them too far apart', () => {
    const twice = [
      ...changed(RECTANGLE, lengthReading('floorDepth', 800, 2)),
      lengthReading('floorDepth', 780, 2),
    ];
    const cavity = answered(buildCavity(HATCH_ESTATE, twice));
    expect(Math.max(...cavity.polygon.map((it) => it.xMm))).toBe(800);
    expect(cavity.polygon[1]).toEqual({ xMm: 780, yMm: 0 });
    expect(cavity.findings).toContainEqual({
      code: 'readings-differ',
      key: 'floorDepth',
      unit: 'length',
      smallest: 780,
      largest: 800,
      allowed: 4,
    });
  });

  it('finds a laser on carpet', () => {
    const laser: Measurement = { ...lengthReading('floorDepth', 800), method: 'laser' };
    expect(answered(buildCavity(HATCH_ESTATE, changed(RECTANGLE, laser))).findings).toContainEqual({
      code: 'method-unsuited',
      key: 'floorDepth',
      method: 'laser',
    });
  });
});

describe('check dimensions', () => {
  it('shows the residual of a diagonal', () => {
    const readings = changed(RECTANGLE, lengthReading('floorEndToSeatTop', Math.hypot(800, 500) + 3, 4));
    const [check] = answered(buildCavity(HATCH_ESTATE, readings)).checks;
    expect(check).toMatchObject({ key: 'floorEndToSeatTop', agrees: true });
    expect(check?.residualMm).toBeCloseTo(3, 9);
    expect(check?.allowedMm).toBeCloseTo(4, 9);
  });

  it('finds one that disagrees by more than every ± together', () => {
    const readings = changed(
      RECTANGLE,
      lengthReading('sealHeight', 530, 4),
      lengthReading('opening', 500, 6),
    );
    const { findings } = answered(buildCavity(HATCH_ESTATE, readings));
    expect(findings).toEqual([
      {
        code: 'check-disagrees',
        key: 'sealHeight',
        measuredMm: 530,
        derivedMm: 500,
        byMm: 30,
        allowedMm: 10,
      },
    ]);
  });

  it('shares a residual out by the squares of the ±', () => {
    // Front height 220 ± 4.5 against an opening of 240 ± 1.5: 20 mm shared 20.25 to 2.25.
    const cavity = answered(
      buildCavity(UNDER_SEAT, [...UNDER_SEAT_READINGS, lengthReading('openingHeight', 240, 1.5)]),
    );
    expect(cavity.corrections).toHaveLength(1);
    expect(cavity.corrections[0]?.key).toBe('frontHeight');
    expect(cavity.corrections[0]?.by).toBeCloseTo(18, 4);
    expect(cavity.corrections[0]?.timesPlusMinus).toBeCloseTo(4, 4);
  });
});

const UNDER_SEAT_READINGS = [
  lengthReading('floorDepth', 460),
  lengthReading('backHeight', 260),
  lengthReading('frontHeight', 220, 4.5),
  lengthReading('lipHeight', 0),
  lengthReading('width', 1280),
  lengthReading('openingWidth', 1200),
];

describe('the other forms', () => {
  it('draws a saloon boot by hand', () => {
    const cavity = answered(
      buildCavity(SALOON_BOOT, [
        lengthReading('floorDepth', 900),
        lengthReading('seatHeight', 520),
        lengthReading('shelfDepth', 110),
        lengthReading('shelfEdgeHeight', 500),
        lengthReading('sillHeight', 200),
        angleReading('seatLean', THREE_FOUR_RAD),
        lengthReading('openingHeight', 500, 1),
        lengthReading('openingWidth', 950),
        lengthReading('archWidth', 1000),
      ]),
    );
    expect(rounded(cavity.polygon)).toEqual([
      [0, 0],
      [900, 0],
      [900, 200],
      [500, 500],
      [390, 520],
    ]);
    expect(cavity.checks[0]).toMatchObject({
      key: 'openingHeight',
      derivedMm: expect.closeTo(500, 6),
      agrees: true,
    });
  });

  it('stands a cab wall at the back of a space behind the seat', () => {
    const cavity = answered(
      buildCavity(BEHIND_SEAT, [
        lengthReading('floorDepth', 320),
        lengthReading('depthAt300', 260),
        lengthReading('depthAt600', 200),
        lengthReading('height', 760),
        lengthReading('gapAtTop', 180),
        lengthReading('width', 1320),
        lengthReading('openingWidth', 1200),
      ]),
    );
    expect(rounded(cavity.polygon)).toEqual([
      [0, 0],
      [320, 0],
      [260, 300],
      [200, 600],
      [180, 760],
      [0, 760],
    ]);
    expect(cavity.opening.heightMm).toBe(180);
  });

  it('leaves a depth out that was taken above the space, and says so', () => {
    const cavity = answered(
      buildCavity(BEHIND_SEAT, [
        lengthReading('floorDepth', 320),
        lengthReading('depthAt600', 200),
        lengthReading('height', 500),
        lengthReading('gapAtTop', 240),
        lengthReading('width', 1320),
        lengthReading('openingWidth', 1200),
      ]),
    );
    expect(cavity.polygon).toHaveLength(4);
    expect(cavity.findings).toContainEqual({
      code: 'taken-above-space',
      key: 'depthAt600',
      atMm: 600,
      spaceMm: 500,
    });
  });

  it('steps over a hump under the seat', () => {
    const hump = [
      lengthReading('humpFrom', 160),
      lengthReading('humpLength', 120),
      lengthReading('humpHeight', 40),
    ];
    const cavity = answered(buildCavity(UNDER_SEAT, [...UNDER_SEAT_READINGS, ...hump]));
    expect(rounded(cavity.polygon)).toEqual([
      [0, 0],
      [160, 0],
      [160, 40],
      [280, 40],
      [280, 0],
      [460, 0],
      [460, 220],
      [0, 260],
    ]);
  });

  it('refuses half a hump, naming what is missing', () => {
    const half = buildCavity(UNDER_SEAT, [...UNDER_SEAT_READINGS, lengthReading('humpFrom', 160)]);
    expect(refusalOf(half)?.field).toBe('measurements.humpLength');
  });

  it('takes corners of a free section in either turning sense', () => {
    const corners = [
      { id: 'a', wallName: 'Floor', role: 'floor', surface: 'soft' },
      { id: 'b', wallName: 'Opening', role: 'opening', surface: 'open' },
      { id: 'c', wallName: 'Roof', role: 'roof', surface: 'soft' },
      { id: 'd', wallName: 'Seat back', role: 'seat-back', surface: 'soft' },
    ] as const;
    const at = { a: [0, 0], b: [700, 0], c: [650, 400], d: [80, 420] } as const;
    const readings = [
      ...(['a', 'b', 'c', 'd'] as const).flatMap((id) => [
        lengthReading(`${id}-x`, at[id][0]),
        lengthReading(`${id}-y`, at[id][1]),
      ]),
      lengthReading('width', 900),
      lengthReading('openingWidth', 880),
    ];
    const forward = answered(buildCavity(answered(freePointsForm('Free', corners)), readings));
    // Going round the other way the wall that begins at a corner is the one that ended there.
    const [a, b, c, d] = corners;
    const backward = [
      { ...a, wallName: d.wallName, role: d.role, surface: d.surface },
      { ...d, wallName: c.wallName, role: c.role, surface: c.surface },
      { ...c, wallName: b.wallName, role: b.role, surface: b.surface },
      { ...b, wallName: a.wallName, role: a.role, surface: a.surface },
    ];
    const turned = answered(buildCavity(answered(freePointsForm('Free', backward)), readings));
    expect(turned.polygon).toEqual(forward.polygon);
    expect(turned.walls.map((it) => it.role)).toEqual(forward.walls.map((it) => it.role));
  });

  it('draws a roof from offsets up a straightedge', () => {
    const form = answered(stationsForm('Glass', [0, 200, 400]));
    const readings = [
      lengthReading('up-0', 500),
      lengthReading('up-1', 450),
      lengthReading('up-2', 300),
      lengthReading('down-1', 40),
      lengthReading('sillHeight', 60),
      lengthReading('width', 900),
      lengthReading('openingWidth', 880),
    ];
    const cavity = answered(buildCavity(form, readings));
    expect(cavity.polygon.map(({ xMm, yMm }) => [xMm, yMm + 0])).toEqual([
      [0, 0],
      [200, -40],
      [400, 0],
      [400, 60],
      [400, 300],
      [200, 450],
      [0, 500],
    ]);
    expect(cavity.opening.heightMm).toBe(240);
  });

  it('is written in the shape of the contract, with letters and keys that differ', () => {
    const free = [answered(stationsForm('Glass', [0, 50, 100]))];
    for (const form of [SALOON_BOOT, HATCH_ESTATE, BEHIND_SEAT, UNDER_SEAT, ...free]) {
      expect(sectionFormSchema.safeParse(form).error).toBeUndefined();
      const { dimensions } = form;
      expect(new Set(dimensions.map((it) => it.letter)).size).toBe(dimensions.length);
      expect(new Set(dimensions.map((it) => it.key)).size).toBe(dimensions.length);
    }
  });
});

describe('refusals', () => {
  it('names every missing dimension by letter', () => {
    const refusal = refusalOf(
      buildCavity(
        HATCH_ESTATE,
        RECTANGLE.filter(({ key }) => key !== 'opening' && key !== 'sillHeight'),
      ),
    );
    expect(refusal?.field).toBe('measurements.opening');
    expect(refusal?.why).toContain('C (');
    expect(refusal?.why).toContain('E (');
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, -1, 1e9])('refuses a floor of %s mm by name', (value) => {
    const refusal = refusalOf(
      buildCavity(HATCH_ESTATE, changed(RECTANGLE, lengthReading('floorDepth', value))),
    );
    expect(refusal?.field).toBe('measurements.floorDepth');
  });

  it.each([Number.NaN, -1, 1e9])('refuses a ± of %s by name', (plusMinusMm) => {
    const refusal = refusalOf(
      buildCavity(HATCH_ESTATE, changed(RECTANGLE, lengthReading('opening', 500, plusMinusMm))),
    );
    expect(refusal?.field).toBe('measurements.opening');
  });

  it('refuses a length where an angle is asked for, and a key the form has not', () => {
    const swapped = buildCavity(HATCH_ESTATE, changed(RECTANGLE, lengthReading('seatLean', 20)));
    expect(refusalOf(swapped)?.field).toBe('measurements.seatLean');
    const unknown = buildCavity(HATCH_ESTATE, [...RECTANGLE, lengthReading('glovebox', 20)]);
    expect(refusalOf(unknown)?.field).toBe('measurements.glovebox');
  });

  it('refuses an opening too short to reach from lip to seal, with the numbers', () => {
    const refusal = refusalOf(buildCavity(HATCH_ESTATE, changed(SLANTED, lengthReading('opening', 260))));
    expect(refusal?.field).toBe('measurements.opening');
    expect(refusal?.why).toContain('40.0 mm too short');
  });

  it('refuses walls that cross and names a dimension that places them', () => {
    const leaned = changed(
      SLANTED,
      lengthReading('roofDepth', 20),
      angleReading('seatLean', Math.PI / 3),
      lengthReading('opening', 900),
    );
    const refusal = refusalOf(buildCavity(HATCH_ESTATE, leaned));
    expect(refusal).not.toBeNull();
    expect(refusal?.field).toMatch(/^measurements\.(seatLean|opening|roofDepth|seatHeight)$/);
  });

  it('refuses a prism without width or outline', () => {
    const flat = {
      id: 'arm',
      name: 'Hinge arm',
      polygon: [
        { xMm: 0, yMm: 0 },
        { xMm: 10, yMm: 0 },
        { xMm: 20, yMm: 0 },
      ],
      zMinMm: 400,
      zMaxMm: 440,
      plusMinusMm: 2,
      appliesTo: 'both',
      moves: true,
    } as const;
    const refusal = refusalOf(buildCavity(HATCH_ESTATE, RECTANGLE, { obstructions: [flat], keepFree: [] }));
    expect(refusal?.field).toBe('obstructions[0].polygon');
  });

  it('answers anything in range with a simple counter-clockwise section or a refusal', () => {
    const length = (key: string, min: number, max: number) =>
      fc.double({ min, max, noNaN: true }).map((value) => lengthReading(key, value, null));
    const anything = fc.tuple(
      length('floorDepth', 150, 2000),
      length('seatHeight', 100, 1200),
      length('opening', 100, 1500),
      length('roofDepth', 20, 1500),
      length('sillHeight', 0, 600),
      fc.double({ min: -0.3, max: 1, noNaN: true }).map((value) => angleReading('seatLean', value, null)),
      length('openingWidth', 100, 1500),
      length('archWidth', 100, 1500),
      length('sillLean', -300, 300),
      length('floorRise', -200, 200),
    );
    let built = 0;
    fc.assert(
      fc.property(anything, (readings) => {
        const answer = buildCavity(HATCH_ESTATE, readings);
        if ('refusal' in answer) {
          expect(answer.refusal.field).toMatch(/^measurements\./);
          return;
        }
        built += 1;
        expect(crossingEdges(answer.polygon)).toBeNull();
        expect(signedAreaMm2(answer.polygon)).toBeGreaterThan(0);
        expect(cavitySchema.safeParse(answer).error).toBeUndefined();
      }),
      { numRuns: 300 },
    );
    expect(built).toBeGreaterThan(30);
  });
});

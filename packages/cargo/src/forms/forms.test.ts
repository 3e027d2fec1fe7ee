import { sectionFormSchema } from '@gusset/contracts/cargo';
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { buildCavity } from '../build-cavity.ts';
import {
  angleReading,
  answered,
  lengthReading,
  THREE_FOUR_RAD,
  UNDER_SEAT_READINGS,
} from '../survey-fixture.ts';
import { BEHIND_SEAT } from './behind-seat.ts';
import { freePointsForm, stationsForm } from './free-section.ts';
import { HATCH_ESTATE } from './hatch-estate.ts';
import { SALOON_BOOT } from './saloon-boot.ts';
import { UNDER_SEAT } from './under-seat.ts';

const rounded = (polygon: readonly { xMm: number; yMm: number }[]) =>
  polygon.map(({ xMm, yMm }) => [Math.round(xMm * 1e6) / 1e6, Math.round(yMm * 1e6) / 1e6]);

const refusalOf = (answer: object) => (isRefusal(answer) ? answer.refusal : null);

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

  it('reads offsets square to a straightedge placed and tilted anywhere', () => {
    // A square of 500 on its corner's side: the line rises 3 in 4 from (100, 50), 500 long, 500 above it.
    const form = answered(stationsForm('Glass', [0, 250, 500]));
    const cavity = answered(
      buildCavity(form, [
        lengthReading('lineAlong', 100),
        lengthReading('lineUp', 50),
        angleReading('lineTilt', Math.atan2(3, 4)),
        ...[0, 1, 2].flatMap((i) => [lengthReading(`up-${i}`, 500), lengthReading(`down-${i}`, 0)]),
        lengthReading('width', 900),
        lengthReading('openingWidth', 800),
      ]),
    );
    expect(rounded(cavity.polygon)).toEqual([
      [100, 50],
      [300, 200],
      [500, 350],
      [200, 750],
      [0, 600],
      [-200, 450],
    ]);
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

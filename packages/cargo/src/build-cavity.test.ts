import { cavitySchema } from '@gusset/contracts/cargo';
import { describe, expect, it } from 'vitest';
import { buildCavity } from './build-cavity.ts';
import { HATCH_ESTATE } from './forms/hatch-estate.ts';
import { signedAreaMm2 } from './plane/polygon.ts';
import { answered, changed, lengthReading, RECTANGLE, SLANTED } from './survey-fixture.ts';

const rounded = (polygon: readonly { xMm: number; yMm: number }[]) =>
  polygon.map(({ xMm, yMm }) => [Math.round(xMm * 1e6) / 1e6, Math.round(yMm * 1e6) / 1e6]);

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

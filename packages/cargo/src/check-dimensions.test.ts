import type { Measurement } from '@gusset/contracts/cargo';
import { describe, expect, it } from 'vitest';
import { buildCavity } from './build-cavity.ts';
import { HATCH_ESTATE } from './forms/hatch-estate.ts';
import { UNDER_SEAT } from './forms/under-seat.ts';
import {
  answered,
  changed,
  lengthReading,
  RECTANGLE,
  SLANTED,
  UNDER_SEAT_READINGS,
} from './survey-fixture.ts';

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

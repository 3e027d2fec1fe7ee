import { describe, expect, it } from 'vitest';
import {
  clearanceSettingsSchema,
  DEFAULT_CLEARANCES,
  keepFreeZoneSchema,
  measurementSchema,
  obstructionSchema,
  sectionFormSchema,
} from './index.ts';

const taken = {
  key: 'floorDepth',
  typed: '31 1/2"',
  method: 'tape',
  takenBy: 'M. Ilves',
  takenAt: '2026-11-24T09:30:00Z',
};
const prism = {
  id: 'arm',
  name: 'Hinge arm',
  polygon: [
    { xMm: 0, yMm: 0 },
    { xMm: 40, yMm: 0 },
    { xMm: 40, yMm: 70 },
  ],
  zMinMm: 400,
  zMaxMm: 440,
  plusMinusMm: 4,
};

describe('measurementSchema', () => {
  it('takes a length or an angle, with its ± or none', () => {
    expect(measurementSchema.safeParse({ ...taken, valueMm: 800, plusMinusMm: null }).success).toBe(true);
    expect(measurementSchema.safeParse({ ...taken, valueRad: 0.3, plusMinusRad: 0.01 }).success).toBe(true);
  });

  it.each([
    ['both at once', { ...taken, valueMm: 800, plusMinusMm: null, valueRad: 0.3, plusMinusRad: null }],
    ['neither', taken],
    ['no number', { ...taken, valueMm: Number.NaN, plusMinusMm: null }],
    ['a ± below nothing', { ...taken, valueMm: 800, plusMinusMm: -1 }],
    ['a day without a time', { ...taken, valueMm: 800, plusMinusMm: null, takenAt: '2026-11-24' }],
    ['an unknown method', { ...taken, valueMm: 800, plusMinusMm: null, method: 'guess' }],
  ])('turns down %s', (_, reading) => {
    expect(measurementSchema.safeParse(reading).success).toBe(false);
  });
});

describe('prisms', () => {
  it('have a width across the car', () => {
    const arm = { ...prism, appliesTo: 'fit', moves: true };
    expect(obstructionSchema.safeParse(arm).success).toBe(true);
    expect(obstructionSchema.safeParse({ ...arm, zMaxMm: 400 }).error?.issues[0]?.path).toEqual(['zMaxMm']);
    expect(keepFreeZoneSchema.safeParse({ ...prism, kind: 'vent', zMinMm: 500 }).success).toBe(false);
  });
});

describe('clearanceSettingsSchema', () => {
  it('holds the defaults, and none below nothing', () => {
    expect(clearanceSettingsSchema.parse(DEFAULT_CLEARANCES)).toEqual(DEFAULT_CLEARANCES);
    expect(clearanceSettingsSchema.safeParse({ ...DEFAULT_CLEARANCES, sidesMm: -1 }).success).toBe(false);
  });
});

describe('sectionFormSchema', () => {
  it('is strict: a field nobody knows is turned down', () => {
    const form = {
      id: 'x',
      kind: 'free-section',
      name: 'X',
      dimensions: [],
      construction: { by: 'stations', stationsMm: [0, 50] },
    };
    const issues = sectionFormSchema.safeParse({ ...form, colour: 'red' }).error?.issues ?? [];
    expect(issues.map(({ code }) => code)).toEqual(['too_small', 'unrecognized_keys']);
  });
});

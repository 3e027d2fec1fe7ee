import { HATCH_ESTATE } from '@gusset/cargo';
import type { FreeSection } from '@gusset/contracts/survey';
import { describe, expect, it } from 'vitest';
import { keyAfter, readingRefusal } from './survey-reading.ts';

const dimension = (key: string) => {
  const found = HATCH_ESTATE.dimensions.find((each) => each.key === key);
  if (found === undefined) throw new Error(`no ${key}`);
  return found;
};
const reading = (key: string, value: number, plusMinus = 3) =>
  ({ key, value, plusMinus, typed: String(value), method: 'tape' }) as const;

describe('readingRefusal', () => {
  it('lets a length in its range pass', () => {
    expect(readingRefusal(dimension('opening'), reading('opening', 597))).toBeNull();
  });
  it('says the range of a length in mm and of an angle in degrees', () => {
    expect(readingRefusal(dimension('opening'), reading('opening', 5))).toMatchObject({
      refusal: { field: 'value', allowed: '100 mm to 2500 mm', got: 5 },
    });
    expect(readingRefusal(dimension('seatLean'), reading('seatLean', 3, 0.01))?.refusal.allowed).toMatch(
      /° to .*°$/,
    );
  });
  it('refuses a ± in mm at an angle', () => {
    expect(readingRefusal(dimension('seatLean'), reading('seatLean', 0.3, 3))?.refusal.field).toBe(
      'plusMinus',
    );
  });
});

const stations = (...mm: readonly number[]): FreeSection => ({
  by: 'stations',
  stations: mm.map((each) => ({ mm: each, typed: String(each), unit: 'mm' })),
});
const corner = (id: string) => ({ id, wallName: id, role: 'floor', surface: 'hard' }) as const;

describe('keyAfter', () => {
  it('keeps a reading at its distance when a station comes in before it', () => {
    expect(keyAfter(stations(0, 400), stations(0, 200, 400), 'up-1')).toBe('up-2');
    expect(keyAfter(stations(0, 200, 400), stations(0, 400), 'down-1')).toBeNull();
    expect(keyAfter(stations(0, 400), stations(0, 200, 400), 'width')).toBe('width');
  });
  it('drops the readings of a corner that is taken out, and no other', () => {
    const before: FreeSection = { by: 'points', corners: [corner('p1'), corner('p2'), corner('p3')] };
    const after: FreeSection = { by: 'points', corners: [corner('p1'), corner('p3'), corner('p4')] };
    expect(keyAfter(before, after, 'p2-x')).toBeNull();
    expect(keyAfter(before, after, 'p3-y')).toBe('p3-y');
  });
  it('drops the outline and keeps the widths when corners give way to stations', () => {
    const before: FreeSection = { by: 'points', corners: [corner('p1'), corner('p2'), corner('p3')] };
    expect(keyAfter(before, stations(0, 400), 'p1-x')).toBeNull();
    expect(keyAfter(before, stations(0, 400), 'openingWidth')).toBe('openingWidth');
    expect(keyAfter(stations(0, 400), before, 'lineTilt')).toBeNull();
  });
});

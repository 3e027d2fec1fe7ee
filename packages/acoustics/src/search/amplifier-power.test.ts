import { describe, expect, it } from 'vitest';
import { wattsInto } from './amplifier-power.ts';

const RATINGS = [
  { loadOhm: 4, watts: 300 },
  { loadOhm: 1, watts: 900 },
  { loadOhm: 2, watts: 560 },
];

describe('wattsInto', () => {
  it('is the rating at a rated load', () => {
    expect(wattsInto(RATINGS, 2)).toBeCloseTo(560, 9);
    expect(wattsInto(RATINGS, 4)).toBeCloseTo(300, 9);
  });
  it('runs straight over both logarithms between two ratings', () => {
    expect(wattsInto(RATINGS, Math.sqrt(8))).toBeCloseTo(Math.sqrt(300 * 560), 9);
  });
  it('keeps the voltage above the highest rated load', () => {
    expect(wattsInto(RATINGS, 8)).toBeCloseTo(150, 9);
  });
  it('keeps the current a little below the lowest one, and refuses what lies further down', () => {
    expect(wattsInto(RATINGS, 0.95)).toBeCloseTo(855, 9);
    expect(wattsInto(RATINGS, 0.89)).toBeNull();
  });
  it('needs no second rating', () => {
    expect(wattsInto([{ loadOhm: 4, watts: 100 }], 3.8)).toBeCloseTo(95, 9);
    expect(wattsInto([{ loadOhm: 4, watts: 100 }], 2)).toBeNull();
  });
});

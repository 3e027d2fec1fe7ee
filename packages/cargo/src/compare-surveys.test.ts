import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareSurveys } from './compare-surveys.ts';
import { HATCH_ESTATE } from './forms/hatch-estate.ts';
import { angleReading, changed, lengthReading, RECTANGLE } from './survey-fixture.ts';

const rowOf = (rows: ReturnType<typeof compareSurveys>, key: string) => rows.find((row) => row.key === key);

describe('compareSurveys', () => {
  const other = changed(
    RECTANGLE.filter(({ key }) => key !== 'sillHeight'),
    lengthReading('floorDepth', 806, 4),
    lengthReading('seatHeight', 492, 2),
    angleReading('seatLean', 0.02, 0.03),
    lengthReading('upperWidth', 1200, 3),
  );
  const rows = compareSurveys(
    HATCH_ESTATE,
    changed(RECTANGLE, lengthReading('floorDepth', 800, 2), lengthReading('seatHeight', 500, 3)),
    other,
  );

  it('agrees as far as both ± together explain', () => {
    expect(rowOf(rows, 'floorDepth')).toMatchObject({
      letter: 'A',
      first: { value: 800, plusMinus: 2 },
      second: { value: 806, plusMinus: 4 },
      difference: 6,
      allowed: 6,
      verdict: 'agrees',
    });
    expect(rowOf(rows, 'seatLean')).toMatchObject({ unit: 'angle', verdict: 'agrees' });
  });

  it('differs beyond them', () => {
    expect(rowOf(rows, 'seatHeight')).toMatchObject({ difference: -8, allowed: 5, verdict: 'differs' });
  });

  it('names what only one of them has, and leaves out what neither has', () => {
    expect(rowOf(rows, 'sillHeight')).toMatchObject({
      second: null,
      difference: null,
      verdict: 'only-first',
    });
    expect(rowOf(rows, 'upperWidth')).toMatchObject({ first: null, verdict: 'only-second' });
    expect(rowOf(rows, 'archHeight')).toBeUndefined();
  });

  it('finds nothing between a survey and itself', () => {
    expect(compareSurveys(HATCH_ESTATE, other, other).every(({ difference }) => difference === 0)).toBe(true);
  });

  it('answers the same the other way round, with the sign turned', () => {
    fc.assert(
      fc.property(fc.double({ min: 300, max: 3000, noNaN: true }), (depthMm) => {
        const moved = changed(RECTANGLE, lengthReading('floorDepth', depthMm, 2));
        const there = rowOf(compareSurveys(HATCH_ESTATE, RECTANGLE, moved), 'floorDepth');
        const back = rowOf(compareSurveys(HATCH_ESTATE, moved, RECTANGLE), 'floorDepth');
        expect(back?.difference).toBeCloseTo(-(there?.difference ?? 0), 9);
        expect(back?.verdict).toBe(there?.verdict);
      }),
    );
  });
});

import { describe, expect, it } from 'vitest';
import { aimFigures, bandMeanDb, cornerBoundHz, hasEnded, SEARCH_FREQUENCIES_HZ, scoreFor } from './aims.ts';

const levels = (at: (hz: number) => number) => Float64Array.from(SEARCH_FREQUENCIES_HZ, at);
const FLAT = levels(() => 110);
/** 12 dB an octave below 30 Hz. */
const FALLING = levels((hz) => (hz >= 30 ? 110 : 110 - 12 * Math.log2(30 / hz)));

describe('aimFigures', () => {
  it('finds a flat level as deep as the search looks, with nothing to deviate', () => {
    expect(aimFigures(FLAT, FLAT)).toEqual({ lowCornerHz: 10, outputDb: 110, deviationDb: 0 });
  });
  it('finds the corner 3 dB under the loudest of the band, straight over the logarithm of frequency', () => {
    const { outputDb, lowCornerHz } = aimFigures(FALLING, FLAT);
    expect(outputDb).toBeCloseTo(bandMeanDb(FALLING), 12);
    expect(lowCornerHz).toBeCloseTo(30 * 2 ** (-3 / 12), 2);
  });
  it('goes down from the loudest place in the band: a hole ends the way', () => {
    const holed = levels((hz) => (hz > 60 ? 111 : hz > 33 && hz < 35 ? 90 : 110));
    expect(aimFigures(holed, holed).lowCornerHz).toBeGreaterThan(33);
  });
  it('tells deviation as a root mean square: half the band 2 dB up is 1 dB', () => {
    const middle = Math.sqrt(30 * 80);
    const stepped = levels((hz) => (hz < middle ? 112 : 110));
    expect(aimFigures(FLAT, stepped).deviationDb).toBeCloseTo(1, 1);
  });
  it('scores lower for better', () => {
    const figures = { lowCornerHz: 30, outputDb: 112, deviationDb: 1.5 };
    expect(scoreFor('deep', figures)).toBe(30);
    expect(scoreFor('loud', figures)).toBe(-112);
    expect(scoreFor('smooth', figures)).toBe(1.5);
  });
});

describe('hasEnded', () => {
  it('is true from the corner down, so that lower frequencies need no solving', () => {
    const { lowCornerHz } = aimFigures(FALLING, FLAT);
    const firstBelow = SEARCH_FREQUENCIES_HZ.findLastIndex((hz) => hz < lowCornerHz);
    expect([hasEnded(FALLING, firstBelow), hasEnded(FALLING, firstBelow + 1), hasEnded(FLAT, 0)]).toEqual([
      true,
      false,
      false,
    ]);
  });
});

describe('cornerBoundHz', () => {
  it('lies where the bound falls 3 dB under the loudest, and not above the true corner', () => {
    const { lowCornerHz } = aimFigures(FALLING, FLAT);
    const bound = cornerBoundHz(FALLING, 110);
    expect(bound).toBeLessThanOrEqual(lowCornerHz);
    expect(bound).toBeGreaterThan(lowCornerHz * 0.96);
  });
  it('says nothing where no level is known', () => {
    expect(cornerBoundHz(FALLING, null)).toBe(10);
  });
});

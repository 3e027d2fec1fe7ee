import { describe, expect, it } from 'vitest';
import { REFERENCE_AIR } from './air.ts';
import { addCabin, cabinCornerHz, cabinGain } from './cabin.ts';
import { GAIN_DB, GAIN_FIGURES } from './transfer.ts';

const shelf = {
  kind: 'shelf',
  longestM: 2.6,
  upperQ: Math.SQRT1_2,
  lowerHz: 8,
  lowerQ: Math.SQRT1_2,
} as const;
const curve = {
  kind: 'curve',
  points: [
    { frequencyHz: 20, gainDb: 12 },
    { frequencyHz: 40, gainDb: 6 },
    { frequencyHz: 80, gainDb: 0 },
  ],
} as const;
const db = (cabin: Parameters<typeof cabinGain>[0], frequencyHz: number) => {
  const gains = new Float64Array(GAIN_FIGURES);
  addCabin(cabinGain(cabin, REFERENCE_AIR), frequencyHz, gains);
  return gains[GAIN_DB];
};

describe('addCabin', () => {
  it('starts to lift at half a wavelength in the longest clear length', () => {
    expect(cabinCornerHz(2.6, REFERENCE_AIR)).toBeCloseTo(343.2368 / 5.2, 3);
  });

  it('is unity far above its corner and level at 40 log(fc/fl) far below', () => {
    expect(db(shelf, 5_000)).toBeCloseTo(0, 2);
    const cornerHz = cabinCornerHz(2.6, REFERENCE_AIR);
    expect(db(shelf, 0.1)).toBeCloseTo(40 * Math.log10(cornerHz / 8), 2);
  });

  it('rises 12 dB an octave between', () => {
    const wide = { ...shelf, lowerHz: 0.2 };
    expect((db(wide, 2) ?? 0) - (db(wide, 4) ?? 0)).toBeCloseTo(12.04, 1);
  });

  it('follows a measured curve in dB over the logarithm of frequency, and holds its ends', () => {
    expect(db(curve, 40)).toBeCloseTo(6, 10);
    expect(db(curve, Math.sqrt(40 * 80))).toBeCloseTo(3, 10);
    expect(db(curve, 5)).toBeCloseTo(12, 10);
    expect(db(curve, 500)).toBeCloseTo(0, 10);
  });
});

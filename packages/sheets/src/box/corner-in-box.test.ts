import { describe, expect, it } from 'vitest';
import { soundResult } from './box-fixture.ts';
import { cornerInBox } from './corner-in-box.ts';

describe('cornerInBox', () => {
  it('is the sound sheet’s own answer at the wanted volume', () => {
    const sound = soundResult();
    const corner = cornerInBox(sound, 30);
    expect(corner?.qtc).toBeCloseTo(sound.qtc ?? 0, 9);
    expect(corner?.fcHz).toBeCloseTo(sound.fcHz ?? 0, 9);
    expect(corner?.f3Hz).toBeCloseTo(sound.f3Hz ?? 0, 1);
  });
  it.each([22, 26, 36, 40])('agrees with the sound sheet within a hundredth at %d L', (litres) => {
    const there = soundResult({ targetNet: { litres, typed: String(litres) } });
    const corner = cornerInBox(soundResult(), litres);
    expect((corner?.fcHz ?? 0) / (there.fcHz ?? 0)).toBeCloseTo(1, 2);
    expect(Math.abs((corner?.qtc ?? 0) / (there.qtc ?? 0) - 1)).toBeLessThan(0.01);
    expect(Math.abs((corner?.f3Hz ?? 0) / (there.f3Hz ?? 0) - 1)).toBeLessThan(0.01);
  });
  it('is nothing without air', () => {
    expect(cornerInBox(soundResult(), 0)).toBeNull();
  });
});

import { describe, expect, it } from 'vitest';
import { wholeUnits } from './whole-units.ts';

describe('wholeUnits', () => {
  it('keeps whole lengths as they are', () => {
    expect(wholeUnits([2440, 1220]).perUnit).toBe(1);
  });

  it('finds the decimals that make every length whole', () => {
    expect(wholeUnits([2440, 3.2]).perUnit).toBe(10);
    expect(wholeUnits([48, 0.125, 23.0625]).perUnit).toBe(10_000);
  });

  it('adds up decimals that binary cannot', () => {
    const units = wholeUnits([0.1, 0.3]);
    expect(3 * units.up(0.1)).toBe(units.down(0.3));
  });

  it('rounds to the safe side what no decimal ends', () => {
    const units = wholeUnits([100, 100 / 3]);
    expect(units.up(100 / 3) / units.perUnit).toBeGreaterThan(100 / 3);
    expect(units.down(100 / 3) / units.perUnit).toBeLessThan(100 / 3);
  });

  it('stays within 32 bits for large lengths', () => {
    const units = wholeUnits([100_000_000, 0.1]);
    expect(units.perUnit).toBe(1);
    expect(units.up(0.1)).toBe(1);
  });
});

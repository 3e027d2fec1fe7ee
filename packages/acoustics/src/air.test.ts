import { describe, expect, it } from 'vitest';
import { airAt, pressureAtAltitudePa, REFERENCE_AIR } from './air.ts';

// Ideal gas, R 287.058 J/(kg K), gamma 1.4, worked by hand; ISO 2533 for altitude.
describe('airAt', () => {
  it('gives the reference air: 1.204085 kg/m³, 343.2368 m/s, 141 855 Pa', () => {
    expect(REFERENCE_AIR.densityKgPerM3).toBeCloseTo(1.204085, 6);
    expect(REFERENCE_AIR.soundSpeedMps).toBeCloseTo(343.2368, 4);
    expect(REFERENCE_AIR.stiffnessPa).toBeCloseTo(141_855, 9);
  });

  it('gains 2.5 % in speed and loses 4.9 % in density from 20 to 35 °C', () => {
    const hot = airAt({ temperatureC: 35, pressurePa: 101_325 });
    expect(hot.soundSpeedMps / REFERENCE_AIR.soundSpeedMps - 1).toBeCloseTo(0.025, 3);
    expect(hot.densityKgPerM3 / REFERENCE_AIR.densityKgPerM3 - 1).toBeCloseTo(-0.049, 3);
  });

  it('is as stiff hot as cold: stiffness is density times speed squared, and of pressure alone', () => {
    const hot = airAt({ temperatureC: 50, pressurePa: 90_000 });
    expect(hot.densityKgPerM3 * hot.soundSpeedMps ** 2).toBeCloseTo(hot.stiffnessPa, 6);
    expect(hot.stiffnessPa).toBeCloseTo(126_000, 6);
  });

  it('thins to 83.5 kPa at 1600 m', () => {
    expect(pressureAtAltitudePa(0)).toBe(101_325);
    expect(pressureAtAltitudePa(1_600) / 1e3).toBeCloseTo(83.5, 1);
  });
});

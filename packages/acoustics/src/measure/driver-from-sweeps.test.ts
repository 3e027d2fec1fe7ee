import type { DriverBench } from '@gusset/contracts/measurement';
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { driverFromSweeps, type SecondSweep } from './driver-from-sweeps.ts';
import { freeAirSweep, type Motor } from './sweep-fixture.ts';

/** Quince-10 of the reference: Mms 99.439 g, Vas 48 L, Sd 340 cm². */
const QUINCE: Motor = { fsHz: 29.5, qms: 4.6, qes: 0.52, reOhm: 3.6, leMh: 1.1 };
const MMS_GRAMS = 99.439;
const BENCH: DriverBench = { reOhm: 3.6, sdCm2: 340, coils: 1, wiring: 'single' };

/** Mass added: fs and both Qs move as sqrt(M/M') and sqrt(M'/M). */
function withMass(motor: Motor, addedGrams: number): Motor {
  const heavier = Math.sqrt((MMS_GRAMS + addedGrams) / MMS_GRAMS);
  return { ...motor, fsHz: motor.fsHz / heavier, qms: motor.qms * heavier, qes: motor.qes * heavier };
}

/** On a tight box of `litres`: everything goes up with sqrt(1 + Vas/V). */
function onBox(motor: Motor, litres: number): Motor {
  const stiffer = Math.sqrt(1 + 48 / litres);
  return { ...motor, fsHz: motor.fsHz * stiffer, qms: motor.qms * stiffer, qes: motor.qes * stiffer };
}

function read(second: SecondSweep | null, bench = BENCH, motor = QUINCE, noise = 0, phase = true) {
  const answer = driverFromSweeps(freeAirSweep(motor, { noise, phase }), second, bench);
  if (isRefusal(answer)) throw new Error(JSON.stringify(answer.refusal));
  return answer;
}
const massSweep = (noise = 0): SecondSweep => ({
  by: 'added-mass',
  addedGrams: 60,
  columns: freeAirSweep(withMass(QUINCE, 60), { noise, seed: 11 }),
});

describe('driverFromSweeps', () => {
  it('gives back the figures a clean sweep was made from', () => {
    const { fit, figures } = read(massSweep());
    expect(fit.fsHz.value).toBeCloseTo(29.5, 4);
    expect(fit.qms.value).toBeCloseTo(4.6, 4);
    expect(fit.qes.value).toBeCloseTo(0.52, 5);
    expect(fit.leMh.value).toBeCloseTo(1.1, 4);
    expect(figures.vasLitres).toBeCloseTo(48, 1);
  });
  it('finds the resistance where none was measured', () => {
    const { fit } = read(null, { ...BENCH, reOhm: null });
    expect(fit.reOhm.value).toBeCloseTo(3.6, 4);
    expect(fit.reHeld).toBe(false);
  });
  it.each([1, 2, 3, 4, 5])('holds within two percent under one percent of noise, seed %i', (seed) => {
    const sweep = freeAirSweep(QUINCE, { noise: 0.01, seed });
    const answer = driverFromSweeps(sweep, massSweep(0.01), BENCH);
    if (isRefusal(answer)) throw new Error(JSON.stringify(answer.refusal));
    expect(answer.fit.fsHz.value / 29.5).toBeCloseTo(1, 2);
    expect(Math.abs(answer.fit.qms.value / 4.6 - 1)).toBeLessThan(0.02);
    expect(Math.abs(answer.fit.qes.value / 0.52 - 1)).toBeLessThan(0.02);
    expect(Math.abs((answer.moving?.vasLitres?.value ?? 0) / 48 - 1)).toBeLessThan(0.03);
  });
  it('states a doubt that the true figure lies within', () => {
    // Four standard deviations: one in fifteen thousand falls outside.
    for (let seed = 1; seed <= 12; seed++) {
      const answer = driverFromSweeps(freeAirSweep(QUINCE, { noise: 0.02, seed }), null, BENCH);
      if (isRefusal(answer)) throw new Error(JSON.stringify(answer.refusal));
      const { fsHz, qms, qes } = answer.fit;
      expect(Math.abs(fsHz.value - 29.5)).toBeLessThan(4 * fsHz.plusMinus);
      expect(Math.abs(qms.value - 4.6)).toBeLessThan(4 * qms.plusMinus);
      expect(Math.abs(qes.value - 0.52)).toBeLessThan(4 * qes.plusMinus);
    }
  });
  it('reads magnitude alone as well', () => {
    const { fit } = read(null, BENCH, QUINCE, 0.005, false);
    expect(fit.fsHz.value / 29.5).toBeCloseTo(1, 2);
    expect(Math.abs(fit.qes.value / 0.52 - 1)).toBeLessThan(0.02);
  });
  it('agrees with the classic reading of the peak where the coil is small', () => {
    const { peak, agreement } = read(null, BENCH, { ...QUINCE, leMh: 0.01 });
    expect(peak?.geometricHz).toBeCloseTo(29.5, 1);
    for (const { field, percent } of agreement) expect(Math.abs(percent), field).toBeLessThan(1);
  });
  it('weighs the moving mass with a known mass and with a known box alike', () => {
    const byMass = read(massSweep()).moving;
    const byBox = read({ by: 'known-box', netLitres: 22, columns: freeAirSweep(onBox(QUINCE, 22)) }).moving;
    expect(byMass?.mmsGrams?.value).toBeCloseTo(MMS_GRAMS, 1);
    expect(byBox?.mmsGrams?.value).toBeCloseTo(MMS_GRAMS, 1);
    expect(byBox?.vasLitres?.value).toBeCloseTo(48, 1);
  });
  it('says nothing about Vas without the area of the cone', () => {
    const { moving, figures } = read(massSweep(), { ...BENCH, sdCm2: null });
    expect(moving?.vasLitres).toBeNull();
    expect(figures.vasLitres).toBeNull();
    expect(moving?.mmsGrams?.value).toBeCloseTo(MMS_GRAMS, 1);
  });
  it('takes coils in series apart into one', () => {
    const twice = { ...QUINCE, reOhm: 7.2, leMh: 4.4 };
    const { figures } = read(null, { reOhm: 7.2, sdCm2: 340, coils: 2, wiring: 'series' }, twice);
    expect(figures.reOhm).toBeCloseTo(3.6, 3);
    expect(figures.leMh).toBeCloseTo(1.1, 3);
    expect(figures.qes).toBeCloseTo(0.52, 3);
  });
  it('halves the electrical Q of one coil of two', () => {
    const { figures } = read(null, { ...BENCH, coils: 2, wiring: 'single' }, { ...QUINCE, qes: 1.04 });
    expect(figures.qes).toBeCloseTo(0.52, 3);
  });
  it('warns of a second resonance too near the first', () => {
    const small: SecondSweep = {
      by: 'added-mass',
      addedGrams: 5,
      columns: freeAirSweep(withMass(QUINCE, 5)),
    };
    expect(read(small).cautions).toContainEqual(expect.objectContaining({ code: 'little-shift' }));
  });
  it('refuses a second sweep that moved the wrong way', () => {
    const wrong: SecondSweep = { by: 'added-mass', addedGrams: 60, columns: freeAirSweep(onBox(QUINCE, 40)) };
    expect(driverFromSweeps(freeAirSweep(QUINCE), wrong, BENCH)).toMatchObject({
      refusal: { field: 'second' },
    });
  });
  it('refuses a resistance above the lowest impedance', () => {
    const answer = driverFromSweeps(freeAirSweep(QUINCE), null, { ...BENCH, reOhm: 5 });
    expect(answer).toMatchObject({ refusal: { field: 'bench.reOhm', got: 5 } });
  });
  it('refuses a sweep that begins above the resonance', () => {
    const answer = driverFromSweeps(freeAirSweep(QUINCE, { lowHz: 45 }), null, BENCH);
    expect(answer).toMatchObject({ refusal: { field: 'freeAir' } });
  });
  it('answers the same each time', () => {
    expect(read(massSweep(0.01), BENCH, QUINCE, 0.01)).toEqual(read(massSweep(0.01), BENCH, QUINCE, 0.01));
  });
});

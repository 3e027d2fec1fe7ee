import { describe, expect, it } from 'vitest';
import { CLOSED_INPUT as input, QUINCE_FACTS as quince, soundResultOf } from './sound-fixture.ts';
import { soundSheet } from './sound-sheet.ts';

const resultOf = (changes: Partial<typeof input> = {}) => soundResultOf({ ...input, ...changes });

describe('the sound sheet', () => {
  it('agrees with the worked example of a ten-inch driver in 30 litres', () => {
    const result = resultOf();
    expect(result.alpha).toBeCloseTo(1.6, 6);
    expect(result.fcHz).toBeCloseTo(47.567, 3);
    expect(result.rdcOhm).toBeCloseTo(3.6, 9);
    expect(result.driveVolts).toBeCloseTo(Math.sqrt(300 * 3.6), 9);
  });
  it('reaches lower in a car than outdoors', () => {
    const outdoors = resultOf({ cabin: 'none' });
    const inCar = resultOf();
    expect(inCar.cabinLongestM).toBe(2.5);
    expect(inCar.reachesHz ?? 0).toBeLessThan(outdoors.reachesHz ?? 0);
  });
  it('raises system Q and corner as the box shrinks', () => {
    const [large, small] = [resultOf(), resultOf({ targetNet: { litres: 15, typed: '15' } })];
    expect(small.qtc ?? 0).toBeGreaterThan(large.qtc ?? 0);
    expect(small.fcHz ?? 0).toBeGreaterThan(large.fcHz ?? 0);
  });
  it('halves the load of two drivers side by side and doubles it in series', () => {
    expect(resultOf({ count: 2 }).rdcOhm).toBeCloseTo(1.8, 9);
    expect(resultOf({ count: 2, seriesPerString: 2 }).rdcOhm).toBeCloseTo(7.2, 9);
  });
  it('says below where the cone runs out of travel', () => {
    const loud = resultOf({ drive: { watts: 1_000, typed: '1000' } });
    expect(loud.travelBelowHz).not.toBeNull();
    expect(resultOf({ drive: { watts: 1, typed: '1' } }).travelBelowHz).toBeNull();
  });
  it('names what is missing', () => {
    const outcome = soundSheet.compute(soundSheet.emptyInput(), { driver: null, longestCabinM: null }, {});
    expect(outcome).toMatchObject({
      state: 'incomplete',
      missing: [{ field: 'driverId' }, { field: 'targetNet' }, { field: 'drive' }],
    });
  });
  it('refuses strings that do not come out even', () => {
    const outcome = soundSheet.compute({ ...input, count: 3, seriesPerString: 2 }, quince, {});
    expect(outcome).toMatchObject({ state: 'refused', refusals: [{ field: 'seriesPerString' }] });
  });
  it('refuses coil wiring of a driver with one coil', () => {
    const outcome = soundSheet.compute({ ...input, coilWiring: 'parallel' }, quince, {});
    expect(outcome).toMatchObject({ state: 'refused', refusals: [{ field: 'coilWiring' }] });
  });
  it('survives storage as JSON unchanged', () => {
    const result = resultOf();
    expect(JSON.parse(JSON.stringify(result))).toEqual(result);
  });
});

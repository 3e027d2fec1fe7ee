import { driverFiguresSchema } from '@gusset/contracts/records';
import type { SoundFacts } from '@gusset/contracts/sound';
import { describe, expect, it } from 'vitest';
import { soundSheet } from './sound-sheet.ts';

/** Quince Q-10 of the acoustics reference: sealed 30.0 L gives alpha 1.6, fc 47.567 Hz, Qtc 0.75332 without losses. */
const quince: SoundFacts = {
  longestCabinM: 2.5,
  driver: {
    id: '00000000-0000-7000-8000-000000000010',
    name: 'Quince Q-10',
    figures: driverFiguresSchema.parse({
      dataSheet: {
        fsHz: 29.5,
        qms: 4.6,
        qes: 0.52,
        vasLitres: 48,
        sdCm2: 340,
        reOhm: 3.6,
        leMh: 0,
        xmaxMm: 11,
        peWatts: 300,
      },
      overallDiaMm: 269,
      cutoutDiaMm: 236,
      mountingDepthMm: 141,
    }),
  },
};
const input = {
  ...soundSheet.emptyInput(),
  driverId: '00000000-0000-7000-8000-000000000010',
  drive: { watts: 300, typed: '300' },
  targetNet: { litres: 30, typed: '30' },
};

function resultOf(changes: Partial<typeof input> = {}, facts = quince) {
  const outcome = soundSheet.compute({ ...input, ...changes }, facts, {});
  if (outcome.state !== 'ready') throw new Error(JSON.stringify(outcome));
  return outcome.result;
}

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

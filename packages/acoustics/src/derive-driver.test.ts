import type { DriverDataSheetInput } from '@gusset/contracts/acoustics';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { medlar12Dual } from '../truth/drivers.ts';
import { deriveDriver } from './derive-driver.ts';
import { driverElements } from './driver-elements.ts';

function derived(sheet: DriverDataSheetInput) {
  const found = deriveDriver(sheet);
  if (isRefusal(found)) throw new Error(JSON.stringify(found.refusal));
  return found;
}

const six = { fsHz: 29.5, qms: 4.6, qes: 0.52, vasLitres: 48, sdCm2: 340, reOhm: 3.6 };

/** Every linked figure of the dual-coil driver, consistent to rounding. */
function fullSheet() {
  const { fsHz, qms, qes, vasLitres, sdCm2, reOhm } = medlar12Dual;
  const elements = driverElements(medlar12Dual);
  return {
    fsHz,
    qms,
    qes,
    vasLitres,
    sdCm2,
    reOhm,
    qts: elements.qts,
    mmsGrams: elements.mmsKg * 1e3,
    cmsMmPerN: elements.cmsMPerN * 1e3,
    rmsNsPerM: elements.rmsNsPerM,
    blTm: elements.blTm,
  };
}

describe('deriveDriver', () => {
  it('derives mass, compliance, losses and force factor of the worked example', () => {
    const found = derived(six);
    const values = Object.fromEntries(found.derived.map(({ field, value }) => [field, value]));
    expect(values.mmsGrams).toBeCloseTo(99.439, 3);
    expect(values.cmsMmPerN).toBeCloseTo(0.29271, 5);
    expect(values.rmsNsPerM).toBeCloseTo(4.0068, 4);
    expect(values.blTm).toBeCloseTo(11.2961, 4);
    expect(values.qts).toBeCloseTo(0.46719, 5);
    expect(found.contradictions).toEqual([]);
    expect(found.takenAsZero).toEqual(['leMh', 'displacementLitres']);
  });

  it('finds the same driver from mass, compliance, losses and force factor alone', () => {
    const { mmsGrams, cmsMmPerN, rmsNsPerM, blTm, sdCm2, reOhm } = fullSheet();
    const { driver } = derived({ mmsGrams, cmsMmPerN, rmsNsPerM, blTm, sdCm2, reOhm, coils: 2 });
    expect(driver.fsHz).toBeCloseTo(medlar12Dual.fsHz, 9);
    expect(driver.qms).toBeCloseTo(medlar12Dual.qms, 9);
    expect(driver.qes).toBeCloseTo(medlar12Dual.qes, 9);
    expect(driver.vasLitres).toBeCloseTo(medlar12Dual.vasLitres, 9);
  });

  it('finds the same driver from any six figures that suffice', () => {
    const sheet = fullSheet();
    let sufficient = 0;
    fc.assert(
      fc.property(fc.subarray(Object.keys(sheet), { minLength: 6, maxLength: 8 }), (fields) => {
        const some = Object.fromEntries(Object.entries(sheet).filter(([field]) => fields.includes(field)));
        const found = deriveDriver({ ...some, coils: 2 });
        if (isRefusal(found)) {
          expect(found.refusal.got).toBeNull();
          return;
        }
        sufficient++;
        for (const field of ['fsHz', 'qms', 'qes', 'vasLitres', 'sdCm2', 'reOhm'] as const) {
          expect(found.driver[field] / medlar12Dual[field]).toBeCloseTo(1, 9);
        }
        expect(found.contradictions).toEqual([]);
      }),
      { numRuns: 400, seed: 7 },
    );
    expect(sufficient).toBeGreaterThan(150);
  });

  it('lists a mass 10 % off with both values and the percent, and keeps the six', () => {
    const found = derived({ ...six, mmsGrams: 99.43917 * 1.1 });
    expect(found.driver.fsHz).toBe(29.5);
    expect(found.contradictions).toEqual([
      {
        field: 'mmsGrams',
        given: 99.43917 * 1.1,
        implied: expect.closeTo(99.439, 3),
        percent: expect.closeTo(10, 3),
      },
    ]);
  });

  it('lets 4 % pass', () => {
    expect(derived({ ...six, blTm: 11.2961 * 0.96 }).contradictions).toEqual([]);
  });

  it('says which figure is missing and what would do instead', () => {
    const found = deriveDriver({ fsHz: 30, qms: 4, vasLitres: 50, sdCm2: 340, reOhm: 3.6 });
    expect(isRefusal(found) && found.refusal).toMatchObject({
      field: 'qes',
      allowed: expect.stringContaining('qts with qms'),
      got: null,
    });
  });

  it('refuses a total Q above one of its parts', () => {
    const { qes: _, ...open } = six;
    const found = deriveDriver({ ...open, qts: 4.7 });
    expect(isRefusal(found) && found.refusal).toMatchObject({ field: 'qts', got: 4.7 });
  });

  it('refuses a Q of 0 and a Vas of 0 with their ranges', () => {
    for (const field of ['qes', 'vasLitres'] as const) {
      const found = deriveDriver({ ...six, [field]: 0 });
      expect(isRefusal(found) && found.refusal).toMatchObject({ field, got: 0 });
    }
  });
});

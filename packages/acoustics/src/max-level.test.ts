import type { SoundSystemInput } from '@gusset/contracts/acoustics';
import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TRUTH_CASES } from '../truth/cases.ts';
import { quince10 } from '../truth/drivers.ts';
import { REFERENCE_AIR } from './air.ts';
import { levelsAtDrives, solveResponse } from './response.ts';

function answered(input: SoundSystemInput) {
  const result = solveResponse(input);
  if (isRefusal(result)) throw new Error(JSON.stringify(result.refusal));
  return result;
}

const closed: SoundSystemInput = {
  frequenciesHz: [20, 30],
  source: { voltageVrms: 1 },
  driver: quince10,
  enclosure: { kind: 'closed', chamber: { netLitres: 30 } },
};

function caseOf(id: string): SoundSystemInput {
  const found = TRUTH_CASES.find((truthCase) => truthCase.id === id);
  if (found === undefined) throw new Error(`no case ${id}`);
  return found.input;
}

describe('the loudest level', () => {
  it('is that of the air which the cone can move, where travel limits', () => {
    // p = rho w² Vd / (2 √2 pi r), Vd = Sd Xmax
    const { maxSplDb, maxSplLimit } = answered(closed);
    const movedM3 = 0.034 * 0.011;
    for (const [i, frequencyHz] of closed.frequenciesHz.entries()) {
      const omega = 2 * Math.PI * frequencyHz;
      const pressurePa = (REFERENCE_AIR.densityKgPerM3 * omega ** 2 * movedM3) / (2 * Math.SQRT2 * Math.PI);
      expect(maxSplDb?.[i]).toBeCloseTo(20 * Math.log10(pressurePa / 20e-6), 9);
      expect(maxSplLimit?.[i]).toBe('excursion');
    }
  });

  it('is that of the rated power, where heat limits', () => {
    const { maxSplDb, maxSplLimit, splDb } = answered({ ...closed, frequenciesHz: [120] });
    expect(maxSplLimit).toEqual(['thermal']);
    expect((maxSplDb?.[0] ?? 0) - (splDb[0] ?? 0)).toBeCloseTo(10 * Math.log10(300 * 3.6), 9);
  });

  it('counts the power of all drivers at the resistance of their array', () => {
    const array = { count: 4, seriesPerString: 2, parallelStrings: 2 };
    const four = answered({ ...closed, frequenciesHz: [120], array });
    expect((four.maxSplDb?.[0] ?? 0) - (four.splDb[0] ?? 0)).toBeCloseTo(10 * Math.log10(4 * 300 * 3.6), 9);
  });

  it('is the same at any voltage', () => {
    const quiet = answered(closed).maxSplDb ?? [];
    const full = answered({ ...closed, source: { voltageVrms: 37 } }).maxSplDb ?? [];
    expect(full).toEqual(quiet);
  });

  it('is held by the radiators where they run out of travel first', () => {
    const input = caseOf('passive-radiators');
    if (input.enclosure.kind !== 'passive-radiator') throw new Error('not a radiator case');
    const radiator = { ...input.enclosure.radiator, xmaxMm: 2 };
    const tight = answered({ ...input, enclosure: { ...input.enclosure, radiator } });
    const free = answered({
      ...input,
      enclosure: { ...input.enclosure, radiator: { ...radiator, xmaxMm: null } },
    });
    const held = tight.maxSplLimit
      ?.map((cause, i) => ({ cause, i }))
      .filter(({ cause }) => cause === 'radiator-excursion');
    expect(held?.length).toBeGreaterThan(3);
    expect(free.maxSplLimit).not.toContain('radiator-excursion');
    for (const { i } of held ?? []) {
      const travelMm = tight.radiatorExcursionMm?.[i] ?? Number.NaN;
      expect((tight.maxSplDb?.[i] ?? 0) - (tight.splDb[i] ?? 0)).toBeCloseTo(
        20 * Math.log10(2 / travelMm),
        9,
      );
    }
  });

  it('is held by whichever cone of a pair travels further', () => {
    const pair = answered({ ...caseOf('isobaric-parallel-closed'), driver: { ...quince10, peWatts: null } });
    for (const [i, cause] of (pair.maxSplLimit ?? []).entries()) {
      const [outer, inner] = [pair.excursionMm[i] ?? 0, pair.innerExcursionMm?.[i] ?? 0];
      expect(cause).toBe(outer >= inner ? 'excursion' : 'inner-excursion');
    }
    expect(pair.maxSplLimit).toHaveLength(pair.frequenciesHz.length);
  });

  it("is held by the amplifier's volts below the rated power, and by the rated power above", () => {
    const at = (maxVoltageVrms: number) =>
      answered({ ...closed, frequenciesHz: [120], source: { voltageVrms: 1, maxVoltageVrms } });
    const thermalVolts = Math.sqrt(300 * 3.6);
    const held = at(20);
    expect(held.maxSplLimit).toEqual(['amplifier-voltage']);
    expect((held.maxSplDb?.[0] ?? 0) - (held.splDb[0] ?? 0)).toBeCloseTo(20 * Math.log10(20), 9);
    const free = at(1.01 * thermalVolts);
    expect(free.maxSplLimit).toEqual(['thermal']);
    expect(free.drives.at(-1)).toMatchObject({
      drive: 'full-power',
      voltageVrms: expect.closeTo(thermalVolts, 9),
    });
    expect(held.drives.at(-1)).toMatchObject({ drive: 'full-power', voltageVrms: 20 });
  });

  it("is held by the amplifier's amperes where the load is low, at exactly those amperes", () => {
    const input = { ...closed, frequenciesHz: [12, 47.6, 300], driver: { ...quince10, xmaxMm: null } };
    const { maxSplDb, maxSplLimit, splDb, currentArms } = answered({
      ...input,
      source: { voltageVrms: 1, maxCurrentArms: 5 },
    });
    expect(maxSplLimit).toEqual(['amplifier-current', 'thermal', 'amplifier-current']);
    for (const i of [0, 2]) {
      const louder = 10 ** (((maxSplDb?.[i] ?? 0) - (splDb[i] ?? 0)) / 20);
      expect(louder * (currentArms[i] ?? 0)).toBeCloseTo(5, 9);
    }
  });

  it('never rises with another limit', () => {
    const limit = fc.option(fc.double({ min: 0.1, max: 60, noNaN: true }));
    fc.assert(
      fc.property(
        fc.constantFrom(...TRUTH_CASES),
        limit,
        limit,
        ({ input }, maxVoltageVrms, maxCurrentArms) => {
          const free = answered(input).maxSplDb ?? [];
          const held = answered({ ...input, source: { ...input.source, maxVoltageVrms, maxCurrentArms } });
          for (const [i, db] of free.entries()) expect(held.maxSplDb?.[i]).toBeLessThanOrEqual(db);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('the compared drives', () => {
  it('are one watt into the direct-current load, the voltage asked for, and full power', () => {
    const result = answered({ ...closed, source: { voltageVrms: 6 } });
    const [one, given, full] = levelsAtDrives(result);
    expect(one).toMatchObject({ drive: 'one-watt', voltageVrms: Math.sqrt(3.6) });
    expect(given).toMatchObject({ drive: 'given', voltageVrms: 6, splDb: result.splDb });
    expect(full).toMatchObject({ drive: 'full-power', voltageVrms: expect.closeTo(Math.sqrt(1_080), 9) });
    const alone = answered({ ...closed, source: { voltageVrms: Math.sqrt(3.6) } });
    for (const [i, db] of alone.splDb.entries()) expect(one?.splDb[i]).toBeCloseTo(db, 9);
    // 300 W over 1 W
    expect((full?.splDb[0] ?? 0) - (one?.splDb[0] ?? 0)).toBeCloseTo(10 * Math.log10(300), 9);
  });

  it('have no full power where neither heat nor volts are stated', () => {
    const { drives } = answered({ ...closed, driver: { ...quince10, peWatts: null } });
    expect(drives.map(({ drive }) => drive)).toEqual(['one-watt', 'given']);
  });
});

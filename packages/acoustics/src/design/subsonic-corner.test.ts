import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { medlar12, quince10 } from '../../truth/drivers.ts';
import { frequencyGrid } from '../frequency-grid.ts';
import { solveResponse } from '../response.ts';
import { subsonicCorner } from './subsonic-corner.ts';

const vented = (voltageVrms: number) =>
  ({
    source: { voltageVrms },
    driver: medlar12,
    enclosure: {
      kind: 'vented',
      chamber: { netLitres: 55, ql: 7 },
      port: {
        mouth: { shape: 'round', diameterMm: 150 },
        outerEnd: { kind: 'flanged' },
        innerEnd: { kind: 'free' },
        sizing: { by: 'tuning', tuningHz: 31 },
      },
    },
  }) as const;
const closed = (voltageVrms: number) =>
  ({
    source: { voltageVrms },
    driver: quince10,
    enclosure: { kind: 'closed', chamber: { netLitres: 30 } },
  }) as const;

function corner(...args: Parameters<typeof subsonicCorner>) {
  const found = subsonicCorner(...args);
  if (isRefusal(found)) throw new Error(JSON.stringify(found.refusal));
  return found;
}

function travelMm(system: object, frequenciesHz: readonly number[]): readonly number[] {
  const result = solveResponse({ ...vented(1), ...system, frequenciesHz: [...frequenciesHz] });
  if (isRefusal(result)) throw new Error(result.refusal.why);
  return result.excursionMm;
}

describe('subsonicCorner', () => {
  it('brings the cone of a vented box just within its travel below the tuning', () => {
    for (const order of [2, 4] as const) {
      const system = vented(26);
      const found = corner({ system, order });
      if (found.code !== 'suggested') throw new Error(found.code);
      const below = frequencyGrid({ lowHz: 3, highHz: found.runsOutBelowHz, count: 400 });
      const farthest = Math.max(...travelMm({ ...system, filters: [found.filter] }, below));
      expect(farthest).toBeLessThan(14.01);
      expect(farthest).toBeGreaterThan(13.9);
      expect(travelMm(system, [found.runsOutBelowHz])[0]).toBeCloseTo(14, 1);
      expect(found.cornerHz).toBeLessThan(31);
      expect(found.lowCornerAfterHz).toBeGreaterThanOrEqual(found.lowCornerBeforeHz);
    }
  });

  it('costs what the filter takes', () => {
    const found = corner({ system: vented(26), order: 4, heardHz: [30, 60] });
    if (found.code !== 'suggested') throw new Error(found.code);
    const [at30, at60] = found.costs;
    // Butterworth of order 4: -10 log10(1 + (fc/f)^8).
    expect(at30?.db).toBeCloseTo(-10 * Math.log10(1 + (found.cornerHz / 30) ** 8), 9);
    expect(at60?.db).toBeGreaterThan(-0.05);
  });

  it('needs a lower corner with four poles than with two, and a higher one with more voltage', () => {
    const at = (volts: number, order: 2 | 4) => {
      const found = corner({ system: vented(volts), order });
      return found.code === 'suggested' ? found.cornerHz : 0;
    };
    expect(at(30, 4)).toBeGreaterThan(at(25, 4));
    expect(at(30, 2)).toBeGreaterThan(at(25, 2));
  });

  it('says so where nothing runs out', () => {
    expect(corner({ system: closed(10) })).toMatchObject({
      code: 'not-needed',
      worst: { part: 'cone', limitMm: 11 },
    });
  });

  it('says so where a vented box only runs out above its tuning, and at which voltage it does not', () => {
    const system = {
      ...vented(20),
      filters: [{ kind: 'highpass', alignment: 'butterworth', order: 8, cornerHz: 31 }],
      driver: { ...medlar12, xmaxMm: 4 },
    } as const;
    const found = corner({ system });
    if (found.code !== 'turn-down') throw new Error(found.code);
    const held = { ...system, source: { voltageVrms: found.mostVrms } };
    expect(travelMm(held, [found.worst.frequencyHz])[0]).toBeCloseTo(4, 9);
  });

  it('says so where only a corner above the highest would do', () => {
    const loud = closed(400);
    expect(corner({ system: loud, highestCornerHz: 500 }).code).toBe('suggested');
    expect(corner({ system: loud, highestCornerHz: 40 }).code).toBe('turn-down');
  });

  it('watches passive radiators beside the cones', () => {
    const found = corner({
      system: {
        source: { voltageVrms: 25 },
        driver: medlar12,
        enclosure: {
          kind: 'passive-radiator',
          chamber: { netLitres: 55, ql: 10 },
          radiator: {
            count: 1,
            fsHz: 20,
            qms: 8,
            vasLitres: 120,
            sdCm2: 500,
            addedMassGrams: 100,
            xmaxMm: 6,
          },
        },
      },
    });
    expect(found).toMatchObject({ worst: { part: 'radiator', limitMm: 6 } });
  });

  it('refuses a driver of unknown travel', () => {
    const found = subsonicCorner({ system: { ...closed(30), driver: { ...quince10, xmaxMm: null } } });
    expect(isRefusal(found) && found.refusal.field).toBe('system.driver.xmaxMm');
  });

  it('keeps any closed box within its travel where it ran out, at any voltage', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 400, noNaN: true }),
        fc.constantFrom(2 as const, 4 as const),
        (volts, order) => {
          const system = closed(volts);
          const found = corner({ system, order });
          if (found.code !== 'suggested') return;
          const below = frequencyGrid({ lowHz: 3, highHz: found.runsOutBelowHz, count: 60 });
          const farthest = Math.max(...travelMm({ ...system, filters: [found.filter] }, below));
          expect(farthest).toBeLessThan(11.02);
        },
      ),
      { numRuns: 40 },
    );
  });
});

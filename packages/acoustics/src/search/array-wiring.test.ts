import type { SearchDriver } from '@gusset/contracts/acoustics';
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { generatedDrivers } from '../../bench/generated-catalogue.ts';
import { arrayResistanceOhm } from '../circuit-q.ts';
import { solveResponse } from '../response.ts';
import { bestWiring, wiringsOf } from './array-wiring.ts';

function driverWith(coils: 1 | 2, nominalOhm: number | null = 4): SearchDriver {
  const [first] = generatedDrivers(1, 5);
  if (first === undefined) throw new Error('one driver was asked for');
  return { ...first, nominalOhm, parameters: { ...first.parameters, coils, reOhm: 3.2 } };
}

const POWER = [
  { loadOhm: 4, watts: 300 },
  { loadOhm: 2, watts: 500 },
  { loadOhm: 1, watts: 800 },
];

describe('bestWiring', () => {
  it('takes the wiring with the most watts', () => {
    const wired = bestWiring(driverWith(2), 2, POWER);
    expect(wired?.array).toMatchObject({ coilWiring: 'parallel', seriesPerString: 1, parallelStrings: 2 });
    expect(wired?.loadOhm).toBe(1);
    expect(wired?.watts).toBeCloseTo(800, 9);
  });
  it('goes no lower than the amplifier takes', () => {
    expect(bestWiring(driverWith(2), 2, POWER.slice(0, 2))?.loadOhm).toBe(4);
    expect(bestWiring(driverWith(1), 3, [{ loadOhm: 16, watts: 100 }])).toBeNull();
  });
  it('takes the load from the direct-current resistance where none is named', () => {
    expect(bestWiring(driverWith(1, null), 1, POWER)?.loadOhm).toBeCloseTo(4, 9);
  });
});

describe('wiringsOf', () => {
  it('has every even wiring of all coils', () => {
    expect(wiringsOf(driverWith(1), 6).map(({ seriesPerString }) => seriesPerString)).toEqual([1, 2, 3, 6]);
    expect(wiringsOf(driverWith(2), 3)).toHaveLength(4);
  });
  it('changes nothing in the sound at the same watts, so one of them stands for all', () => {
    const driver = driverWith(2);
    const levels = wiringsOf(driver, 4).map((array) => {
      const answer = solveResponse({
        frequenciesHz: [12, 31, 47, 80],
        source: { voltageVrms: Math.sqrt(200 * arrayResistanceOhm(driver.parameters, array)) },
        driver: driver.parameters,
        array,
        enclosure: { kind: 'closed', chamber: { netLitres: 60, ql: 15 } },
      });
      if (isRefusal(answer)) throw new Error(answer.refusal.why);
      return [...answer.splDb, ...answer.excursionMm];
    });
    expect(levels).toHaveLength(6);
    for (const other of levels.slice(1)) {
      other.forEach((value, i) => {
        expect(value).toBeCloseTo(levels[0]?.[i] ?? 0, 8);
      });
    }
  });
});

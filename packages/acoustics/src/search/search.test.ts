import type { SearchAnswer, SearchBrief, SearchDriver } from '@gusset/contracts/acoustics';
import { isRefusal, type Refusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { generatedBrief, generatedDrivers } from '../../bench/generated-catalogue.ts';
import { solveResponse } from '../response.ts';
import { admitDrivers } from './admit-drivers.ts';
import { BAND_START, SEARCH_FREQUENCIES_HZ } from './aims.ts';
import { type BoxGrid, boxesOf } from './box-grid.ts';
import { openBench, tryBox } from './candidate.ts';
import { finishSearch, type SearchPart, type SearchSetting } from './finish-search.ts';
import { searchDrivers, searchPart } from './search.ts';
import { trialOf } from './trial.ts';

/** Coarse, so that fifty exhaustive searches take seconds; `bench/search.bench.ts` proves more of the full one. */
const COARSE: BoxGrid = {
  volumeRatio: 2,
  mostVolumes: 3,
  ventedTuningsHz: [28, 40],
  bandpassTuningsHz: [45, 63],
  rearShares: [0.5],
  portShares: [0.15],
};
const DRIVERS = generatedDrivers(40, 2026);

function run<Answer>(search: Generator<unknown, Answer, void>): Answer {
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
  }
}

function part(brief: SearchBrief, drivers: readonly SearchDriver[], setting: SearchSetting): SearchPart {
  return run(searchPart(brief, drivers, setting));
}

function answered(answer: SearchAnswer | Refusal): SearchAnswer {
  if (isRefusal(answer)) throw new Error(answer.refusal.why);
  return answer;
}

describe('searchPart', () => {
  it('has the winners and the front of solving every design, in fifty briefs', () => {
    let ruledOut = 0;
    let beatenInBand = 0;
    for (let seed = 0; seed < 50; seed++) {
      const brief = generatedBrief(seed);
      const setting = { grid: COARSE, places: 5 };
      const fast = part(brief, DRIVERS, setting);
      const all = part(brief, DRIVERS, { ...setting, usesBounds: false });
      expect(fast.ranked, `ranking of brief ${seed}`).toEqual(all.ranked);
      expect(fast.front, `front of brief ${seed}`).toEqual(all.front);
      expect(all.counts.ruledOut + all.counts.beatenInBand).toBe(0);
      ruledOut += fast.counts.ruledOut;
      beatenInBand += fast.counts.beatenInBand;
    }
    expect(ruledOut).toBeGreaterThan(1_000);
    expect(beatenInBand).toBeGreaterThan(1_000);
  }, 60_000);

  it('has the same answer for drivers in another order, and from two halves put together', () => {
    const brief = generatedBrief(3);
    const setting = { grid: COARSE };
    const whole = finishSearch(brief, DRIVERS, [part(brief, DRIVERS, setting)]);
    const turned = finishSearch(brief, DRIVERS, [part(brief, [...DRIVERS].reverse(), setting)]);
    const halves = [DRIVERS.slice(0, 15), DRIVERS.slice(15)].map((half) => part(brief, half, setting));
    const joined = finishSearch(brief, DRIVERS, halves);
    expect(turned.ranked).toEqual(whole.ranked);
    expect(turned.front).toEqual(whole.front);
    expect(joined.ranked).toEqual(whole.ranked);
    expect(joined.front).toEqual(whole.front);
    expect(joined.counts.designs).toBe(whole.counts.designs);
  });

  it('reports how far it is, up to all designs', () => {
    const search = searchPart(generatedBrief(3), DRIVERS, { grid: COARSE });
    const seen: number[] = [];
    for (;;) {
      const step = search.next();
      if (step.done) {
        expect(step.value.counts.considered).toBe(step.value.counts.designs);
        const { evaluated, beatenInBand, ruledOut, unbuildable } = step.value.counts;
        expect(evaluated + beatenInBand + ruledOut + unbuildable).toBe(step.value.counts.designs);
        break;
      }
      seen.push(step.value.counts.considered);
    }
    expect(seen.length).toBeGreaterThan(3);
    expect(seen).toEqual([...seen].sort((a, b) => a - b));
  });
});

describe('boundLevels', () => {
  it('lies above the solved level at every frequency, for every kind of box', () => {
    for (const seed of [3, 7, 15, 31]) {
      const brief: SearchBrief = { ...generatedBrief(seed), leastOutputDb: null };
      const bench = openBench(brief);
      for (const { driver, wired, limits } of admitDrivers(brief, DRIVERS.slice(0, 25)).admitted) {
        const trial = trialOf(driver, wired, limits);
        for (const kind of brief.kinds) {
          for (const box of boxesOf(kind, brief, COARSE)) {
            tryBox(bench, trial, { box, key: 'one' }, () => true); // fills the bounds and goes no further
            const tried = tryBox(bench, trial, { box, key: 'one' }, null);
            if (typeof tried === 'string') continue;
            const over = SEARCH_FREQUENCIES_HZ.filter(
              (_, i) => (bench.curves.reachDb[i] ?? 0) > (bench.mostDb[i] ?? 0),
            );
            expect(over, `${kind} of ${driver.id}`).toEqual([]);
          }
        }
      }
    }
  });
});

describe('searchDrivers', () => {
  const brief = generatedBrief(7);
  const answer = answered(run(searchDrivers(brief, DRIVERS, { grid: COARSE })));

  it('tells what the circuit itself says of a winner, limits and cabin included', () => {
    const winner = answer.ranked.find(({ kind }) => kind === 'closed') ?? answer.ranked[0];
    const driver = DRIVERS.find(({ id }) => id === winner?.driverId);
    if (winner === undefined || driver === undefined) throw new Error('the search found nothing');
    const solved = solveResponse({
      frequenciesHz: SEARCH_FREQUENCIES_HZ,
      source: { voltageVrms: 1 },
      driver: driver.parameters,
      array: {
        count: winner.count,
        seriesPerString: winner.seriesPerString,
        parallelStrings: winner.count / winner.seriesPerString,
        coilWiring: winner.coilWiring,
      },
      enclosure: winner.enclosure,
      cabin: brief.cabin,
    });
    if (isRefusal(solved)) throw new Error(solved.refusal.why);
    const even = solved.splDb.slice(BAND_START);
    const mean = even.reduce((sum, db) => sum + db, 0) / even.length;
    const deviation = Math.sqrt(even.reduce((sum, db) => sum + (db - mean) ** 2, 0) / even.length);
    expect(winner.deviationDb).toBeCloseTo(deviation, 6);
    const thermalVolts = Math.sqrt(
      Math.min(winner.watts, winner.count * (driver.parameters.peWatts ?? 0)) * solved.figures.rdcOhm,
    );
    const reach = SEARCH_FREQUENCIES_HZ.map((_, i) => {
      const byTravel = (driver.parameters.xmaxMm ?? 0) / (solved.excursionMm[i] ?? 0);
      const byOutlet = 34.32368 / (solved.portSpeedMps?.[i] ?? 1e-9);
      return (solved.splDb[i] ?? 0) + 20 * Math.log10(Math.min(thermalVolts, byTravel, byOutlet));
    }).slice(BAND_START);
    expect(winner.outputDb).toBeCloseTo(reach.reduce((sum, db) => sum + db, 0) / reach.length, 4);
  });

  it('keeps every design within what was asked', () => {
    expect(answer.ranked.length).toBeGreaterThan(5);
    for (const design of [...answer.ranked, ...answer.front]) {
      if (design.kind !== 'infinite-baffle') {
        expect(design.netLitres).toBeGreaterThanOrEqual(brief.net.leastLitres);
        expect(design.netLitres).toBeLessThanOrEqual(brief.net.mostLitres);
      }
      expect(design.count).toBeLessThanOrEqual(brief.mostDrivers);
      expect(design.outputDb).toBeGreaterThanOrEqual(brief.leastOutputDb ?? 0);
      expect(design.costMinor ?? 0).toBeLessThanOrEqual(brief.budgetMinor ?? Number.POSITIVE_INFINITY);
      expect(design.port?.lengthMm ?? 1).toBeGreaterThan(0);
    }
  });

  it('adjusts the winners finely, never for the worse', () => {
    const coarse = part(brief, DRIVERS, { grid: COARSE }).ranked;
    for (const fine of answer.ranked) {
      const start = coarse.find(({ key }) => key === fine.key);
      if (brief.aim === 'deep') expect(fine.lowCornerHz).toBeLessThanOrEqual(start?.lowCornerHz ?? 0);
      if (brief.aim === 'loud') expect(fine.outputDb).toBeGreaterThanOrEqual(start?.outputDb ?? 0);
      if (brief.aim === 'smooth') expect(fine.deviationDb).toBeLessThanOrEqual(start?.deviationDb ?? 0);
    }
  });

  it('counts the drivers that it leaves out by the reason', () => {
    const [first] = DRIVERS;
    if (first === undefined) throw new Error('drivers were generated');
    const asked: SearchBrief = { ...brief, depthMm: 500, budgetMinor: 100_000 };
    const free = { ...first, available: null, costMinor: 1_000, mountingDepthMm: 100 };
    const { leftOut } = answered(
      run(
        searchDrivers(
          asked,
          [
            { ...free, id: 'a', parameters: { ...free.parameters, xmaxMm: null } },
            { ...free, id: 'b', available: 0 },
            { ...free, id: 'c', mountingDepthMm: 501 },
            { ...free, id: 'd', costMinor: null },
            { ...free, id: 'e', costMinor: 100_001 },
            { ...free, id: 'f', nominalOhm: 0.1 },
          ],
          { grid: COARSE },
        ),
      ),
    );
    expect(leftOut).toEqual({
      limitsUnknown: 1,
      noneAvailable: 1,
      tooDeep: 1,
      priceUnknown: 1,
      overBudget: 1,
      loadTooLow: 1,
    });
  });

  it('has an empty answer for an empty catalogue', () => {
    expect(answered(run(searchDrivers(brief, [])))).toMatchObject({ ranked: [], front: [] });
  });

  it('refuses what cannot be, at its field', () => {
    const refused = (change: Partial<SearchBrief>) => {
      const outcome = run(searchDrivers({ ...brief, ...change }, DRIVERS));
      return isRefusal(outcome) ? outcome.refusal.field : null;
    };
    expect(refused({ net: { leastLitres: 50, mostLitres: 20 } })).toBe('net.mostLitres');
    expect(refused({ kinds: [] })).toBe('kinds');
    expect(refused({ power: [] })).toBe('power');
    expect(refused({ mostDrivers: 9 })).toBe('mostDrivers');
    expect(refused({ cabin: { kind: 'shelf', longestM: 3, upperQ: 0.7, lowerHz: 80, lowerQ: 0.7 } })).toBe(
      'cabin.lowerHz',
    );
  });
});

import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { medlar12, quince10 } from '../../truth/drivers.ts';
import { solveResponse } from '../response.ts';
import { bestBox, flattestInCar } from './best-box.ts';
import { highPassDb, secondOrderHighPass } from './high-pass.ts';

const closed = {
  source: { voltageVrms: 20 },
  driver: quince10,
  enclosure: { kind: 'closed', chamber: { netLitres: 30 } },
} as const;
const vented = {
  source: { voltageVrms: 20 },
  driver: medlar12,
  enclosure: {
    kind: 'vented',
    chamber: { netLitres: 55, ql: 7 },
    port: {
      mouth: { shape: 'round', diameterMm: 100 },
      outerEnd: { kind: 'flanged' },
      innerEnd: { kind: 'free' },
      sizing: { by: 'tuning', tuningHz: 31 },
    },
  },
} as const;
const cabin = { kind: 'shelf', longestM: 2.8, upperQ: 0.7, lowerHz: 12, lowerQ: 0.7 } as const;
const litres = { leastLitres: 12, mostLitres: 120 };

function best(...args: Parameters<typeof bestBox>) {
  const found = bestBox(...args);
  if (isRefusal(found)) throw new Error(JSON.stringify(found.refusal));
  return found;
}

describe('bestBox', () => {
  // Small's second-order response by itself, tried at every Q, is an independent way to the same box.
  it('finds the closed box whose second-order response is evenest', () => {
    const found = best({
      system: { ...closed, driver: { ...quince10, leMh: 0 } },
      aim: 'smooth',
      litres: { leastLitres: 10, mostLitres: 300 },
      band: { lowHz: 45, highHz: 500 },
    });
    const band = found.curve.frequenciesHz.filter((frequencyHz) => frequencyHz >= 45);
    const unevenness = (litres: number) => {
      const stiffening = Math.sqrt(1 + 48 / litres);
      const response = secondOrderHighPass(29.5 * stiffening, ((4.6 * 0.52) / (4.6 + 0.52)) * stiffening);
      const levels = band.map((frequencyHz) => highPassDb(response, frequencyHz));
      const mean = levels.reduce((sum, db) => sum + db, 0) / levels.length;
      return Math.sqrt(levels.reduce((sum, db) => sum + (db - mean) ** 2, 0) / levels.length);
    };
    const tried = Array.from({ length: 2_900 }, (_, i) => 10 + i / 10);
    const evenest = tried.reduce((top, next) => (unevenness(next) < unevenness(top) ? next : top));
    expect(found.best.netLitres).toBeCloseTo(evenest, 0);
    expect(found.best.deviationDb).toBeCloseTo(unevenness(evenest), 4);
  });

  it('is at least as good as anything in its trade-off, for every aim and kind', () => {
    for (const system of [closed, { ...vented, cabin }]) {
      const deep = best({ system, aim: 'deep', litres });
      const loud = best({ system, aim: 'loud', litres });
      const smooth = best({ system, aim: 'smooth', litres });
      for (const { tradeOff } of [deep, loud, smooth]) {
        expect(deep.best.lowCornerHz).toBeLessThanOrEqual(
          Math.min(...tradeOff.map((it) => it.lowCornerHz)) + 0.02,
        );
        expect(loud.best.outputDb).toBeGreaterThanOrEqual(
          Math.max(...tradeOff.map((it) => it.outputDb)) - 0.005,
        );
        expect(smooth.best.deviationDb).toBeLessThanOrEqual(
          Math.min(...tradeOff.map((it) => it.deviationDb)) + 0.005,
        );
      }
    }
  });

  it('gives larger volumes that reach at least as deep, each with the tuning that is deepest in it', () => {
    const { tradeOff } = best({ system: vented, aim: 'deep', litres });
    expect(tradeOff.length).toBeGreaterThan(12);
    const corners = tradeOff.map(({ lowCornerHz }) => lowCornerHz);
    for (const [i, corner] of corners.entries()) {
      if (i > 0) expect(corner).toBeLessThan((corners[i - 1] ?? 0) + 0.5);
    }
  });

  it('says of a box what the solver says of it', () => {
    const found = best({ system: { ...vented, cabin }, aim: 'smooth', litres });
    const { netLitres, tuningHz } = found.best;
    if (tuningHz === null) throw new Error('no tuning');
    const result = solveResponse({
      ...vented,
      cabin,
      frequenciesHz: [...found.curve.frequenciesHz],
      enclosure: {
        ...vented.enclosure,
        chamber: { netLitres, ql: 7 },
        port: { ...vented.enclosure.port, sizing: { by: 'tuning', tuningHz } },
      },
    });
    if (isRefusal(result)) throw new Error(result.refusal.why);
    result.splDb.forEach((db, i) => {
      expect(found.curve.splDb[i]).toBeCloseTo(db, 6);
    });
    const band = result.splDb.filter((_, i) => (result.frequenciesHz[i] ?? 0) >= 30);
    const mean = band.reduce((sum, db) => sum + db, 0) / band.length;
    const deviation = Math.sqrt(band.reduce((sum, db) => sum + (db - mean) ** 2, 0) / band.length);
    expect(found.best.deviationDb).toBeCloseTo(deviation, 6);
    expect(result.figures.ports[0]?.lengthMm).toBeCloseTo(found.best.portLengthMm ?? 0, 6);
  });

  it('never shows a port that cannot be built', () => {
    const small = best({
      system: { ...vented, enclosure: { ...vented.enclosure, chamber: { netLitres: 30 } } },
      aim: 'loud',
      litres: { leastLitres: 8, mostLitres: 60 },
      tuning: { leastHz: 25, mostHz: 120 },
    });
    for (const { portLengthMm } of [small.best, ...small.tradeOff]) {
      expect(portLengthMm).toBeGreaterThan(0);
      expect(portLengthMm).toBeLessThanOrEqual(800);
    }
  });

  it('refuses a box of another kind, an upside-down range and a mouth that can tune nothing', () => {
    const baffle = bestBox({
      system: { ...closed, enclosure: { kind: 'infinite-baffle' } },
      aim: 'deep',
      litres,
    });
    expect(isRefusal(baffle) && baffle.refusal.field).toBe('system.enclosure.kind');
    const upside = bestBox({ system: closed, aim: 'deep', litres: { leastLitres: 50, mostLitres: 20 } });
    expect(isRefusal(upside) && upside.refusal.field).toBe('litres.mostLitres');
    const straw = {
      ...vented,
      enclosure: {
        ...vented.enclosure,
        port: { ...vented.enclosure.port, mouth: { shape: 'round', diameterMm: 5 } },
      },
    } as const;
    const none = bestBox({ system: straw, aim: 'deep', litres, tuning: { leastHz: 40, mostHz: 90 } });
    expect(isRefusal(none) && none.refusal.field).toBe('tuning');
  });

  it('answers in finite numbers whatever the driver', () => {
    const driver = fc.record({
      fsHz: fc.double({ min: 5, max: 2_000, noNaN: true }),
      qms: fc.double({ min: 0.1, max: 200, noNaN: true }),
      qes: fc.double({ min: 0.02, max: 100, noNaN: true }),
      vasLitres: fc.double({ min: 0.01, max: 5_000, noNaN: true }),
      xmaxMm: fc.option(fc.double({ min: 0.05, max: 200, noNaN: true })),
      peWatts: fc.option(fc.double({ min: 0.1, max: 20_000, noNaN: true })),
    });
    fc.assert(
      fc.property(
        driver,
        fc.constantFrom('deep' as const, 'loud' as const, 'smooth' as const),
        (parts, aim) => {
          const found = bestBox({ system: { ...vented, driver: { ...medlar12, ...parts } }, aim, litres });
          if (isRefusal(found)) return;
          for (const point of [found.best, found.asGiven, ...found.tradeOff]) {
            for (const value of Object.values(point)) expect(Number.isFinite(value)).toBe(true);
          }
        },
      ),
      { numRuns: 10, seed: 3 },
    );
  });
});

describe('flattestInCar', () => {
  it('beats the box as it stands, by the cabin that is given', () => {
    const found = flattestInCar({ system: { ...closed, cabin }, litres });
    if (isRefusal(found)) throw new Error(found.refusal.why);
    expect(found.best.deviationDb).toBeLessThan(found.asGiven.deviationDb);
  });

  it('takes a measured curve as well, and follows it', () => {
    const rising = (db: number) => ({
      kind: 'curve' as const,
      points: [
        { frequencyHz: 20, gainDb: db },
        { frequencyHz: 100, gainDb: 0 },
      ],
    });
    const flattest = (db: number) => {
      const found = flattestInCar({ system: { ...closed, cabin: rising(db) }, litres });
      if (isRefusal(found)) throw new Error(found.refusal.why);
      return found.best.netLitres;
    };
    // A small box raises the band's upper end beside its lower one: the more the car lifts below, the smaller.
    expect(flattest(16)).toBeLessThan(flattest(10));
  });

  it('refuses a car that is not known', () => {
    const found = flattestInCar({ system: closed, litres });
    expect(isRefusal(found) && found.refusal.field).toBe('system.cabin');
  });
});

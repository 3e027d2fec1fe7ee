import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { medlar12 } from '../../truth/drivers.ts';
import { solveResponse } from '../response.ts';
import { searchDualTuned } from './dual-tuned-search.ts';

const port = {
  mouth: { shape: 'round', diameterMm: 100 },
  outerEnd: { kind: 'flanged' },
  innerEnd: { kind: 'free' },
  sizing: { by: 'tuning', tuningHz: 40 },
} as const;
const system = {
  source: { voltageVrms: 20 },
  driver: medlar12,
  enclosure: {
    kind: 'dual-tuned-bandpass',
    rear: { netLitres: 60, ql: 10 },
    rearPort: port,
    front: { netLitres: 30, ql: 10 },
    frontPort: port,
  },
} as const;
const litres = { leastLitres: 40, mostLitres: 140 };

function search(...args: Parameters<typeof searchDualTuned>) {
  const found = searchDualTuned(...args);
  if (isRefusal(found)) throw new Error(JSON.stringify(found.refusal));
  return found;
}

/** Unevenness and level of a box over 30 to 80 Hz by the solver alone, on the search's own frequencies. */
function scoreOf(
  enclosure: ReturnType<typeof search>['best']['enclosure'],
  frequenciesHz: readonly number[],
) {
  const band = frequenciesHz.filter((frequencyHz) => frequencyHz >= 30);
  const result = solveResponse({ ...system, enclosure, frequenciesHz: band });
  if (isRefusal(result)) throw new Error(result.refusal.why);
  if (result.figures.ports.some(({ buildable, lengthMm }) => !buildable || lengthMm > 800)) return null;
  const mean = result.splDb.reduce((sum, db) => sum + db, 0) / band.length;
  const squares = result.splDb.reduce((sum, db) => sum + (db - mean) ** 2, 0);
  return Math.sqrt(squares / band.length) - 0.1 * mean;
}

describe('searchDualTuned', () => {
  const found = search({ system, litres });

  it('says of its box what the solver says', () => {
    expect(scoreOf(found.best.enclosure, found.curve.frequenciesHz)).toBeCloseTo(found.best.score, 6);
  });

  it('keeps to its ranges', () => {
    const { rearLitres, frontLitres, rearTuningHz, frontTuningHz } = found.best;
    expect(rearLitres + frontLitres).toBeLessThanOrEqual(140 * (1 + 1e-9));
    expect(rearLitres + frontLitres).toBeGreaterThanOrEqual(40 * (1 - 1e-9));
    expect(frontTuningHz / rearTuningHz).toBeGreaterThanOrEqual(1.2 * (1 - 1e-9));
    expect(frontTuningHz / rearTuningHz).toBeLessThanOrEqual(4 * (1 + 1e-9));
  });

  it('is no worse than the best of a grid over all four', () => {
    const steps = [0, 0.25, 0.5, 0.75, 1];
    let best = Number.POSITIVE_INFINITY;
    for (const total of steps.map((s) => 40 * 3.5 ** s)) {
      for (const share of [0.2, 0.35, 0.5, 0.65, 0.8]) {
        for (const rearHz of steps.map((s) => 15 * (80 / 15) ** s)) {
          for (const ratio of [1.3, 1.7, 2, 2.5, 3.2]) {
            const score = scoreOf(
              {
                ...found.best.enclosure,
                rear: { ...found.best.enclosure.rear, netLitres: total * share },
                rearPort: { ...found.best.enclosure.rearPort, sizing: { by: 'tuning', tuningHz: rearHz } },
                front: { ...found.best.enclosure.front, netLitres: total * (1 - share) },
                frontPort: {
                  ...found.best.enclosure.frontPort,
                  sizing: { by: 'tuning', tuningHz: rearHz * ratio },
                },
              },
              found.curve.frequenciesHz,
            );
            if (score !== null) best = Math.min(best, score);
          }
        }
      }
    }
    expect(found.best.score).toBeLessThan(best);
  });

  it('repeats itself for a seed, and comes out alike from others', () => {
    expect(search({ system, litres })).toEqual(found);
    for (const seed of [2, 3, 4]) {
      expect(Math.abs(search({ system, litres, seed }).best.score - found.best.score)).toBeLessThan(0.1);
    }
  });

  it('trades evenness for level as it is told', () => {
    const even = search({ system, litres, levelWeight: 0 });
    const loud = search({ system, litres, levelWeight: 1 });
    expect(even.best.deviationDb).toBeLessThanOrEqual(loud.best.deviationDb);
    expect(loud.best.meanDb).toBeGreaterThanOrEqual(even.best.meanDb);
  });

  it('refuses another kind of box, and mouths that can tune none', () => {
    const closed = { ...system, enclosure: { kind: 'closed', chamber: { netLitres: 30 } } } as const;
    const other = searchDualTuned({ system: closed, litres });
    expect(isRefusal(other) && other.refusal.field).toBe('system.enclosure.kind');
    const straw = { ...port, mouth: { shape: 'round', diameterMm: 5 } } as const;
    const none = searchDualTuned({
      system: { ...system, enclosure: { ...system.enclosure, rearPort: straw, frontPort: straw } },
      litres,
      rearTuning: { leastHz: 40, mostHz: 80 },
    });
    expect(isRefusal(none) && none.refusal.field).toBe('system.enclosure');
  });
});

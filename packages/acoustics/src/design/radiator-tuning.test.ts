import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { medlar12 } from '../../truth/drivers.ts';
import { solveResponse } from '../response.ts';
import { radiatorForTuning } from './radiator-tuning.ts';

const radiator = { count: 2, fsHz: 18, qms: 8, vasLitres: 120, sdCm2: 500, addedMassGrams: 0, xmaxMm: 25 };
const chamber = { netLitres: 50, ql: 15 };

describe('radiatorForTuning', () => {
  it('gives the mass with which the circuit has that tuning and that notch', () => {
    const found = radiatorForTuning({ chamber, radiator, tuningHz: 28 });
    if (isRefusal(found)) throw new Error(found.refusal.why);
    const result = solveResponse({
      frequenciesHz: [found.notchHz, 28, 60],
      source: { voltageVrms: 10 },
      driver: medlar12,
      enclosure: {
        kind: 'passive-radiator',
        chamber,
        radiator: { ...radiator, addedMassGrams: found.addedMassGrams },
      },
    });
    if (isRefusal(result)) throw new Error(result.refusal.why);
    expect(result.figures.tuningHz).toBeCloseTo(28, 9);
    expect(result.figures.radiatorNotchHz).toBeCloseTo(found.notchHz, 9);
    expect(result.splDb[0] ?? 0).toBeLessThan((result.splDb[1] ?? 0) - 15);
  });

  it('finds nothing to add at the highest tuning, and the notch on the bare resonance', () => {
    const free = radiatorForTuning({ chamber, radiator, tuningHz: 25 });
    if (isRefusal(free)) throw new Error(free.refusal.why);
    const bare = radiatorForTuning({ chamber, radiator, tuningHz: free.highestTuningHz });
    expect(bare).toMatchObject({ addedMassGrams: expect.closeTo(0, 9), notchHz: expect.closeTo(18, 9) });
  });

  it('warns of a notch close under the tuning when the radiators are stiff beside the box', () => {
    const stiff = radiatorForTuning({ chamber, radiator: { ...radiator, vasLitres: 20 }, tuningHz: 20 });
    expect(stiff).toMatchObject({ notchNear: true, delta: expect.closeTo(0.8, 9) });
    expect(radiatorForTuning({ chamber, radiator, tuningHz: 28 })).toMatchObject({ notchNear: false });
  });

  it('refuses a tuning above the bare one, and one that takes tons', () => {
    const above = radiatorForTuning({ chamber, radiator, tuningHz: 90 });
    expect(isRefusal(above) && above.refusal).toMatchObject({ field: 'tuningHz', got: 90 });
    const below = radiatorForTuning({
      chamber: { netLitres: 5 },
      radiator: { ...radiator, count: 1, vasLitres: 5 },
      tuningHz: 5,
    });
    expect(isRefusal(below) && below.refusal.allowed).toMatch(/^at least/);
  });
});

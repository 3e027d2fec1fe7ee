import { isRefusal } from '@gusset/units';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quince10 } from '../../truth/drivers.ts';
import { solveResponse } from '../response.ts';
import { symmetricBandpass } from './symmetric-bandpass.ts';

function bandpass(...args: Parameters<typeof symmetricBandpass>) {
  const found = symmetricBandpass(...args);
  if (isRefusal(found)) throw new Error(JSON.stringify(found.refusal));
  return found;
}

/** Level of the circuit beside the same driver on a baffle far above its resonance, dB. */
function levels(box: ReturnType<typeof bandpass>, frequenciesHz: readonly number[]): number[] {
  const shared = { source: { voltageVrms: 1 }, driver: quince10 };
  const flat = solveResponse({ ...shared, frequenciesHz: [9_000], enclosure: { kind: 'infinite-baffle' } });
  const result = solveResponse({
    ...shared,
    frequenciesHz: [...frequenciesHz],
    enclosure: {
      kind: 'single-tuned-bandpass',
      rear: { netLitres: box.rearLitres },
      front: { netLitres: box.frontLitres },
      frontPort: {
        mouth: { shape: 'round', diameterMm: 100 },
        outerEnd: { kind: 'flanged' },
        innerEnd: { kind: 'free' },
        sizing: { by: 'tuning', tuningHz: box.tuningHz },
      },
    },
  });
  if (isRefusal(flat) || isRefusal(result)) throw new Error('refused');
  return result.splDb.map((db) => db - (flat.splDb[0] ?? 0));
}

describe('symmetricBandpass', () => {
  it('has its gain in the middle and -3 dB at its edges, as the circuit says', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 1.2, noNaN: true }),
        fc.double({ min: -2, max: 8, noNaN: true }),
        (shape, gainDb) => {
          const box = symmetricBandpass({ driver: quince10, shape, by: { aim: 'gain', gainDb } });
          if (isRefusal(box)) return;
          const [low = 0, middle = 0, high = 0] = levels(box, [box.lowHz, box.tuningHz, box.highHz]);
          expect(middle).toBeCloseTo(gainDb, 2);
          expect(low - middle).toBeCloseTo(-3.0103, 2);
          expect(high - middle).toBeCloseTo(-3.0103, 2);
        },
      ),
      { numRuns: 30 },
    );
  });

  // Flat (S 0.7071) at 0 dB: chi 1, so Q 0.7071, both chambers alike up to the driver, edges where |f/f0 - f0/f| = 1.
  it('has edges at 0.618 and 1.618 of its middle when it is flat without gain', () => {
    const box = bandpass({ driver: quince10, by: { aim: 'gain', gainDb: 0 } });
    expect(box.qtc).toBeCloseTo(Math.SQRT1_2, 12);
    expect(box.lowHz / box.tuningHz).toBeCloseTo((Math.sqrt(5) - 1) / 2, 9);
    expect(box.highHz / box.tuningHz).toBeCloseTo((Math.sqrt(5) + 1) / 2, 9);
  });

  it('narrows as it gains', () => {
    const band = (gainDb: number) => {
      const { lowHz, highHz } = bandpass({ driver: quince10, by: { aim: 'gain', gainDb } });
      return highHz / lowHz;
    };
    expect(band(3)).toBeLessThan(band(1));
    expect(band(1)).toBeLessThan(band(-1));
  });

  it('puts its middle where it is wanted', () => {
    expect(bandpass({ driver: quince10, by: { aim: 'centre', centreHz: 52 } }).tuningHz).toBeCloseTo(52, 9);
  });

  it('refuses what the free-air driver already exceeds, at its field', () => {
    const low = symmetricBandpass({ driver: quince10, by: { aim: 'centre', centreHz: 25 } });
    expect(isRefusal(low) && low.refusal.field).toBe('by.centreHz');
    const quiet = symmetricBandpass({ driver: quince10, by: { aim: 'gain', gainDb: -12 } });
    expect(isRefusal(quiet) && quiet.refusal.field).toBe('by.gainDb');
  });
});

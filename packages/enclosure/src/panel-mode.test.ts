import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstModeHz, thicknessForModeMm, widestSpanMm } from './panel-mode.ts';

const mdf = (thicknessMm: number, densityKgM3: number) => ({
  stock: { materialId: 'mdf', thicknessMm, densityKgM3, modulusGPa: 2.8, hasGrain: false },
  thicknessMm,
});

describe('firstModeHz', () => {
  // Shop table of square MDF spans, simply supported, E 2.8 GPa: computed apart from this code, whole Hz.
  it.each([
    { thicknessMm: 12, densityKgM3: 745, hz: [554, 355, 246, 181, 139, 89, 62] },
    { thicknessMm: 15, densityKgM3: 715, hz: [693, 443, 308, 226, 173, 111, 77] },
    { thicknessMm: 18, densityKgM3: 720, hz: [831, 532, 369, 271, 208, 133, 92] },
    { thicknessMm: 25, densityKgM3: 700, hz: [1154, 739, 513, 377, 289, 185, 128] },
  ])('agrees with the table for $thicknessMm mm within 3 %', ({ thicknessMm, densityKgM3, hz }) => {
    [200, 250, 300, 350, 400, 500, 600].forEach((spanMm, index) => {
      const found = firstModeHz(mdf(thicknessMm, densityKgM3), spanMm, spanMm);
      expect(Math.abs(found / (hz[index] ?? 0) - 1)).toBeLessThan(0.03); // the table takes one density for all
    });
  });

  it('agrees with the table to the hertz where the densities agree', () => {
    expect(Math.round(firstModeHz(mdf(18, 720), 300, 300))).toBe(369);
  });

  it('reaches the target on the widest span, and at the thickness that it asks for', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 9, max: 30, noNaN: true }),
        fc.double({ min: 150, max: 700, noNaN: true }),
        fc.double({ min: 60, max: 400, noNaN: true }),
        (thicknessMm, upMm, targetHz) => {
          const plate = mdf(thicknessMm, 720);
          const spanMm = widestSpanMm(plate, upMm, targetHz);
          if (spanMm !== null) expect(firstModeHz(plate, spanMm, upMm) / targetHz).toBeCloseTo(1, 9);
          const hz = firstModeHz(plate, 500, upMm);
          const thicker = thicknessForModeMm(plate, hz, targetHz);
          expect(firstModeHz(mdf(thicker, 720), 500, upMm) / targetHz).toBeCloseTo(1, 9);
        },
      ),
      { numRuns: 100, seed: 71 },
    );
  });
});

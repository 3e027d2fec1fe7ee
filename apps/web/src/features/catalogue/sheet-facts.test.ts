import { describe, expect, it } from 'vitest';
import { sheetFacts } from './sheet-facts.ts';

describe('sheetFacts', () => {
  it('weighs a sheet by its calliper reading', () => {
    // 2.440 m x 1.220 m x 17.6 mm x 740 kg/m³ = 38.77 kg, by hand
    const facts = sheetFacts({
      nominalThicknessMm: 18,
      measuredThicknessMm: 17.6,
      lengthMm: 2440,
      widthMm: 1220,
      densityKgPerM3: 740,
    });
    expect(facts.areaM2).toBeCloseTo(2.9768, 4);
    expect(facts.massKg).toBeCloseTo(38.77, 2);
    expect(facts.offMm).toBeCloseTo(-0.4, 6);
    expect(facts.needsTwo).toBe(true);
  });

  it('leaves open what is not typed yet', () => {
    expect(sheetFacts({ nominalThicknessMm: 18, measuredThicknessMm: null })).toEqual({
      offMm: null,
      areaM2: null,
      massKg: null,
      needsTwo: false,
    });
  });
});

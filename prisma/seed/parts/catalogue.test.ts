import { deriveDriver } from '@gusset/acoustics';
import { partFiguresSchemas } from '@gusset/contracts/records';
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { SUPPLIERS } from '../suppliers.ts';
import { FINISHES, SHEETS } from './boards-and-finishes.ts';
import { DRIVERS } from './drivers.ts';
import { AMPLIFIERS, PROCESSORS, SOURCES } from './electronics.ts';
import { HARDWARE, SUPPLIES } from './hardware-and-supplies.ts';

const EVERYTHING = [
  ...DRIVERS,
  ...AMPLIFIERS,
  ...PROCESSORS,
  ...SOURCES,
  ...SHEETS,
  ...FINISHES,
  ...HARDWARE,
  ...SUPPLIES,
];

describe.each(DRIVERS)('the driver $maker $name', ({ figures }) => {
  it('is whole, and no figure contradicts the others', () => {
    const derived = deriveDriver(figures.dataSheet);
    if (isRefusal(derived)) throw new Error(`${derived.refusal.field}: ${derived.refusal.why}`);
    expect(derived.contradictions).toEqual([]);
  });

  it('goes through its cut-out and covers it', () => {
    const { overallDiaMm, cutoutDiaMm, boltCircleDiaMm, magnetDiaMm } =
      partFiguresSchemas.driver.parse(figures);
    expect(magnetDiaMm ?? 0).toBeLessThan(cutoutDiaMm);
    expect(overallDiaMm).toBeGreaterThan(cutoutDiaMm);
    if (boltCircleDiaMm === null) return;
    expect(boltCircleDiaMm).toBeGreaterThan(cutoutDiaMm);
    expect(boltCircleDiaMm).toBeLessThan(overallDiaMm);
  });
});

describe('the catalogue', () => {
  it('sells nothing below what it costs', () => {
    for (const part of EVERYTHING) expect(part.sellPriceMinor).toBeGreaterThan(part.buyPriceMinor);
  });

  it('has each code once', () => {
    const codes = EVERYTHING.map(({ code }) => code);
    expect(new Set(codes).size).toBe(codes.length);
  });

  it('buys from suppliers that the shop knows', () => {
    const known = new Set(SUPPLIERS.map(({ name }) => name));
    expect(EVERYTHING.filter(({ supplier }) => !known.has(supplier))).toEqual([]);
  });

  it('has boards that were measured and boards that were not', () => {
    const measured = SHEETS.map(({ figures }) => (figures.measuredThicknessMm ?? null) !== null);
    expect(measured).toContain(true);
    expect(measured).toContain(false);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { displayStepMm, formatLength, roundedForDrawing } from './index.ts';

const THIN = '\u2009';

describe('formatLength in inches', () => {
  it.each([
    [438.15, `17${THIN}1/4″`],
    [438.5, `17${THIN}1/4″ +0.35 mm`],
    [437.8, `17${THIN}1/4″ −0.35 mm`],
    [25.3, '1″ −0.1 mm'], // never 16/16
    [12.7, '1/2″'],
    [0, '0″'],
    [-6.35, '−1/4″'],
    [438.152, `17${THIN}1/4″`], // 0.002 mm is below what anyone can measure
    [0.79375, '1/16″ −0.79 mm'], // 1/32 in is a tie: up
    [-0.79375, '−1/16″ +0.79 mm'], // mirrored
  ])('shows %d mm as %s', (mm, shown) => {
    expect(formatLength(mm, { unit: 'in' })).toBe(shown);
  });

  it('takes the division the shop set', () => {
    expect(formatLength(9.525, { unit: 'in', denominator: 8 })).toBe('3/8″');
    expect(formatLength(11.509375, { unit: 'in', denominator: 64 })).toBe('29/64″');
    expect(formatLength(11.509375, { unit: 'in', denominator: 32 })).toBe('15/32″ −0.4 mm');
  });

  it('shows decimals of an inch where digits are asked for', () => {
    expect(formatLength(438.15, { unit: 'in', digits: 3 })).toBe('17.250″');
    expect(formatLength(438.15, { unit: 'in', digits: 2, decimalComma: true })).toBe('17,25″');
  });

  it('marks a rounded length on a drawing and leaves an exact one alone', () => {
    expect(formatLength(438.5, { unit: 'in', style: 'drawing' })).toBe(`≈17${THIN}1/4″`);
    expect(formatLength(438.15, { unit: 'in', style: 'drawing' })).toBe(`17${THIN}1/4″`);
  });

  it.each([
    [438.15, '17 and a quarter inches'],
    [438.5, '17 and a quarter inches plus 0.35 millimetres'],
    [9.525, '3 eighths of an inch'],
    [3.175, 'an eighth of an inch'],
    [25.4, '1 inch'],
    [-50.8, 'minus 2 inches'],
    [455.6125, '17 and 15 sixteenths inches'],
  ])('speaks %d mm as "%s"', (mm, spoken) => {
    expect(formatLength(mm, { unit: 'in', style: 'spoken' })).toBe(spoken);
  });
});

describe('formatLength in millimetres', () => {
  it.each([
    [438, '438 mm'],
    [438.15, '438.2 mm'],
    [438.04, '438 mm'],
    [-0.04, '0 mm'],
    [-5.5, '−5.5 mm'],
  ])('shows %d mm as %s', (mm, shown) => {
    expect(formatLength(mm, { unit: 'mm' })).toBe(shown);
  });

  it('leaves the unit to the title block on drawings, and takes a decimal comma and digits', () => {
    expect(formatLength(438.25, { unit: 'mm', style: 'drawing' })).toBe('438.3');
    expect(formatLength(438.25, { unit: 'mm', digits: 2, decimalComma: true })).toBe('438,25 mm');
    expect(formatLength(438.25, { unit: 'mm', style: 'spoken', digits: 0 })).toBe('438 millimetres');
  });
});

describe('formatLength in both units', () => {
  it('puts the other unit in brackets, marked where it is rounded', () => {
    expect(formatLength(438.2, { unit: 'mm', both: true })).toBe(`438.2 mm (≈17${THIN}1/4″)`);
    expect(formatLength(438.15, { unit: 'in', both: true })).toBe(`17${THIN}1/4″ (438.2 mm)`);
    expect(formatLength(254, { unit: 'mm', style: 'spoken', both: true })).toBe('254 millimetres, 10 inches');
  });
});

describe('roundedForDrawing', () => {
  it('splits every length into what is drawn and the rest, mirrored for negative ones', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 5_000_000_000 }),
        fc.constantFrom(8, 16, 32, 64),
        (nm, denominator) => {
          const mm = nm / 1e6;
          const format = { unit: 'in', denominator } as const;
          const drawn = roundedForDrawing(mm, format);
          expect(Math.round((drawn.mm + drawn.restMm) * 1e6)).toBe(nm);
          expect(Math.abs(drawn.restMm)).toBeLessThanOrEqual(displayStepMm(format) / 2);
          const mirrored = roundedForDrawing(-mm, format);
          expect(Math.abs(mirrored.mm)).toBe(drawn.mm);
          expect(Math.abs(mirrored.restMm)).toBe(Math.abs(drawn.restMm));
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('says that 17 1/4 in is exact and 438.5 mm is not', () => {
    expect(roundedForDrawing(438.15, { unit: 'in' })).toEqual({ mm: 438.15, restMm: 0, rounded: false });
    expect(roundedForDrawing(438.5, { unit: 'in' })).toEqual({ mm: 438.15, restMm: 0.35, rounded: true });
  });
});

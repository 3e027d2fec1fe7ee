import { describe, expect, it } from 'vitest';
import { driverFindings } from './driver-findings.ts';

const SHEET = { fsHz: 29.5, qms: 4.6, qes: 0.52, vasLitres: 48, sdCm2: 340, reOhm: 3.6 };

describe('driverFindings', () => {
  it('works out what the sheet leaves out', () => {
    const found = driverFindings(SHEET);
    if (found.kind !== 'whole') throw new Error(found.words);
    // Qts = Qms Qes / (Qms + Qes) = 4.6 x 0.52 / 5.12 = 0.467, by hand
    expect(found.derived.find(({ field }) => field === 'qts')?.text).toBe('0.467');
    expect(found.contradictions).toEqual([]);
    expect(found.takenAsZero).toHaveLength(2);
  });

  it('names a figure that contradicts the others, and by how much', () => {
    const found = driverFindings({ ...SHEET, qts: 0.6 });
    if (found.kind !== 'whole') throw new Error(found.words);
    expect(found.contradictions).toMatchObject([
      { name: 'Qts', text: '0.6', words: 'The other figures say 0.467, so it is 28 % too high.' },
    ]);
  });

  it('says what is still missing as the sheet writes it', () => {
    const found = driverFindings({ fsHz: 30 });
    expect(found).toMatchObject({ kind: 'open' });
    if (found.kind === 'open') {
      expect(found.words).toContain('Qms');
      expect(found.allowed).toContain('Qts');
      expect(found.allowed).not.toContain('rmsNsPerM');
    }
  });
});

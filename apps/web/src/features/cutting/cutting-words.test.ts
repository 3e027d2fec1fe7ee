import { describe, expect, it } from 'vitest';
import { areaBalance, boundWords, holeWords, noteWords, searchWords } from './cutting-words.ts';

const mm = (value: number) => `${value} mm`;

describe('holeWords', () => {
  it('counts openings of one kind and says how deep a blind one goes', () => {
    const bolt = (index: number) => ({
      shape: 'circle' as const,
      purpose: `bolt ${index} of driver 1`,
      centreXMm: index,
      centreYMm: 0,
      diameterMm: 6.5,
      depthMm: null,
    });
    const recess = { ...bolt(1), purpose: 'recess of driver 1', diameterMm: 270, depthMm: 8 };
    expect(holeWords([bolt(1), bolt(2), recess], mm)).toEqual([
      '2 × Ø 6.5 mm bolt',
      'Ø 270 mm recess, 8 mm deep',
    ]);
  });
});

describe('boundWords', () => {
  const totals = {
    fullSheets: 2,
    offcutsUsed: 0,
    costMinor: null,
    sheetMm2: 0,
    partsMm2: 0,
    kerfMm2: 0,
    trimMm2: 0,
    offcutsMm2: 0,
    wasteMm2: 0,
  };
  const layout = { sheets: [], unplacedPartIds: [], totals, iterations: 0 };

  it('says when fewer sheets are impossible, and when they are only unlikely', () => {
    expect(boundWords({ layout: { ...layout, lowerBoundSheets: 2, provenFewest: true } })).toBe(
      '2 sheets, and no layout can do with fewer',
    );
    expect(boundWords({ layout: { ...layout, lowerBoundSheets: 1, provenFewest: false } })).toBe(
      '2 sheets; 1 cannot be ruled out',
    );
  });
});

describe('areaBalance', () => {
  it('shares the whole sheet out', () => {
    const totals = {
      fullSheets: 1,
      offcutsUsed: 0,
      costMinor: null,
      sheetMm2: 2_000_000,
      partsMm2: 1_000_000,
      kerfMm2: 100_000,
      trimMm2: 100_000,
      offcutsMm2: 600_000,
      wasteMm2: 200_000,
    };
    const lines = areaBalance({ totals });
    expect(lines.map(({ percent }) => percent)).toEqual([50, 30, 5, 5, 10]);
    expect(lines.reduce((sum, { areaM2 }) => sum + areaM2, 0)).toBeCloseTo(2, 9);
  });
});

describe('searchWords', () => {
  it('names what got better', () => {
    expect(searchWords([[0, 2, 6, -1]], [[0, 2, 6, -1]], 'fewest-sheets')).toBe('Nothing better found');
    expect(searchWords([[0, 2, 6, -1]], [[0, 1, 3, -1]], 'fewest-sheets')).toBe('Less board than before');
    expect(searchWords([[0, 2, 6, -1]], [[0, 2, 6, -9]], 'fewest-sheets')).toBe(
      'A larger offcut than before',
    );
    expect(searchWords([[2, 0, 0, 0]], [[0, 0, 0, 0]], 'fewest-sheets')).toBe('Room for 2 parts more');
    expect(searchWords([[0, 2, -6, 5]], [[0, 2, -9, 5]], 'largest-offcut')).toBe(
      'A larger offcut than before',
    );
  });
});

describe('noteWords', () => {
  it('leaves thickness to its own field', () => {
    const note = { code: 'thickness-nominal', boardId: 'x', name: 'MDF 18', thicknessMm: 18 } as const;
    expect(noteWords(note, mm)).toBeNull();
    expect(noteWords({ code: 'heavy-sheet', name: 'MDF 18', massKg: 38.58 }, mm)).toBe(
      'A full sheet of MDF 18 weighs 38.6 kg: two people or a panel carrier',
    );
  });
});

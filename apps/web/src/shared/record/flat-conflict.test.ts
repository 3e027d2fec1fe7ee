import { describe, expect, it } from 'vitest';
import { flatDifferences, pathWords, plainWords } from './flat-conflict.ts';

const conflict = (differences: { field: string; yours: unknown; theirs: unknown }[]) => ({
  currentVersion: 3,
  savedBy: 'Mira Ilves',
  savedAt: null,
  differences,
});

describe('flatDifferences', () => {
  it('goes into figures and leaves out what agrees', () => {
    const found = flatDifferences(
      conflict([
        { field: 'name', yours: 'A', theirs: 'B' },
        {
          field: 'figures',
          yours: { cutoutDiaMm: 236, massKg: null, dataSheet: { fsHz: 29, qms: 4 } },
          theirs: { cutoutDiaMm: 240, massKg: null, dataSheet: { fsHz: 30, qms: 4 } },
        },
      ]),
    );
    expect(found).toEqual([
      { path: 'name', yours: 'A', theirs: 'B' },
      { path: 'figures.cutoutDiaMm', yours: 236, theirs: 240 },
      { path: 'figures.dataSheet.fsHz', yours: 29, theirs: 30 },
    ]);
  });

  it('keeps lists whole', () => {
    expect(flatDifferences(conflict([{ field: 'skills', yours: ['saw'], theirs: ['saw', 'trim'] }]))).toEqual(
      [{ path: 'skills', yours: ['saw'], theirs: ['saw', 'trim'] }],
    );
  });
});

describe('words', () => {
  it('say nothing, yes and figures plainly', () => {
    expect([
      plainWords(null),
      plainWords(''),
      plainWords(true),
      plainWords(19.05),
      plainWords(['a', 'b']),
    ]).toEqual(['nothing', 'nothing', 'yes', '19.05', 'a, b']);
    expect(pathWords('figures.cutoutDiaMm')).toBe('Cutout dia mm');
  });
});

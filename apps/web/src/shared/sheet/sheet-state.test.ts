import { describe, expect, it } from 'vitest';
import { type IndexedSheet, neighbours, sheetNumber } from './sheet-state.ts';

const sheet = (number: number, slug: string): IndexedSheet => ({
  number,
  slug,
  name: slug,
  href: `/jobs/2417/${slug}`,
  state: 'empty',
  changes: [],
});
const SET = [sheet(1, 'brief'), sheet(2, 'survey'), sheet(3, 'sound')];

describe('neighbours', () => {
  it('gives the sheets on either side', () => {
    expect(neighbours(SET, 'survey')).toMatchObject({ before: { slug: 'brief' }, after: { slug: 'sound' } });
  });

  it('ends at the first and the last sheet', () => {
    expect(neighbours(SET, 'brief').before).toBeNull();
    expect(neighbours(SET, 'sound').after).toBeNull();
  });

  it('has no neighbours for a sheet that is not in the set', () => {
    expect(neighbours(SET, 'power')).toEqual({ before: null, after: null });
  });
});

describe('sheetNumber', () => {
  it('writes two figures', () => {
    expect([sheetNumber(4), sheetNumber(11)]).toEqual(['04', '11']);
  });
});

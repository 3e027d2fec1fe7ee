import type { SheetKind } from '@gusset/contracts/sheet';
import { describe, expect, it } from 'vitest';
import { type IndexedSheet, neighbours } from './sheet-state.ts';

const sheet = (number: string, kind: SheetKind): IndexedSheet => ({
  kind,
  number,
  title: kind,
  href: `/jobs/2417/${kind}`,
  mark: 'empty',
  changes: [],
});
const SET = [sheet('01', 'brief'), sheet('02', 'survey'), sheet('03', 'sound')];

describe('neighbours', () => {
  it('gives the sheets on either side', () => {
    expect(neighbours(SET, 'survey')).toMatchObject({ before: { kind: 'brief' }, after: { kind: 'sound' } });
  });

  it('ends at the first and the last sheet', () => {
    expect(neighbours(SET, 'brief').before).toBeNull();
    expect(neighbours(SET, 'sound').after).toBeNull();
  });

  it('has no neighbours for a sheet that this person may not read', () => {
    expect(neighbours(SET, 'price')).toEqual({ before: null, after: null });
  });
});

import { describe, expect, it } from 'vitest';
import { searchGroups } from './search-groups.ts';

const NOTHING = { jobs: [], customers: [], vehicles: [], models: [], parts: [] };

describe('searchGroups', () => {
  it('leaves out kinds without a hit', () => {
    expect(searchGroups(NOTHING)).toEqual([]);
  });

  it('leads each hit to its page', () => {
    const id = '01890000-0000-7000-8000-000000000001';
    const groups = searchGroups({
      ...NOTHING,
      jobs: [{ id, number: 2417, title: 'Bass box', detail: 'R. Okafor' }],
      parts: [{ id, kind: 'sheet', title: 'MDF 18', detail: '' }],
    });
    expect(groups.map(({ kind, hits }) => [kind, hits[0]?.href])).toEqual([
      ['Jobs', '/jobs/2417/brief'],
      ['Parts', `/catalogue/sheets/${id}`],
    ]);
  });
});

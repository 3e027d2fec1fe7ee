import { describe, expect, it } from 'vitest';
import { searchGroups } from './search-groups.ts';

const NOTHING = { jobs: [], customers: [], vehicles: [], models: [], parts: [] };

describe('searchGroups', () => {
  it('leaves out kinds without a hit', () => {
    expect(searchGroups(NOTHING)).toEqual([]);
  });

  it('leads each hit to its own page, jobs first', () => {
    const groups = searchGroups({
      ...NOTHING,
      customers: [{ id: 'c1', title: 'R. Okafor', detail: '2 jobs' }],
      jobs: [{ id: 'j1', number: 2417, title: 'Brisk hatch', detail: 'R. Okafor' }],
    });
    expect(groups.map(({ kind }) => kind)).toEqual(['Jobs', 'Customers']);
    expect(groups.flatMap(({ hits }) => hits.map(({ href }) => href))).toEqual([
      '/jobs/2417/brief',
      '/customers/c1',
    ]);
    expect(groups[0]?.hits[0]?.title).toBe('2417 Brisk hatch');
  });

  it('leads a part to its kind', () => {
    const parts = [{ id: 'p1', kind: 'sheet' as const, title: 'MDF 18', detail: '' }];
    expect(searchGroups({ ...NOTHING, parts })[0]?.hits[0]?.href).toBe('/catalogue/sheets/p1');
  });
});

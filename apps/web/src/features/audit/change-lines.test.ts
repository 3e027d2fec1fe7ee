import { describe, expect, it } from 'vitest';
import { actWords, changeLines } from './change-lines.ts';

describe('changeLines', () => {
  it('names only what differs, inside figures too', () => {
    expect(
      changeLines(
        { name: 'A', figures: { a: 1, b: 2 }, notes: '' },
        { name: 'A', figures: { a: 1, b: 3 }, notes: 'new' },
      ),
    ).toEqual([
      { path: 'figures.b', before: '2', after: '3' },
      { path: 'notes', before: '–', after: 'new' },
    ]);
  });

  it('shows all of what was made', () => {
    expect(changeLines(null, { name: 'A', year: null })).toEqual([{ path: 'name', before: '–', after: 'A' }]);
  });

  it('keeps lists together and long texts short', () => {
    const [line] = changeLines({ ids: ['a'] }, { ids: ['a', 'b'] });
    expect(line).toEqual({ path: 'ids', before: '["a"]', after: '["a","b"]' });
    expect(changeLines(null, { text: 'x'.repeat(500) })[0]?.after).toHaveLength(161);
  });
});

describe('actWords', () => {
  it('reads as a sentence', () => {
    expect(actWords('member.role-changed')).toBe('Member role changed');
    expect(actWords('part.driver.made')).toBe('Part driver made');
  });
});

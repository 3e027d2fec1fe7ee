import { describe, expect, it } from 'vitest';
import { changePin, pinOf } from './edit-pins.ts';

const input = {
  pins: [{ taskKey: 'glue', personId: 'p', bayId: null, earliestOn: null }],
  rank: 0,
};

describe('pins', () => {
  it('keeps what was decided before beside what is new', () => {
    expect(changePin(input, 'glue', { earliestOn: '2026-12-01' }).pins).toEqual([
      { taskKey: 'glue', personId: 'p', bayId: null, earliestOn: '2026-12-01' },
    ]);
  });
  it('drops a pin that decides nothing any more', () => {
    expect(changePin(input, 'glue', { personId: null }).pins).toEqual([]);
  });
  it('knows an unpinned task as free', () => {
    expect(pinOf(input, 'cut')).toEqual({ taskKey: 'cut', personId: null, bayId: null, earliestOn: null });
  });
});

import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { formatClock, openMinutes, parseClock } from './clock-time.ts';

describe('parseClock', () => {
  it('reads a time as people write it', () => {
    expect(['8', '8:30', '08.30', '0830', '24:00', '0:05'].map(parseClock)).toEqual([
      480, 510, 510, 510, 1440, 5,
    ]);
  });

  it('refuses what no wall clock shows', () => {
    for (const text of ['', '25:00', '8:75', '24:01', 'noon', '8:3'])
      expect(isRefusal(parseClock(text))).toBe(true);
  });

  it('reads what it writes', () => {
    for (const minute of [0, 5, 480, 750, 1020, 1440]) expect(parseClock(formatClock(minute))).toBe(minute);
  });
});

describe('openMinutes', () => {
  it('adds up the parts of a day', () => {
    expect(
      openMinutes([
        { fromMinute: 480, toMinute: 720 },
        { fromMinute: 750, toMinute: 1020 },
      ]),
    ).toBe(510);
    expect(openMinutes([])).toBe(0);
  });
});

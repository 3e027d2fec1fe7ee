import { describe, expect, it } from 'vitest';
import { demoCalendar } from './demo-calendar.ts';

const calendarAt = (now: string) => demoCalendar(new Date(now), 'Europe/Berlin');

describe('demoCalendar', () => {
  it('takes today once the shop has been open for two hours', () => {
    expect(calendarAt('2026-11-24T09:00:00Z').day(0)).toBe('2026-11-24'); // 10:00 in Berlin
  });

  it('takes the open day before in the early morning and at a weekend', () => {
    expect(calendarAt('2026-11-24T08:59:00Z').day(0)).toBe('2026-11-23');
    expect(calendarAt('2026-11-29T15:00:00Z').day(0)).toBe('2026-11-27');
    expect(calendarAt('2026-11-30T06:00:00Z').day(0)).toBe('2026-11-27');
  });

  it('counts open days only', () => {
    const calendar = calendarAt('2026-11-27T12:00:00Z'); // a Friday
    expect(calendar.day(1)).toBe('2026-11-30');
    expect(calendar.day(-5)).toBe('2026-11-20');
  });

  it('leaves the holidays out', () => {
    expect(calendarAt('2026-12-23T12:00:00Z').day(1)).toBe('2026-12-28');
    expect(calendarAt('2026-12-25T12:00:00Z').day(0)).toBe('2026-12-23');
    expect(calendarAt('2027-01-01T12:00:00Z').day(0)).toBe('2026-12-30');
  });

  it('finds a weekday of the week after, from any day of this one', () => {
    for (const now of ['2026-11-23T06:00:00Z', '2026-11-27T12:00:00Z', '2026-11-29T22:00:00Z']) {
      expect(calendarAt(now).nextWeek(3)).toBe('2026-12-02'); // a Wednesday
    }
  });

  it('reads times by the clock of the shop, in winter and in summer', () => {
    expect(calendarAt('2026-11-24T12:00:00Z').at(0, '08:10').toISOString()).toBe('2026-11-24T07:10:00.000Z');
    expect(calendarAt('2026-07-01T12:00:00Z').at(0, '08:10').toISOString()).toBe('2026-07-01T06:10:00.000Z');
  });

  it('has day 0 behind it by two hours at any moment of the week', () => {
    const start = Date.parse('2026-12-20T00:00:00Z');
    for (let hour = 0; hour < 14 * 24; hour += 1) {
      const now = new Date(start + hour * 3_600_000);
      const calendar = demoCalendar(now, 'Europe/Berlin');
      expect(calendar.at(0, '10:00').getTime()).toBeLessThanOrEqual(now.getTime());
    }
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  addElapsedMinutes,
  daysBetween,
  formatInstant,
  formatShopDate,
  isInstant,
  isShopDate,
  isTimeZone,
  toInstant,
  toShopTime,
  weekdayOf,
} from './index.ts';

describe('shop time', () => {
  it('puts an instant on the wall of the shop, in summer and in winter', () => {
    expect(toShopTime('2026-11-24T23:30:00Z', 'Europe/Berlin')).toEqual({
      date: '2026-11-25',
      time: '00:30',
      weekday: 3,
      minuteOfDay: 30,
      zone: 'Europe/Berlin',
      offsetMinutes: 60,
    });
    expect(toShopTime('2026-07-01T12:00:00Z', 'America/Denver')).toMatchObject({
      time: '06:00',
      offsetMinutes: -360,
    });
  });

  it('moves a skipped clock time on and takes the first of a repeated one', () => {
    // Berlin, 29 March 2026: 02:00 -> 03:00. 25 October 2026: 03:00 -> 02:00.
    expect(toInstant('2026-03-29', '02:30', 'Europe/Berlin')).toBe('2026-03-29T01:30:00Z');
    expect(toInstant('2026-10-25', '02:30', 'Europe/Berlin')).toBe('2026-10-25T00:30:00Z');
    expect(toInstant('2026-11-24', '08:00', 'Europe/Berlin')).toBe('2026-11-24T07:00:00Z');
  });

  it('lets glue set by elapsed time through a clock change', () => {
    const glued = toInstant('2026-10-24', '16:00', 'Europe/Berlin');
    expect(toShopTime(addElapsedMinutes(glued, 24 * 60), 'Europe/Berlin').time).toBe('15:00');
  });

  it('finds the same instant again for any hour of the year', () => {
    const zone = fc.constantFrom(
      'Europe/Berlin',
      'America/New_York',
      'Australia/Lord_Howe',
      'Asia/Kathmandu',
    );
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 8759 }), zone, (hour, where) => {
        const instant = addElapsedMinutes('2026-01-01T00:00:00Z', hour * 60);
        const wall = toShopTime(instant, where);
        const again = toInstant(wall.date, wall.time, where);
        // A repeated hour has two instants; the first is given.
        expect([instant, addElapsedMinutes(instant, -60), addElapsedMinutes(instant, -30)]).toContain(again);
        expect(wall.weekday).toBe(weekdayOf(wall.date));
      }),
      { numRuns: 300 },
    );
  });

  it('tells days, instants and zones from what only looks like them', () => {
    expect(['2026-11-24', '2028-02-29'].every(isShopDate)).toBe(true);
    expect(['2026-02-30', '2026-2-3', '24/11/2026', '2026-11-24T00:00', ''].some(isShopDate)).toBe(false);
    expect(isInstant('2026-11-24T10:00:00Z')).toBe(true);
    expect(['2026-11-24T10:00:00', '2026-11-24', 'now'].some(isInstant)).toBe(false);
    expect(isTimeZone('Europe/Lisbon')).toBe(true);
    expect(['Mars/Base', '+02:00', ''].some(isTimeZone)).toBe(false);
  });

  it('counts calendar days', () => {
    expect(addDays('2026-12-30', 3)).toBe('2027-01-02');
    expect(addDays('2026-03-01', -1)).toBe('2026-02-28');
    expect(daysBetween('2026-11-24', '2026-12-24')).toBe(30);
    expect(daysBetween('2026-12-24', '2026-11-24')).toBe(-30);
    expect(weekdayOf('2026-11-24')).toBe(2);
  });

  it('writes days and instants the locale’s way, without shifting a day', () => {
    expect(formatShopDate('2026-11-24', 'en-GB')).toBe('24 Nov 2026');
    expect(formatShopDate('2026-11-24', 'en-US', 'numeric')).toBe('11/24/2026');
    expect(formatShopDate('2026-11-24', 'de', 'full')).toBe('Dienstag, 24. November 2026');
    const at = '2026-11-24T14:02:00Z';
    expect(formatInstant(at, { zone: 'UTC', locale: 'en-GB', style: 'time' })).toBe('14:02');
    expect(formatInstant(at, { zone: 'UTC', locale: 'en-GB', style: 'time', hour12: true })).toMatch(
      /^2:02\spm$/,
    );
    expect(formatInstant(at, { zone: 'America/Denver', locale: 'en-GB' })).toBe('24 Nov, 7:02');
    const midnight = { zone: 'UTC', locale: 'en-US', style: 'time', hour12: false } as const;
    expect(formatInstant('2026-11-24T00:05:00Z', midnight)).toBe('00:05');
    expect(formatInstant(at, { zone: 'UTC', locale: 'en-GB', style: 'full' })).toContain('Tuesday');
  });
});

import { defaultShopSettings } from '@gusset/contracts/shop';
import { describe, expect, it } from 'vitest';
import { workedMinutesBetween } from './worked-minutes.ts';

/** Monday to Friday 8:00 to 12:00 and 12:30 to 17:00. */
const shop = { timeZone: 'Europe/Berlin', settings: defaultShopSettings('mm') };
const at = (iso: string) => new Date(iso);

describe('workedMinutesBetween', () => {
  it('counts shop minutes of one day, without the break', () => {
    // 09:00 to 13:00 in Berlin (UTC+1): 3 h + 0.5 h
    expect(workedMinutesBetween(at('2026-11-24T08:00:00Z'), at('2026-11-24T12:00:00Z'), shop)).toBe(210);
  });
  it('leaves out the night', () => {
    // Tuesday 16:00 to Wednesday 09:00: 1 h + 1 h
    expect(workedMinutesBetween(at('2026-11-24T15:00:00Z'), at('2026-11-25T08:00:00Z'), shop)).toBe(120);
  });
  it('leaves out a weekend and a closed day', () => {
    const closed = {
      ...shop,
      settings: { ...shop.settings, closedDays: [{ on: '2026-11-30', note: 'inventory' }] },
    };
    // Friday 16:00 to Tuesday 09:00
    expect(workedMinutesBetween(at('2026-11-27T15:00:00Z'), at('2026-12-01T08:00:00Z'), closed)).toBe(120);
  });
  it('is nothing backwards', () => {
    expect(workedMinutesBetween(at('2026-11-25T08:00:00Z'), at('2026-11-24T15:00:00Z'), shop)).toBe(0);
  });
});

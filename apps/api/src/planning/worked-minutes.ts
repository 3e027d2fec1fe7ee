// Shop minutes between two moments: nights, weekends and closed days do not count as work on a running task.
import type { ShopSettings } from '@gusset/contracts/shop';
import { addDays, toShopTime } from '@gusset/units';

/** A task that was left running for longer than this is not worked on; the plan says so by its end. */
const MOST_DAYS = 31;

export function workedMinutesBetween(
  from: Date,
  to: Date,
  shop: { readonly timeZone: string; readonly settings: Pick<ShopSettings, 'weeklyHours' | 'closedDays'> },
): number {
  if (to <= from) return 0;
  const start = toShopTime(from.toISOString(), shop.timeZone);
  const end = toShopTime(to.toISOString(), shop.timeZone);
  const closed = new Set(shop.settings.closedDays.map(({ on }) => on));
  let minutes = 0;
  let day = start.date;
  for (let count = 0; count < MOST_DAYS && day <= end.date; count += 1) {
    const weekday = toShopTime(`${day}T12:00:00Z`, 'UTC').weekday;
    const open = closed.has(day) ? [] : (shop.settings.weeklyHours[weekday - 1] ?? []);
    const first = day === start.date ? start.minuteOfDay : 0;
    const last = day === end.date ? end.minuteOfDay : 24 * 60;
    for (const { fromMinute, toMinute } of open) {
      minutes += Math.max(0, Math.min(last, toMinute) - Math.max(first, fromMinute));
    }
    day = addDays(day, 1);
  }
  return minutes;
}

// When the shop is open and when each person works, as stretches of the planner's grid.
import type { Leave, PlanPerson, ShopCalendar, WeeklyHours } from '@gusset/contracts/planning';
import { dayOfDate, minuteOfDay, type ShopClock, weekdayOfDay } from './shop-clock.ts';

export type Stretches = [number, number][];

/** Open stretches from now to the horizon; an interval that begins or ends between quarter hours is cut inwards. */
export function openStretches(
  clock: ShopClock,
  hours: WeeklyHours,
  closedOn: ReadonlySet<number>,
  horizon: number,
): Stretches {
  const week = [
    hours.monday,
    hours.tuesday,
    hours.wednesday,
    hours.thursday,
    hours.friday,
    hours.saturday,
    hours.sunday,
  ].map((day) =>
    day.map(({ from, until }) => [minuteOfDay(from), minuteOfDay(until)] as const).sort(([a], [b]) => a - b),
  );
  const stretches: Stretches = [];
  const lastDay = clock.dayOf(clock.msAt(horizon));
  for (let day = clock.dayOf(clock.originMs); day <= lastDay; day++) {
    if (closedOn.has(day)) continue;
    for (const [opens, closes] of week[weekdayOfDay(day)] ?? []) {
      const from = Math.max(0, clock.unitAtOrAfter(clock.wallMs(day, opens)));
      const to = Math.min(horizon, clock.unitAtOrBefore(clock.wallMs(day, closes)));
      const last = stretches.at(-1);
      if (from >= to) continue;
      if (last !== undefined && last[1] >= from) last[1] = Math.max(last[1], to);
      else stretches.push([from, to]);
    }
  }
  return stretches;
}

export function closedDays(calendar: ShopCalendar): ReadonlySet<number> {
  return new Set(calendar.closedOn.map(dayOfDate));
}

/** A person's working stretches, with and without leave taken out. */
export function personStretches(
  clock: ShopClock,
  person: PlanPerson,
  calendar: ShopCalendar,
  horizon: number,
): { readonly working: Stretches; readonly withoutLeave: Stretches } {
  const hours = person.hours ?? calendar.weeklyHours;
  const withoutLeave = openStretches(clock, hours, closedDays(calendar), horizon);
  const working = person.leave.reduce((left, leave) => without(left, leaveUnits(clock, leave)), withoutLeave);
  return { working, withoutLeave };
}

function leaveUnits(clock: ShopClock, leave: Leave): readonly [number, number] {
  const fromMs = clock.wallMs(dayOfDate(leave.fromOn), minuteOfDay(leave.fromTime ?? '00:00'));
  const toMs = clock.wallMs(dayOfDate(leave.toOn), minuteOfDay(leave.untilTime ?? '24:00'));
  return [clock.unitAtOrBefore(fromMs), clock.unitAtOrAfter(toMs)];
}

function without(stretches: Stretches, [from, to]: readonly [number, number]): Stretches {
  return stretches.flatMap(([opens, closes]): Stretches => {
    if (to <= opens || from >= closes) return [[opens, closes]];
    const before: Stretches = from > opens ? [[opens, from]] : [];
    return to < closes ? [...before, [to, closes]] : before;
  });
}

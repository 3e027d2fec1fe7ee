// Days and moments of the demo, counted from today in open days of the shop, so that the plan makes sense whenever
// the demo is set up. Day 0 is the latest day on which the shop has been open for two hours.
import { Temporal } from 'temporal-polyfill';

export type DemoCalendar = {
  readonly zone: string;
  /** Now, as the program's clock said when the demo was begun. */
  readonly now: Date;
  /** The open day this many open days from day 0: `2026-11-24`. */
  day(offset: number): string;
  /** A moment of that day by the shop's own clock: `at(-1, '08:10')`. */
  at(offset: number, time: string): Date;
  /** A weekday of the week after today's, 1 = Monday, whether open or not. */
  nextWeek(weekday: number): string;
  /** Days on which the shop is shut although it is no weekend. */
  readonly closedDays: readonly { readonly on: string; readonly note: string }[];
};

const TWO_HOURS_OPEN = Temporal.PlainTime.from('10:00');
const FRIDAY = 5;

export function demoCalendar(now: Date, zone: string): DemoCalendar {
  const here = Temporal.Instant.from(now.toISOString()).toZonedDateTimeISO(zone);
  const closedDays = [here.year - 1, here.year, here.year + 1].flatMap(closedAroundNewYear);
  const closed = new Set(closedDays.map(({ on }) => on));
  const isOpen = (date: Temporal.PlainDate) => date.dayOfWeek <= FRIDAY && !closed.has(date.toString());
  const step = (from: Temporal.PlainDate, days: 1 | -1) => {
    let date = from.add({ days });
    while (!isOpen(date)) date = date.add({ days });
    return date;
  };
  const today = here.toPlainDate();
  const begunToday = isOpen(today) && Temporal.PlainTime.compare(here.toPlainTime(), TWO_HOURS_OPEN) >= 0;
  const dayZero = begunToday ? today : step(today, -1);
  const dateOf = (offset: number) => {
    let date = dayZero;
    for (let left = Math.abs(offset); left > 0; left -= 1) date = step(date, offset < 0 ? -1 : 1);
    return date;
  };
  return {
    zone,
    now,
    closedDays,
    day: (offset) => dateOf(offset).toString(),
    nextWeek: (weekday) => today.add({ days: 7 - today.dayOfWeek + weekday }).toString(),
    at(offset, time) {
      const local = dateOf(offset).toPlainDateTime(Temporal.PlainTime.from(time));
      return new Date(local.toZonedDateTime(zone).epochMilliseconds);
    },
  };
}

function closedAroundNewYear(year: number) {
  return [
    { on: `${year}-12-24`, note: 'Closed for the holidays' },
    { on: `${year}-12-25`, note: 'Closed for the holidays' },
    { on: `${year}-12-26`, note: 'Closed for the holidays' },
    { on: `${year}-12-31`, note: 'Stock-taking, no vehicles' },
    { on: `${year + 1}-01-01`, note: 'New Year' },
  ];
}

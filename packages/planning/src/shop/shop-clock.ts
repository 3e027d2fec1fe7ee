// Between the shop's wall clock and the planner's grid: quarter hours counted from now. Daylight saving is Temporal's
// business; away from the days on which a zone changes its offset, plain arithmetic gives the same answer faster.
import { Temporal } from 'temporal-polyfill';

export const GRID_MINUTES = 15;
const MINUTE_MS = 60_000;
const GRID_MS = GRID_MINUTES * MINUTE_MS;
const DAY_MS = 86_400_000;
/** Further than this from a change of offset, arithmetic is safe: no zone jumps by more than a day. */
const CHANGE_MARGIN_MS = 2 * DAY_MS;
/** Changes of offset looked up; two a year cover twenty years. */
const CHANGES_KNOWN = 40;

export type ShopClock = {
  readonly timeZone: string;
  /** Moment 0 of the grid, ms since 1970: now, rounded up to a quarter hour. */
  readonly originMs: number;
  /** First grid moment at or after this instant; below 0 in the past. */
  unitAtOrAfter(instantMs: number): number;
  /** Last grid moment at or before it. */
  unitAtOrBefore(instantMs: number): number;
  msAt(unit: number): number;
  isoAt(unit: number): string;
  /** The shop's date at a grid moment; midnight belongs to the day it ends. */
  dateEnding(unit: number): string;
  dateOf(instantMs: number): string;
  /** Days since 1970-01-01 of the shop's date at this instant. */
  dayOf(instantMs: number): number;
  /** Instant of a wall time; a time skipped by daylight saving goes on to after the gap. */
  wallMs(day: number, minuteOfDay: number): number;
};

/** Null where nobody knows the zone. */
export function shopClock(nowIso: string, timeZone: string): ShopClock | null {
  const nowMs = Temporal.Instant.from(nowIso).epochMilliseconds;
  const now = zonedOrNull(nowMs, timeZone);
  if (now === null) return null;
  const originMs = Math.ceil(nowMs / GRID_MS) * GRID_MS;
  const offsets = offsetsAround(now);
  const offsetAt = (instantMs: number): number => {
    let offsetMs = offsets.first;
    for (const change of offsets.changes) if (change.atMs <= instantMs) offsetMs = change.offsetMs;
    return offsetMs;
  };
  const dayOf = (instantMs: number) => Math.floor((instantMs + offsetAt(instantMs)) / DAY_MS);
  const dates = remembered(dateOfDay);
  const dateOf = (instantMs: number) => dates(dayOf(instantMs));
  const isoAt = remembered((unit) =>
    Temporal.Instant.fromEpochMilliseconds(originMs + unit * GRID_MS).toString(),
  );
  return {
    timeZone,
    originMs,
    unitAtOrAfter: (instantMs) => Math.ceil((instantMs - originMs) / GRID_MS),
    unitAtOrBefore: (instantMs) => Math.floor((instantMs - originMs) / GRID_MS),
    msAt: (unit) => originMs + unit * GRID_MS,
    isoAt,
    dateEnding: (unit) => dateOf(originMs + unit * GRID_MS - 1),
    dateOf,
    dayOf,
    wallMs(day, minuteOfDay) {
      const wall = day * DAY_MS + minuteOfDay * MINUTE_MS;
      const guess = wall - offsetAt(wall);
      if (offsets.changes.every(({ atMs }) => Math.abs(atMs - guess) > CHANGE_MARGIN_MS)) return guess;
      const time = Temporal.PlainDate.from('1970-01-01').toPlainDateTime().add({ milliseconds: wall });
      return time.toZonedDateTime(timeZone).epochMilliseconds;
    },
  };
}

/** A plan writes the same few moments again and again. */
function remembered(write: (key: number) => string): (key: number) => string {
  const written = new Map<number, string>();
  return (key) => {
    const text = written.get(key) ?? write(key);
    written.set(key, text);
    return text;
  };
}

export function dateOfDay(day: number): string {
  return Temporal.PlainDate.from('1970-01-01').add({ days: day }).toString();
}

export function dayOfDate(date: string): number {
  return Temporal.PlainDate.from('1970-01-01').until(date, { largestUnit: 'days' }).days;
}

/** 0 = Monday. */
export function weekdayOfDay(day: number): number {
  return (((day + 3) % 7) + 7) % 7; // 1970-01-01 was a Thursday
}

export function minuteOfDay(time: string): number {
  return Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));
}

export function instantMs(iso: string): number {
  return Temporal.Instant.from(iso).epochMilliseconds;
}

/** Grid moments that a span of minutes takes, rounded up. */
export function gridUnits(minutes: number): number {
  return Math.ceil(minutes / GRID_MINUTES);
}

function zonedOrNull(ms: number, timeZone: string): Temporal.ZonedDateTime | null {
  try {
    return Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(timeZone);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

function offsetsAround(now: Temporal.ZonedDateTime) {
  const beginning = now.subtract({ days: 400 });
  const changes: { atMs: number; offsetMs: number }[] = [];
  let next = beginning.getTimeZoneTransition('next');
  while (next !== null && changes.length < CHANGES_KNOWN) {
    changes.push({ atMs: next.epochMilliseconds, offsetMs: next.offsetNanoseconds / 1e6 });
    next = next.getTimeZoneTransition('next');
  }
  return { first: beginning.offsetNanoseconds / 1e6, changes };
}

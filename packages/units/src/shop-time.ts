// Instants and shop days. An instant is UTC ISO text; a shop day is 'YYYY-MM-DD' and never an instant. Nothing
// here reads a clock: "now" is an argument.
import { Temporal } from 'temporal-polyfill';

/** A day on the shop's calendar, `2026-11-24`. No time, no zone. */
export type ShopDate = string;

/** An instant on the shop's wall. */
export type ShopTime = {
  readonly date: ShopDate;
  /** `08:05`, 24 h. */
  readonly time: string;
  /** 1 = Monday … 7 = Sunday. */
  readonly weekday: number;
  readonly minuteOfDay: number;
  readonly zone: string;
  /** East of UTC, minutes. */
  readonly offsetMinutes: number;
};

/** A calendar day that exists: 2026-02-30 is none. */
export function isShopDate(text: string): text is ShopDate {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  return succeeds(() => Temporal.PlainDate.from(text, { overflow: 'reject' }));
}

/** An ISO instant with its offset or Z. */
export function isInstant(text: string): boolean {
  return text.length < 50 && succeeds(() => Temporal.Instant.from(text));
}

/** A zone of the IANA database, such as Europe/Lisbon; bare offsets are refused, since they have no summer. */
export function isTimeZone(zone: string): boolean {
  if (!/^[A-Za-z]/.test(zone)) return false;
  return succeeds(() => new Intl.DateTimeFormat('en', { timeZone: zone }));
}

/** Temporal and Intl tell a bad name by RangeError only; anything else is ours and passes. */
const succeeds = (act: () => unknown): boolean => {
  try {
    act();
    return true;
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
};

/** What the shop's clock and calendar show at an instant. Both texts must be valid (`isInstant`, `isTimeZone`). */
export function toShopTime(instantIso: string, zone: string): ShopTime {
  const at = Temporal.Instant.from(instantIso).toZonedDateTimeISO(zone);
  return {
    date: at.toPlainDate().toString(),
    time: at.toPlainTime().toString({ smallestUnit: 'minute' }),
    weekday: at.dayOfWeek,
    minuteOfDay: at.hour * 60 + at.minute,
    zone,
    offsetMinutes: Math.round(at.offsetNanoseconds / 60_000_000_000),
  };
}

/**
 * The instant at which the shop's clock shows `time` (`08:00`) on `date`. In the hour that spring skips, the clock
 * time moves on by the skip; in the hour that autumn repeats, the first of the two counts.
 */
export function toInstant(date: ShopDate, time: string, zone: string): string {
  const wall = Temporal.PlainDate.from(date).toPlainDateTime(Temporal.PlainTime.from(time));
  return wall.toZonedDateTime(zone, { disambiguation: 'compatible' }).toInstant().toString();
}

/** The instant after so many elapsed minutes: glue sets by elapsed time, through nights and clock changes. */
export function addElapsedMinutes(instantIso: string, minutes: number): string {
  return Temporal.Instant.from(instantIso).add({ minutes }).toString();
}

/** The day so many calendar days later (or earlier). */
export function addDays(date: ShopDate, days: number): ShopDate {
  return Temporal.PlainDate.from(date).add({ days }).toString();
}

/** Calendar days from one to the other; negative when `to` is earlier. */
export function daysBetween(from: ShopDate, to: ShopDate): number {
  return Temporal.PlainDate.from(from).until(Temporal.PlainDate.from(to), { largestUnit: 'days' }).days;
}

/** 1 = Monday … 7 = Sunday. */
export function weekdayOf(date: ShopDate): number {
  return Temporal.PlainDate.from(date).dayOfWeek;
}

export type InstantFormat = {
  readonly zone: string;
  readonly locale: string;
  /** `full` Tuesday, 24 November 2026 at 14:02; `short` 24 Nov, 14:02; `time` 14:02. */
  readonly style?: 'full' | 'short' | 'time' | undefined;
  /** The shop's clock; where nothing is said, the locale's. */
  readonly hour12?: boolean | undefined;
};

const INSTANT_STYLES: Readonly<Record<'full' | 'short' | 'time', Intl.DateTimeFormatOptions>> = {
  full: {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    hour: 'numeric',
    minute: '2-digit',
  },
  short: { day: 'numeric', month: 'short', hour: 'numeric', minute: '2-digit' },
  time: { hour: 'numeric', minute: '2-digit' },
};

/** An instant on the shop's wall, in the words of the locale. */
export function formatInstant(instantIso: string, format: InstantFormat): string {
  const { zone, locale, style = 'short', hour12 } = format;
  const options = { ...INSTANT_STYLES[style], timeZone: zone, ...clock(hour12) };
  const milliseconds = Temporal.Instant.from(instantIso).epochMilliseconds;
  return new Intl.DateTimeFormat(locale, options).format(milliseconds);
}

/** By hour cycle, not `hour12: false`, which writes midnight as 24:00 in some locales. */
function clock(hour12: boolean | undefined): Intl.DateTimeFormatOptions {
  return hour12 === undefined ? {} : { hourCycle: hour12 ? 'h12' : 'h23' };
}

const DATE_STYLES: Readonly<Record<'full' | 'medium' | 'day' | 'numeric', Intl.DateTimeFormatOptions>> = {
  full: { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' },
  medium: { day: 'numeric', month: 'short', year: 'numeric' },
  day: { weekday: 'short', day: 'numeric', month: 'short' },
  numeric: { day: '2-digit', month: '2-digit', year: 'numeric' },
};

/** A shop day in the words of the locale: `24 Nov 2026`; never shifted by a zone. */
export function formatShopDate(
  date: ShopDate,
  locale: string,
  style: 'full' | 'medium' | 'day' | 'numeric' = 'medium',
): string {
  const { year, month, day } = Temporal.PlainDate.from(date);
  return new Intl.DateTimeFormat(locale, { ...DATE_STYLES[style], timeZone: 'UTC' }).format(
    Date.UTC(year, month - 1, day),
  );
}

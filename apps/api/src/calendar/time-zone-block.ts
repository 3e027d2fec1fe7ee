// A VTIMEZONE (RFC 5545, 3.6.5) for the stretch of time that a feed speaks of: one observance for the offset at its
// beginning and one for each change of clocks within it.
import { Temporal } from 'temporal-polyfill';

export function timeZoneBlock(zone: string, from: Temporal.Instant, until: Temporal.Instant): string {
  const first = from.toZonedDateTimeISO(zone);
  const observances = [
    observance({
      at: first.toPlainDateTime(),
      before: first.offset,
      after: first.offset,
      isSummer: isSummer(first),
    }),
  ];
  let change = first.getTimeZoneTransition('next');
  while (change !== null && Temporal.Instant.compare(change.toInstant(), until) <= 0) {
    const before = change.subtract({ seconds: 1 });
    // The onset is written on the clock that still goes before the change.
    const at = before.toPlainDateTime().add({ seconds: 1 });
    if (before.offset !== change.offset) {
      observances.push(
        observance({ at, before: before.offset, after: change.offset, isSummer: isSummer(change) }),
      );
    }
    change = change.getTimeZoneTransition('next');
  }
  return ['BEGIN:VTIMEZONE', `TZID:${zone}`, ...observances.flat(), 'END:VTIMEZONE'].join('\r\n');
}

type Observance = {
  readonly at: Temporal.PlainDateTime;
  readonly before: string;
  readonly after: string;
  readonly isSummer: boolean;
};

function observance({ at, before, after, isSummer }: Observance): string[] {
  const kind = isSummer ? 'DAYLIGHT' : 'STANDARD';
  const stamp = at.toString({ smallestUnit: 'second' }).replaceAll(/[-:]/g, '');
  return [
    `BEGIN:${kind}`,
    `DTSTART:${stamp}`,
    `TZOFFSETFROM:${before.replace(':', '')}`,
    `TZOFFSETTO:${after.replace(':', '')}`,
    `END:${kind}`,
  ];
}

/** The clock stands ahead of where it stands at the year's other end. */
function isSummer(at: Temporal.ZonedDateTime): boolean {
  const offsets = [1, 7].map((month) => at.with({ month, day: 1 }).offsetNanoseconds);
  return at.offsetNanoseconds > Math.min(...offsets);
}

// Who is taken when: the occupations of one worker, and of one place with the group that has it.

/** Occupations of a worker, sorted, never overlapping. */
export type BusyTimes = { readonly from: number[]; readonly until: number[] };

/** End of the last occupation that overlaps [start, end); -1 where it is free. */
export function busyUntil(busy: BusyTimes, start: number, end: number): number {
  const { from, until } = busy;
  let low = 0;
  let high = from.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((from[middle] ?? 0) < end) low = middle + 1;
    else high = middle;
  }
  const last = until[low - 1];
  return last !== undefined && last > start ? last : -1;
}

export function occupy(busy: BusyTimes, start: number, end: number): void {
  let at = busy.from.length;
  while (at > 0 && (busy.from[at - 1] ?? 0) > start) at--;
  busy.from.splice(at, 0, start);
  busy.until.splice(at, 0, end);
}

/** One group's stay in a place: at work until `end`, taking it up until `kept`. */
export type Stay = {
  readonly start: number;
  readonly end: number;
  readonly kept: number;
  readonly group: number;
};

export type PlaceRule = { readonly shared: boolean; readonly changeover: number };

/** First moment at which `wanted` no longer meets the stay it overlaps last; -1 where it meets none. */
export function placeTakenUntil(stays: readonly Stay[], rule: PlaceRule, wanted: Stay): number {
  let free = -1;
  for (const stay of stays) {
    const own = stay.group === wanted.group;
    if (own && rule.shared) continue;
    const gap = own ? 0 : rule.changeover;
    const stayEnd = (own ? stay.end : stay.kept) + gap;
    const wantedEnd = (own ? wanted.end : wanted.kept) + gap;
    if (stay.start < wantedEnd && wanted.start < stayEnd) free = Math.max(free, stayEnd);
  }
  return free;
}

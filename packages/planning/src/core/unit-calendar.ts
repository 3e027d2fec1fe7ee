// Open and closed time in whole units, laid out so that "first stretch of d units from t" and "end of d units of
// work begun at t" are look-ups. Memory: four 32-bit numbers a unit of horizon and distinct calendar.

/** `[from, to)` pairs, sorted and apart. */
export type UnitIntervals = readonly (readonly [number, number])[];

export type UnitCalendar = {
  readonly intervals: UnitIntervals;
  readonly horizon: number;
  /** First open unit at or after t; the horizon where there is none. */
  readonly nextOpen: Int32Array;
  /** End of the open stretch that holds t; t itself where closed. */
  readonly stretchEnd: Int32Array;
  /** Open units before t. */
  readonly openBefore: Int32Array;
  /** The k-th open unit. */
  readonly openUnit: Int32Array;
};

export function unitCalendar(intervals: UnitIntervals, horizon: number): UnitCalendar {
  const clipped = intervals
    .map(([from, to]) => [Math.max(0, from), Math.min(horizon, to)] as const)
    .filter(([from, to]) => from < to);
  const nextOpen = new Int32Array(horizon + 1).fill(horizon);
  const stretchEnd = new Int32Array(horizon + 1);
  const openBefore = new Int32Array(horizon + 1);
  const openUnit = new Int32Array(clipped.reduce((sum, [from, to]) => sum + to - from, 0));
  let unit = 0;
  let opened = 0;
  for (const [from, to] of clipped) {
    for (; unit < from; unit++) {
      nextOpen[unit] = from;
      stretchEnd[unit] = unit;
      openBefore[unit] = opened;
    }
    for (; unit < to; unit++) {
      nextOpen[unit] = unit;
      stretchEnd[unit] = to;
      openBefore[unit] = opened;
      openUnit[opened++] = unit;
    }
  }
  for (; unit <= horizon; unit++) {
    stretchEnd[unit] = unit;
    openBefore[unit] = opened;
  }
  return { intervals: clipped, horizon, nextOpen, stretchEnd, openBefore, openUnit };
}

/** First start at or after `from` of `duration` open units in a row; the horizon where there is none. */
export function stretchStart(calendar: UnitCalendar, from: number, duration: number): number {
  const { nextOpen, stretchEnd, horizon } = calendar;
  let start = from >= horizon ? horizon : (nextOpen[from] ?? horizon);
  while (start < horizon) {
    const end = stretchEnd[start] ?? start;
    if (end - start >= duration) return start;
    start = nextOpen[end] ?? horizon;
  }
  return horizon;
}

/** End of `duration` open units from the open unit `start` on, closed time passed over; past the horizon where none. */
export function brokenEnd(calendar: UnitCalendar, start: number, duration: number): number {
  if (duration === 0) return start;
  const last = (calendar.openBefore[start] ?? 0) + duration - 1;
  const unit = calendar.openUnit[last];
  return unit === undefined ? calendar.horizon + 1 : unit + 1;
}

/** The worked stretches between `start` and `end`. */
export function workedStretches(
  calendar: UnitCalendar | null,
  start: number,
  end: number,
): [number, number][] {
  if (calendar === null) return start < end ? [[start, end]] : [];
  const { nextOpen, stretchEnd, horizon } = calendar;
  const worked: [number, number][] = [];
  let from = nextOpen[start] ?? horizon;
  while (from < end) {
    const to = Math.min(end, stretchEnd[from] ?? end);
    worked.push([from, to]);
    from = nextOpen[to] ?? horizon;
  }
  return worked;
}

/** Open where both are open. */
export function bothOpen(a: UnitIntervals, b: UnitIntervals): [number, number][] {
  const both: [number, number][] = [];
  let i = 0;
  let j = 0;
  for (;;) {
    const first = a[i];
    const second = b[j];
    if (first === undefined || second === undefined) return both;
    const from = Math.max(first[0], second[0]);
    const to = Math.min(first[1], second[1]);
    if (from < to) both.push([from, to]);
    if (first[1] < second[1]) i++;
    else j++;
  }
}

/** Longest open stretch, units. */
export function longestStretch(intervals: UnitIntervals): number {
  return intervals.reduce((longest, [from, to]) => Math.max(longest, to - from), 0);
}

/** The same calendar read backwards from the horizon. */
export function mirrored(intervals: UnitIntervals, horizon: number): [number, number][] {
  return intervals.map(([from, to]): [number, number] => [horizon - to, horizon - from]).reverse();
}

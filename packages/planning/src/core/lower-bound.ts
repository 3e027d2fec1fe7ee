// What no schedule can beat. Longest chain through calendars and lags; and, for each resource, the work of all
// activities that begin no earlier than a head and leave no less than a tail, spread over the full capacity between.
import type { CompiledActivity, CompiledProject } from './compile-project.ts';
import { brokenEnd, stretchStart, type UnitCalendar } from './unit-calendar.ts';

/** Earliest starts and ends, and the least time from each start and each end to the end of everything. */
export type HeadsAndTails = {
  readonly earliestStart: Int32Array;
  readonly earliestEnd: Int32Array;
  readonly fromStart: Int32Array;
  readonly fromEnd: Int32Array;
};

export function headsAndTails(project: CompiledProject): HeadsAndTails {
  const { activities, duration, order, forward } = project;
  const count = activities.length;
  const earliestStart = Int32Array.from(activities, ({ release }) => release);
  const earliestEnd = new Int32Array(count);
  const fromStart = new Int32Array(count);
  const fromEnd = new Int32Array(count);
  const leaving: (typeof forward)[number][][] = activities.map(() => []);
  for (const arc of forward) leaving[arc.from]?.push(arc);
  for (const i of order) {
    const activity = activities[i];
    if (activity === undefined) continue;
    const least = Math.max(
      earliestStart[i] ?? 0,
      activity.breakable ? 0 : (earliestEnd[i] ?? 0) - activity.duration,
    );
    const stretch = firstStretch(project, i, least);
    earliestStart[i] = stretch.start;
    earliestEnd[i] = Math.max(earliestEnd[i] ?? 0, stretch.end);
    for (const arc of leaving[i] ?? []) {
      const point = ((arc.fromEnd ? earliestEnd[i] : earliestStart[i]) ?? 0) + arc.lag;
      const row = arc.toEnd ? earliestEnd : earliestStart;
      row[arc.to] = Math.max(row[arc.to] ?? 0, point);
    }
  }
  for (const i of order.toReversed()) {
    for (const arc of leaving[i] ?? []) {
      const rest = arc.lag + ((arc.toEnd ? fromEnd[arc.to] : fromStart[arc.to]) ?? 0);
      const row = arc.fromEnd ? fromEnd : fromStart;
      row[i] = Math.max(row[i] ?? 0, rest);
    }
    fromStart[i] = Math.max(fromStart[i] ?? 0, (duration[i] ?? 0) + (fromEnd[i] ?? 0));
  }
  return { earliestStart, earliestEnd, fromStart, fromEnd };
}

/** Earliest stretch from `from` on as though nobody else were there; at `from` itself where the calendars have none. */
function firstStretch(project: CompiledProject, i: number, from: number): { start: number; end: number } {
  const activity = project.activities[i];
  if (activity === undefined) return { start: from, end: from };
  const { duration, breakable } = activity;
  const calendars = (activity.workers ?? [activity]).map(({ calendar }) => calendar);
  const stretches = calendars.map((calendar) => stretchIn(calendar, from, duration, breakable));
  const start = Math.min(...stretches.map((stretch) => stretch.start));
  const end = Math.min(...stretches.map((stretch) => stretch.end));
  return end <= project.horizon ? { start, end } : { start: from, end: from + duration };
}

function stretchIn(calendar: UnitCalendar | null, from: number, duration: number, breakable: boolean) {
  if (calendar === null || duration === 0) return { start: from, end: from + duration };
  const start = stretchStart(calendar, from, breakable ? 1 : duration);
  return { start, end: breakable ? brokenEnd(calendar, start, duration) : start + duration };
}

/** End of everything, at the least. */
export function lowerBound(project: CompiledProject, bounds: HeadsAndTails = headsAndTails(project)): number {
  const count = project.activities.length;
  let bound = 0;
  for (let i = 0; i < count; i++) {
    bound = Math.max(
      bound,
      (bounds.earliestStart[i] ?? 0) + (bounds.fromStart[i] ?? 0),
      (bounds.earliestEnd[i] ?? 0) + (bounds.fromEnd[i] ?? 0),
    );
  }
  for (const { capacity, uses } of sharedMeans(project))
    bound = Math.max(bound, workBound(uses, capacity, bounds));
  return bound;
}

type Use = { readonly activity: number; readonly work: number };

/** Resources with their capacity; workers, those of each skill and those of each choice likewise. */
function sharedMeans(
  project: CompiledProject,
): { readonly capacity: number; readonly uses: readonly Use[] }[] {
  const means = Array.from(project.capacity, (capacity) => ({ capacity, uses: [] as Use[] }));
  const pools = new Map<string, { capacity: number; uses: Use[] }>();
  const use = (key: string, capacity: number, activity: number, work: number): void => {
    const pool = pools.get(key) ?? { capacity, uses: [] };
    pools.set(key, pool);
    pool.uses.push({ activity, work });
  };
  for (const [i, activity] of project.activities.entries()) {
    for (const { resource, amount } of activity.demands) {
      means[resource]?.uses.push({ activity: i, work: amount * activity.duration });
    }
    const slots = activity.team?.slots.length ?? (activity.workers === null ? 0 : 1);
    if (slots > 0) use('everybody', project.workerIds.length, i, slots * activity.duration);
    const able = activity.workers?.map(({ worker }) => worker).sort((a, b) => a - b) ?? [];
    if (able.length > 0) use(`workers ${able.join(',')}`, able.length, i, activity.duration);
    for (const [skill, wanted] of wantedSkills(activity)) {
      use(`skill ${skill}`, project.skillHolders.get(skill) ?? 0, i, wanted * activity.duration);
    }
  }
  return [...means, ...pools.values()];
}

function wantedSkills({ workers, team }: CompiledActivity): ReadonlyMap<string, number> {
  const slots = team?.slots ?? workers?.slice(0, 1).map(({ skill }) => skill) ?? [];
  const wanted = new Map<string, number>();
  for (const slot of slots) wanted.set(slot, (wanted.get(slot) ?? 0) + 1);
  return wanted;
}

/** Largest head + work / capacity + tail over all pairs of a head and a tail. */
function workBound(uses: readonly Use[], capacity: number, bounds: HeadsAndTails): number {
  const items = uses
    .filter(({ work }) => work > 0)
    .map(({ activity, work }) => ({
      work,
      head: bounds.earliestStart[activity] ?? 0,
      tail: bounds.fromEnd[activity] ?? 0,
    }));
  if (capacity === 0 || items.length === 0) return 0;
  const byTail = items.toSorted((a, b) => b.tail - a.tail);
  let bound = 0;
  for (const head of new Set(items.map((item) => item.head))) {
    let work = 0;
    for (const item of byTail) {
      if (item.head < head) continue;
      work += item.work;
      bound = Math.max(bound, head + Math.ceil(work / capacity) + item.tail);
    }
  }
  return bound;
}

// What is taken so far of resources, workers and places, and where in it an activity can go next.
import { type BusyTimes, busyUntil, occupy, placeTakenUntil, type Stay } from './busy-times.ts';
import type { CompiledActivity, CompiledProject, Team } from './compile-project.ts';
import { chooseTeam } from './team-choice.ts';
import { brokenEnd, stretchStart, type UnitCalendar } from './unit-calendar.ts';

/** Where everything stands after a run; the arrays belong to the placer and change with its next run. */
export type Placed = {
  readonly start: Int32Array;
  readonly end: Int32Array;
  /** Worker of a one-worker activity, else -1. */
  readonly worker: Int32Array;
  /** Workers of a team in the order of its slots, else null. */
  readonly team: (readonly number[] | null)[];
  /** Place, else -1. */
  readonly place: Int32Array;
  /** 1 where it stands, 0 where the horizon left no room. */
  readonly stands: Uint8Array;
};

/** Between which moments an activity may start and end. */
export type Window = { low: number; lowEnd: number; high: number; highEnd: number };

export type Stretch = {
  start: number;
  end: number;
  worker: number;
  place: number;
  team: readonly number[] | null;
};

export type Occupancy = {
  readonly placed: Placed;
  /** What `find` found last. */
  readonly found: Readonly<Stretch>;
  clear(): void;
  /** Earliest stretch in the window; of several workers or places, the one that ends first. */
  find(activity: CompiledActivity, window: Readonly<Window>): boolean;
  /** Puts activity i where `find` found room for it. */
  take(i: number, activity: CompiledActivity): void;
};

const NOWHERE: readonly number[] = [-1];

export function createOccupancy(project: CompiledProject): Occupancy {
  const { horizon, capacity } = project;
  const count = project.activities.length;
  const placed: Placed = {
    start: new Int32Array(count),
    end: new Int32Array(count),
    worker: new Int32Array(count).fill(-1),
    team: Array<readonly number[] | null>(count).fill(null),
    place: new Int32Array(count).fill(-1),
    stands: new Uint8Array(count),
  };
  const left = new Int32Array(capacity.length * horizon);
  const busy: BusyTimes[] = project.workerIds.map(() => ({ from: [], until: [] }));
  const stays: Stay[][] = project.places.map(() => []);
  const lastWorker = new Map<number, number>();
  const lastPlace = new Map<number, number>();
  const found: Stretch = { start: 0, end: 0, worker: -1, place: -1, team: null };

  /** One past the last moment of [start, end) at which a resource falls short; -1 where none does. */
  const shortUntil = (activity: CompiledActivity, start: number, end: number): number => {
    for (const { resource, amount } of activity.demands) {
      const base = resource * horizon;
      for (let unit = base + end - 1; unit >= base + start; unit--) {
        if ((left[unit] ?? 0) < amount) return unit - base + 1;
      }
    }
    return -1;
  };

  const placeShutUntil = (activity: CompiledActivity, place: number, start: number, end: number): number => {
    const rule = project.places[place];
    const taken = stays[place];
    if (rule === undefined || taken === undefined || start === end) return -1;
    return placeTakenUntil(taken, rule, {
      start,
      end,
      kept: end + activity.keepsPlace,
      group: activity.group,
    });
  };

  /** Earliest stretch for this worker (or none) at this place (or none) that ends by `endLimit`. */
  const findFor = (
    activity: CompiledActivity,
    { worker, calendar }: { readonly worker: number; readonly calendar: UnitCalendar | null },
    place: number,
    { low, lowEnd, high }: Readonly<Window>,
    endLimit: number,
  ): boolean => {
    const length = activity.duration;
    const times = busy[worker];
    let start = low;
    for (;;) {
      let end = start + length;
      if (calendar !== null && length > 0) {
        start = stretchStart(calendar, start, activity.breakable ? 1 : length);
        end = activity.breakable ? brokenEnd(calendar, start, length) : start + length;
      }
      if (start > high || end > endLimit) return false;
      let next = times === undefined ? -1 : busyUntil(times, start, end);
      if (next < 0 && place >= 0) next = placeShutUntil(activity, place, start, end);
      if (next < 0) next = shortUntil(activity, start, end);
      if (next < 0 && end < lowEnd) next = start + 1;
      if (next < 0) {
        found.start = start;
        found.end = end;
        found.worker = worker;
        found.place = place;
        found.team = null;
        return true;
      }
      start = next;
    }
  };

  /** One worker at one place: earliest end over all of them; the group's own worker and place win a tie. */
  const findAlone = (activity: CompiledActivity, window: Readonly<Window>): boolean => {
    const choices = workersLeft(activity);
    const ownWorker = lastWorker.get(activity.group) ?? -1;
    const ownPlace = lastPlace.get(activity.group) ?? -1;
    const best: Stretch = { start: -1, end: window.highEnd + 1, worker: -1, place: -1, team: null };
    let bestTies = -1;
    for (const choice of choices) {
      for (const place of activity.places ?? NOWHERE) {
        const ties = (choice.worker === ownWorker ? 2 : 0) + (place === ownPlace ? 1 : 0);
        const limit = ties > bestTies ? Math.min(best.end, window.highEnd) : best.end - 1;
        if (!findFor(activity, choice, place, window, limit)) continue;
        Object.assign(best, found);
        bestTies = ties;
      }
    }
    Object.assign(found, best);
    return best.start >= 0;
  };

  /** Who may do it: not those who did what it must be done apart from, unless there is nobody else. */
  const workersLeft = (activity: CompiledActivity) => {
    if (activity.workers === null) return [{ worker: -1, calendar: activity.calendar }];
    if (activity.notByWorkerOf.length === 0) return activity.workers;
    const barred = activity.notByWorkerOf.map((other) => (placed.stands[other] ? placed.worker[other] : -1));
    const left = activity.workers.filter(({ worker }) => !barred.includes(worker));
    return left.length > 0 ? left : activity.workers;
  };

  const freeFrom = (worker: number, calendar: UnitCalendar | null, from: number, length: number): number => {
    const times = busy[worker];
    let start = from;
    for (;;) {
      if (calendar !== null) start = stretchStart(calendar, start, length);
      const until = times === undefined || start >= horizon ? -1 : busyUntil(times, start, start + length);
      if (until < 0) return start;
      start = until;
    }
  };

  /** Several workers at once. Whoever is free at a moment can only lose members until somebody new comes free. */
  const findTeam = (activity: CompiledActivity, team: Team, window: Readonly<Window>): boolean => {
    const length = activity.duration;
    let at = Math.max(window.low, window.lowEnd - length);
    while (at <= window.high && at + length <= window.highEnd) {
      const moment = at;
      const freeAt = team.choices.map(({ worker, calendar }) => freeFrom(worker, calendar, moment, length));
      const members = chooseTeam(
        team,
        freeAt.map((free) => free === moment),
      );
      if (members === null) {
        at = freeAt.reduce((next, free) => (free > moment && free < next ? free : next), horizon);
        continue;
      }
      const end = at + length;
      const short = shortUntil(activity, at, end);
      const place = (activity.places ?? NOWHERE).find(
        (one) => placeShutUntil(activity, one, moment, end) < 0,
      );
      if (short < 0 && place !== undefined) {
        Object.assign(found, { start: at, end, worker: -1, place, team: members });
        return true;
      }
      at = Math.max(short, at + 1);
    }
    return false;
  };

  return {
    placed,
    found,
    clear() {
      placed.stands.fill(0);
      for (let r = 0; r < capacity.length; r++) {
        left.fill(capacity[r] ?? 0, r * horizon, (r + 1) * horizon);
      }
      for (const times of busy) {
        times.from.length = 0;
        times.until.length = 0;
      }
      for (const taken of stays) taken.length = 0;
      lastWorker.clear();
      lastPlace.clear();
    },
    find(activity, window) {
      if (activity.team !== null) return findTeam(activity, activity.team, window);
      if (activity.workers !== null || activity.places !== null) return findAlone(activity, window);
      return findFor(activity, { worker: -1, calendar: activity.calendar }, -1, window, window.highEnd);
    },
    take(i, activity) {
      const { start, end, worker, place, team } = found;
      placed.start[i] = start;
      placed.end[i] = end;
      placed.worker[i] = worker;
      placed.place[i] = place;
      placed.team[i] = team;
      placed.stands[i] = 1;
      for (const { resource, amount } of activity.demands) {
        const base = resource * horizon;
        for (let unit = base + start; unit < base + end; unit++) left[unit] = (left[unit] ?? 0) - amount;
      }
      if (start === end) return;
      for (const member of team ?? [worker]) {
        const times = busy[member];
        if (times !== undefined) occupy(times, start, end);
      }
      if (worker >= 0) lastWorker.set(activity.group, worker);
      if (place < 0) return;
      stays[place]?.push({ start, end, kept: end + activity.keepsPlace, group: activity.group });
      lastPlace.set(activity.group, place);
    },
  };
}

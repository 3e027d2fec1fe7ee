// Schedule generation: activities are placed one by one, in the order of a list, each as early as what already stands
// allows (serial scheme), or moment by moment by priority (parallel scheme). R. Kolisch, "Serial and parallel
// resource-constrained project scheduling methods revisited", Eur. J. Oper. Res. 90 (1996) 320-333. Greatest lags are
// kept by windows and, where a window closes, by starting again with its causes moved later: B. Franck, K. Neumann &
// C. Schwindt, "Truncated branch-and-bound, schedule-construction and schedule-improvement procedures for
// resource-constrained project scheduling", OR Spektrum 23 (2001) 297-324.
import type { CompiledActivity, CompiledProject } from './compile-project.ts';
import { createOccupancy, type Placed, type Window } from './occupancy.ts';
import { NO_PATH } from './project-arcs.ts';

/** Times a window may close before the try is counted as failed. */
const RESTARTS = 60;

export type Placer = {
  readonly placed: Readonly<Placed>;
  /**
   * Places `list` from `origin` on. Answers by how many units deadlines, greatest lags and the horizon are broken:
   * 0 = a schedule. `list` must obey the forward arcs.
   */
  serial(list: Int32Array, origin?: number): number;
  /** The same moment by moment, smallest `priority` first. Only for projects without backward arcs. */
  parallel(priority: ArrayLike<number>): number;
};

type Neighbour = {
  readonly other: number;
  readonly otherEnd: boolean;
  readonly ownEnd: boolean;
  readonly lag: number;
};

type Neighbours = readonly (readonly Neighbour[])[];

export function createPlacer(project: CompiledProject): Placer {
  const { activities, horizon } = project;
  const count = activities.length;
  const occupancy = createOccupancy(project);
  const { placed, found } = occupancy;
  const { before, after } = neighboursOf(project);
  const looksAhead = project.backward.length > 0;
  const windows = looksAhead ? createWindows(project, placed, after) : null;
  const window: Window = { low: 0, lowEnd: 0, high: 0, highEnd: 0 };

  const setWindow = (i: number, activity: CompiledActivity, origin: number): void => {
    window.low = Math.max(origin, activity.release);
    window.lowEnd = 0;
    window.high = horizon;
    window.highEnd = activity.latestEnd;
    for (const { other, otherEnd, ownEnd, lag } of before[i] ?? []) {
      if (!placed.stands[other]) continue;
      const least = ((otherEnd ? placed.end[other] : placed.start[other]) ?? 0) + lag;
      if (ownEnd) window.lowEnd = Math.max(window.lowEnd, least);
      else window.low = Math.max(window.low, least);
    }
    windows?.narrow(i, window);
  };

  /** Places i in its window; outside it where it must be, and says by how much. */
  const placeOne = (i: number, origin: number): number => {
    const activity = activities[i];
    if (activity === undefined) return 0;
    setWindow(i, activity, origin);
    if (occupancy.find(activity, window)) {
      occupancy.take(i, activity);
      return 0;
    }
    const { high, highEnd } = window;
    if (!occupancy.find(activity, { ...window, high: horizon, highEnd: horizon })) return horizon;
    const beyond = Math.max(found.start - high, found.end - highEnd, 1);
    occupancy.take(i, activity);
    return beyond;
  };

  const serialInWindows = (list: Int32Array, within: Windows): number => {
    within.forget();
    for (let attempt = 0; ; attempt++) {
      occupancy.clear();
      within.open();
      let broken = 0;
      let again = false;
      for (let k = 0; k < count && !again; k++) {
        const i = list[k] ?? 0;
        const beyond = placeOne(i, 0);
        again = beyond > 0 && attempt < RESTARTS && within.makeRoom(i, beyond, window.high);
        broken += beyond;
        if (placed.stands[i]) within.placedAt(i);
      }
      if (!again) return broken;
    }
  };

  return {
    placed,
    serial(list, origin = 0) {
      if (windows !== null) return serialInWindows(list, windows);
      occupancy.clear();
      let broken = 0;
      for (let k = 0; k < count; k++) broken += placeOne(list[k] ?? 0, origin);
      return broken;
    },
    parallel(priority) {
      occupancy.clear();
      const byPriority = Array.from(project.order).sort(
        (a, b) => (priority[a] ?? 0) - (priority[b] ?? 0) || a - b,
      );
      let waiting = byPriority;
      let moment = 0;
      while (waiting.length > 0 && moment < horizon) {
        let next = horizon;
        const kept: number[] = [];
        for (const i of waiting) {
          const activity = activities[i];
          const ready = (before[i] ?? []).every(({ other }) => placed.stands[other] === 1);
          if (activity === undefined || !ready) {
            kept.push(i);
            continue;
          }
          setWindow(i, activity, moment);
          window.highEnd = horizon;
          const fits = occupancy.find(activity, window);
          if (fits && found.start <= moment) occupancy.take(i, activity);
          else {
            kept.push(i);
            if (fits) next = Math.min(next, found.start);
          }
        }
        if (kept.length === waiting.length) moment = next;
        waiting = kept;
      }
      return waiting.length * horizon + lateUnits(project, placed);
    },
  };
}

function lateUnits({ activities }: CompiledProject, placed: Readonly<Placed>): number {
  return activities.reduce(
    (sum, { latestEnd }, i) => sum + (placed.stands[i] ? Math.max(0, (placed.end[i] ?? 0) - latestEnd) : 0),
    0,
  );
}

function neighboursOf(project: CompiledProject): { readonly before: Neighbours; readonly after: Neighbours } {
  const before: Neighbour[][] = project.activities.map(() => []);
  const after: Neighbour[][] = project.activities.map(() => []);
  for (const { from, fromEnd, to, toEnd, lag } of [...project.forward, ...project.backward]) {
    before[to]?.push({ other: from, otherEnd: fromEnd, ownEnd: toEnd, lag });
    after[from]?.push({ other: to, otherEnd: toEnd, ownEnd: fromEnd, lag });
  }
  return { before, after };
}

// ── Windows, where greatest lags exist ─────────────────────────────────────────────────────────────────────

type Windows = {
  /** Forgets what earlier tries moved. */
  forget(): void;
  /** Opens all windows again for a new try. */
  open(): void;
  narrow(i: number, window: Window): void;
  placedAt(i: number): void;
  /** Moves what closed i's window later, for the next try; false where nothing that stands closed it. */
  makeRoom(i: number, beyond: number, high: number): boolean;
};

function createWindows(project: CompiledProject, placed: Readonly<Placed>, after: Neighbours): Windows {
  const count = project.activities.length;
  const { distance, horizon } = project;
  const earliest = new Int32Array(count);
  const latest = new Int32Array(count);
  const moved = new Int32Array(count);
  const apart = (from: number, to: number): number => distance?.[from * count + to] ?? NO_PATH;
  return {
    forget() {
      moved.fill(0);
    },
    open() {
      earliest.fill(0);
      latest.fill(horizon);
    },
    narrow(i, window) {
      window.low = Math.max(window.low, earliest[i] ?? 0, moved[i] ?? 0);
      window.high = Math.min(window.high, latest[i] ?? horizon);
      for (const { other, otherEnd, ownEnd, lag } of after[i] ?? []) {
        if (!placed.stands[other]) continue;
        const most = ((otherEnd ? placed.end[other] : placed.start[other]) ?? 0) - lag;
        if (ownEnd) window.highEnd = Math.min(window.highEnd, most);
        else window.high = Math.min(window.high, most);
      }
    },
    placedAt(i) {
      const start = placed.start[i] ?? 0;
      for (let other = 0; other < count; other++) {
        const least = apart(i, other);
        if (least > NO_PATH) earliest[other] = Math.max(earliest[other] ?? 0, start + least);
        const most = apart(other, i);
        if (most > NO_PATH) latest[other] = Math.min(latest[other] ?? 0, start - most);
      }
    },
    makeRoom(i, beyond, high) {
      let made = false;
      for (let other = 0; other < count; other++) {
        const start = placed.start[other] ?? 0;
        const least = apart(i, other);
        if (other === i || !placed.stands[other] || least === NO_PATH || start - least > high) continue;
        moved[other] = Math.max(moved[other] ?? 0, start + beyond);
        made = true;
      }
      return made;
    },
  };
}

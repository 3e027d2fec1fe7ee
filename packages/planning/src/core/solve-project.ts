// The general planner: compiles, bounds, searches, and writes the best schedule in the project's own names.
import type { Project, ProjectSchedule } from '@gusset/contracts/planning';
import { isRefusal, type Refusal } from '@gusset/units';
import { listCraft } from './activity-list.ts';
import { type CompiledProject, compileProject, mirrorProject } from './compile-project.ts';
import { lastEnd, searchLists } from './genetic-search.ts';
import { headsAndTails, lowerBound } from './lower-bound.ts';
import type { Placed } from './occupancy.ts';
import { createPlacer } from './placer.ts';
import { seededRandom } from './seeded-random.ts';
import { workedStretches } from './unit-calendar.ts';

export type SolveProjectOptions = {
  readonly seed: number;
  /** Schedules to make at most; the search ends sooner where it reaches the bound. */
  readonly schedules: number;
  /** Asked between schedules, so that the caller's clock can end the search; engines have none of their own. */
  readonly shouldStop?: () => boolean;
};

/** The schedule less what only the caller's clock can tell. */
export type ProjectAnswer = Omit<ProjectSchedule, 'seconds'>;

export function solveProject(project: Project, options: SolveProjectOptions): ProjectAnswer | Refusal {
  const compiled = compileProject(project);
  if (isRefusal(compiled)) return compiled;
  const bounds = headsAndTails(compiled);
  const bound = lowerBound(compiled, bounds);
  const byLateness = project.aim === 'lateness';
  const mirrored = byLateness ? null : mirrorProject(compiled);
  const target = byLateness ? leastLatenessCost(compiled, bounds.earliestEnd, bound) : bound;
  const { best, placed, schedules } = searchLists({
    project: compiled,
    placer: createPlacer(compiled),
    mirror: mirrored === null ? null : { placer: createPlacer(mirrored), craft: listCraft(mirrored) },
    craft: listCraft(compiled),
    bounds,
    cost: byLateness ? (now) => latenessCost(compiled, now) : lastEnd,
    target,
    schedules: options.schedules,
    random: seededRandom(options.seed),
    shouldStop: options.shouldStop ?? (() => false),
  });
  const answer = { id: project.id, lowerBound: bound, schedules };
  if (best.broken > 0) {
    const unplaced = compiled.activities
      .filter((_, i) => breaksRule(compiled, placed, i))
      .map(({ id }) => id);
    return { ...answer, start: {}, makespan: null, proven: bound > compiled.horizon, unplaced };
  }
  const lateness = byLateness ? { lateness: weightedLateness(compiled, placed) } : {};
  const makespan = lastEnd(placed);
  return { ...answer, ...written(compiled, placed), ...lateness, makespan, proven: best.cost <= target };
}

function written({ activities, workerIds, places }: CompiledProject, placed: Placed) {
  const start: Record<string, number> = {};
  const assign: Record<string, { worker: string; skill: string }[]> = {};
  const place: Record<string, string> = {};
  const segments: Record<string, [number, number][]> = {};
  for (const [i, activity] of activities.entries()) {
    const { id } = activity;
    const worker = placed.worker[i] ?? -1;
    const choice = activity.workers?.find((one) => one.worker === worker);
    const members = placed.team[i] ?? (choice === undefined ? [] : [worker]);
    const slots = activity.team?.slots ?? (choice === undefined ? [] : [choice.skill]);
    start[id] = placed.start[i] ?? 0;
    if (members.length > 0) {
      assign[id] = members.map((member, k) => ({ worker: workerIds[member] ?? '', skill: slots[k] ?? '' }));
    }
    const where = places[placed.place[i] ?? -1];
    if (where !== undefined) place[id] = where.id;
    const calendar = choice?.calendar ?? activity.calendar;
    const worked = workedStretches(calendar, placed.start[i] ?? 0, placed.end[i] ?? 0);
    if (activity.breakable && worked.length > 1) segments[id] = worked;
  }
  return {
    start,
    ...(Object.keys(assign).length > 0 ? { assign } : {}),
    ...(Object.keys(place).length > 0 ? { place } : {}),
    ...(Object.keys(segments).length > 0 ? { segments } : {}),
  };
}

function breaksRule({ activities, backward }: CompiledProject, placed: Placed, i: number): boolean {
  if (placed.stands[i] !== 1) return true;
  const point = (of: number, end: boolean) => (end ? placed.end[of] : placed.start[of]) ?? 0;
  const late = (placed.end[i] ?? 0) > (activities[i]?.latestEnd ?? 0);
  return (
    late ||
    backward.some(
      ({ from, fromEnd, to, toEnd, lag }) => from === i && point(to, toEnd) < point(from, fromEnd) + lag,
    )
  );
}

// ── The aim `lateness` ─────────────────────────────────────────────────────────────────────────────────────

function weightedLateness({ activities }: CompiledProject, { end }: { readonly end: Int32Array }): number {
  return activities.reduce(
    (sum, { due, weight }, i) => sum + (due === null ? 0 : weight * Math.max(0, (end[i] ?? 0) - due)),
    0,
  );
}

/** Lateness first, then the last end. */
function latenessCost(project: CompiledProject, placed: Readonly<Placed>): number {
  return weightedLateness(project, placed) * (project.horizon + 1) + lastEnd(placed);
}

function leastLatenessCost(project: CompiledProject, earliestEnd: Int32Array, bound: number): number {
  return weightedLateness(project, { end: earliestEnd }) * (project.horizon + 1) + bound;
}

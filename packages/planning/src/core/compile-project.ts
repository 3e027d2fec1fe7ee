// The engine's door for a general project: checks what the schema cannot, and lays the project out in numbers.
import type { Project, ProjectActivity } from '@gusset/contracts/planning';
import { PROJECT_UNITS_LIMIT } from '@gusset/contracts/planning';
import { isRefusal, type Refusal, refuse } from '@gusset/units';
import { type Arc, arcsOf, orderArcs, startDistances } from './project-arcs.ts';
import { firstFault, placesFor, slotsOf } from './project-faults.ts';
import { bothOpen, mirrored, type UnitCalendar, type UnitIntervals, unitCalendar } from './unit-calendar.ts';

/** One worker who could do a one-worker activity, with the calendar of both. */
export type WorkerChoice = {
  readonly worker: number;
  readonly skill: string;
  readonly calendar: UnitCalendar | null;
};

/** Workers needed together: one slot per worker needed. */
export type Team = {
  readonly slots: readonly string[];
  readonly choices: readonly { readonly worker: number; readonly calendar: UnitCalendar | null }[];
  /** `fits[slot][choice]`: that worker has that skill. */
  readonly fits: readonly (readonly boolean[])[];
};

export type Demand = { readonly resource: number; readonly amount: number };

export type CompiledActivity = {
  readonly id: string;
  readonly duration: number;
  readonly release: number;
  readonly latestEnd: number;
  readonly breakable: boolean;
  readonly demands: readonly Demand[];
  /** Calendar of its resources; null = always open. */
  readonly calendar: UnitCalendar | null;
  /** One worker of these, null where none or a team is needed. */
  readonly workers: readonly WorkerChoice[] | null;
  readonly team: Team | null;
  readonly notByWorkerOf: readonly number[];
  readonly places: readonly number[] | null;
  readonly keepsPlace: number;
  readonly group: number;
  readonly due: number | null;
  readonly weight: number;
};

export type CompiledProject = {
  readonly horizon: number;
  readonly activities: readonly CompiledActivity[];
  readonly duration: Int32Array;
  readonly capacity: Int32Array;
  readonly workerIds: readonly string[];
  /** How many workers have each skill. */
  readonly skillHolders: ReadonlyMap<string, number>;
  readonly places: readonly { readonly id: string; readonly shared: boolean; readonly changeover: number }[];
  readonly forward: readonly Arc[];
  readonly backward: readonly Arc[];
  readonly order: Int32Array;
  /** Start-to-start distances, only where backward arcs exist. */
  readonly distance: Int32Array | null;
};

export function compileProject(project: Project): CompiledProject | Refusal {
  const wrong = firstFault(project);
  if (wrong !== null) return wrong;
  const index = new Map(project.activities.map((activity, i) => [activity.id, i]));
  const duration = Int32Array.from(project.activities, (activity) => activity.duration);
  const { least, greatest } = arcsOf(project, index);
  const ordered = orderArcs(least, greatest, duration);
  if ('cycle' in ordered) {
    const names = ordered.cycle.map((i) => project.activities[i]?.id ?? '');
    return refuse('precedences', {
      allowed: 'an order without circles',
      got: [...names, names[0] ?? ''].join(' > '),
      why: 'each of these waits for the one before it, so none can begin',
    });
  }
  const all = [...ordered.forward, ...ordered.backward];
  const distance = ordered.backward.length > 0 ? startDistances(all, duration) : null;
  if (ordered.backward.length > 0 && distance === null) {
    return refuse('precedences', {
      allowed: 'least and greatest lags that can be kept together',
      got: null,
      why: 'the least lags along some chain add up to more than the greatest lag round it',
    });
  }
  const horizon = horizonOf(project);
  if (isRefusal(horizon)) return horizon;
  const layOut = activityLayout(project, index, horizon);
  return {
    horizon,
    activities: project.activities.map(layOut),
    duration,
    capacity: Int32Array.from(project.resources ?? [], (resource) => resource.capacity),
    workerIds: (project.workers ?? []).map((worker) => worker.id),
    skillHolders: skillHolders(project),
    places: (project.places ?? []).map(({ id, shared, changeover }) => ({
      id,
      shared: shared ?? false,
      changeover: changeover ?? 0,
    })),
    forward: ordered.forward,
    backward: ordered.backward,
    order: ordered.order,
    distance,
  };
}

/** The project read backwards in time, for schedules that are as late as they can be; plain projects only. */
export function mirrorProject(compiled: CompiledProject): CompiledProject | null {
  const plain = compiled.backward.length === 0 && compiled.places.length === 0;
  const free = compiled.activities.every((activity) => activity.notByWorkerOf.length === 0);
  if (!plain || !free) return null;
  const { horizon } = compiled;
  const seen = new Map<UnitCalendar, UnitCalendar>();
  const mirrorOf = (calendar: UnitCalendar | null): UnitCalendar | null => {
    if (calendar === null) return null;
    const known = seen.get(calendar) ?? unitCalendar(mirrored(calendar.intervals, horizon), horizon);
    seen.set(calendar, known);
    return known;
  };
  return {
    ...compiled,
    activities: compiled.activities.map((activity) => ({
      ...activity,
      release: horizon - activity.latestEnd,
      latestEnd: horizon - activity.release,
      calendar: mirrorOf(activity.calendar),
      workers:
        activity.workers?.map((choice) => ({ ...choice, calendar: mirrorOf(choice.calendar) })) ?? null,
      team:
        activity.team === null
          ? null
          : {
              ...activity.team,
              choices: activity.team.choices.map((choice) => ({
                ...choice,
                calendar: mirrorOf(choice.calendar),
              })),
            },
    })),
    forward: compiled.forward.map((arc) => ({
      from: arc.to,
      fromEnd: !arc.toEnd,
      to: arc.from,
      toEnd: !arc.fromEnd,
      lag: arc.lag,
    })),
    order: compiled.order.toReversed(),
  };
}

/** End of all calendars plus everything one after the other: some schedule fits, if any does. */
function horizonOf(project: Project): number | Refusal {
  const calendars = [...(project.resources ?? []), ...(project.workers ?? [])].map(
    (holder) => holder.calendar?.at(-1)?.[1] ?? 0,
  );
  const oneByOne = project.activities.reduce(
    (sum, { duration, keepsPlace }) => sum + duration + (keepsPlace ?? 0),
    0,
  );
  const lags = (project.precedences ?? []).reduce((sum, { minLag }) => sum + Math.max(0, minLag ?? 0), 0);
  const changeovers = Math.max(0, ...(project.places ?? []).map(({ changeover }) => changeover ?? 0));
  const releases = Math.max(0, ...project.activities.map(({ release }) => release ?? 0));
  const needed =
    Math.max(releases, ...calendars) + oneByOne + lags + changeovers * project.activities.length + 1;
  const horizon = Math.min(project.horizon ?? needed, needed);
  if (horizon <= PROJECT_UNITS_LIMIT) return horizon;
  return refuse('activities', {
    allowed: `at most ${PROJECT_UNITS_LIMIT} units from the beginning to the end`,
    got: horizon,
    why: 'take a coarser unit of time',
  });
}

function skillHolders(project: Project): ReadonlyMap<string, number> {
  const holders = new Map<string, number>();
  for (const worker of project.workers ?? []) {
    for (const skill of new Set(worker.skills)) holders.set(skill, (holders.get(skill) ?? 0) + 1);
  }
  return holders;
}

/** How far each worker is needed elsewhere: the least needed one is chosen first. */
function contention(project: Project): ReadonlyMap<string, number> {
  const wanted = new Map<string, number>();
  for (const { duration, skills } of project.activities) {
    for (const [skill, count] of Object.entries(skills ?? {})) {
      wanted.set(skill, (wanted.get(skill) ?? 0) + duration * count);
    }
  }
  const holders = skillHolders(project);
  const pressure = new Map(
    [...wanted].map(([skill, units]) => [skill, units / Math.max(1, holders.get(skill) ?? 0)]),
  );
  return new Map(
    (project.workers ?? []).map((worker) => [
      worker.id,
      worker.skills.reduce((sum, skill) => sum + (pressure.get(skill) ?? 0), 0),
    ]),
  );
}

function activityLayout(project: Project, index: ReadonlyMap<string, number>, horizon: number) {
  const resources = project.resources ?? [];
  const resourceIndex = new Map(resources.map((resource, i) => [resource.id, i]));
  const needed = contention(project);
  const workers = (project.workers ?? [])
    .map((worker, i) => ({ ...worker, index: i }))
    .sort((a, b) => (needed.get(a.id) ?? 0) - (needed.get(b.id) ?? 0) || a.index - b.index);
  const calendarFor = calendarPool(horizon);
  const groups = new Map<string, number>();
  const groupOf = (activity: ProjectActivity): number => {
    const name = activity.group === undefined ? `alone:${activity.id}` : `group:${activity.group}`;
    const known = groups.get(name) ?? groups.size;
    groups.set(name, known);
    return known;
  };
  return (activity: ProjectActivity): CompiledActivity => {
    const demands = Object.entries(activity.demand ?? {})
      .filter(([, amount]) => amount > 0)
      .map(([id, amount]) => ({ resource: resourceIndex.get(id) ?? 0, amount }));
    const opened = demands.map(({ resource }) => resources[resource]?.calendar);
    const slots = slotsOf(activity);
    const able = workers.filter((worker) => activity.worker === undefined || worker.id === activity.worker);
    const only = slots.length === 1 ? slots[0] : undefined;
    return {
      id: activity.id,
      duration: activity.duration,
      release: activity.release ?? 0,
      latestEnd: Math.min(activity.deadline ?? horizon, horizon),
      breakable: activity.breakable ?? false,
      demands,
      calendar: calendarFor(opened),
      workers:
        only === undefined
          ? null
          : able
              .filter((worker) => worker.skills.includes(only))
              .map((worker) => ({
                worker: worker.index,
                skill: only,
                calendar: calendarFor([...opened, worker.calendar]),
              })),
      team:
        slots.length > 1 ? teamOf(slots, able, (worker) => calendarFor([...opened, worker.calendar])) : null,
      notByWorkerOf: (activity.notByWorkerOf ?? []).map((id) => index.get(id) ?? 0),
      places: placesFor(project, activity),
      keepsPlace: activity.keepsPlace ?? 0,
      group: groupOf(activity),
      due: activity.due ?? null,
      weight: activity.weight ?? 1,
    };
  };
}

type Able = {
  readonly index: number;
  readonly skills: readonly string[];
  readonly calendar?: UnitIntervals | undefined;
};

function teamOf(
  slots: readonly string[],
  able: readonly Able[],
  calendarWith: (worker: Able) => UnitCalendar | null,
): Team {
  const members = able.filter((worker) => slots.some((slot) => worker.skills.includes(slot)));
  return {
    slots,
    choices: members.map((worker) => ({ worker: worker.index, calendar: calendarWith(worker) })),
    fits: slots.map((slot) => members.map((worker) => worker.skills.includes(slot))),
  };
}

/** Makes each distinct combination of calendars once; calendars are told apart as objects. */
function calendarPool(horizon: number) {
  const numbers = new Map<UnitIntervals, number>();
  const numberOf = (part: UnitIntervals): number => {
    const known = numbers.get(part) ?? numbers.size;
    numbers.set(part, known);
    return known;
  };
  const made = new Map<string, UnitCalendar>();
  return (parts: readonly (UnitIntervals | undefined)[]): UnitCalendar | null => {
    const bounded = [...new Set(parts.filter((part) => part !== undefined))];
    const [first, ...others] = bounded;
    if (first === undefined) return null;
    const key = bounded
      .map(numberOf)
      .sort((a, b) => a - b)
      .join(',');
    const calendar = made.get(key) ?? unitCalendar(others.reduce(bothOpen, first), horizon);
    made.set(key, calendar);
    return calendar;
  };
}

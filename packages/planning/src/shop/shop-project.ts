// The shop's jobs as one project of quarter hours: people are workers, bays are places, waits are lags.
import type {
  PlanFinding,
  PlanJob,
  PlanTask,
  Project,
  ProjectActivity,
  ShopPlan,
  ShopPlanInput,
  TaskPrerequisite,
} from '@gusset/contracts/planning';
import { longestStretch, type UnitCalendar, unitCalendar } from '../core/unit-calendar.ts';
import { closedDays, openStretches, personStretches } from './open-hours.ts';
import { type ExpectedPart, expectedParts } from './parts-in-hand.ts';
import { inOrderOf } from './same-order.ts';
import { GRID_MINUTES, gridUnits, instantMs, type ShopClock } from './shop-clock.ts';
import { ANY_SKILL } from './shop-faults.ts';

/** A task that is still to be worked on, in grid moments. */
export type OpenTask = {
  readonly task: PlanTask;
  readonly job: PlanJob;
  readonly units: number;
  readonly breakable: boolean;
  readonly waits: readonly OpenWait[];
  readonly parts: readonly ExpectedPart[];
  /** Grid moment of a wished earliest start; null = none. */
  readonly earliest: number | null;
};

export type OpenWait = {
  readonly prerequisite: TaskPrerequisite;
  readonly before: PlanTask;
  readonly lag: number;
  /** Grid moment at which a done task frees this one; null while it isn't done. */
  readonly freesAt: number | null;
};

export type PersonHours = {
  readonly working: UnitCalendar;
  readonly withoutLeave: UnitCalendar;
};

export type ShopProject = {
  readonly project: Project;
  readonly clock: ShopClock;
  readonly horizon: number;
  readonly open: ReadonlyMap<string, OpenTask>;
  readonly hours: ReadonlyMap<string, PersonHours>;
  readonly shopHours: UnitCalendar;
  readonly findings: readonly PlanFinding[];
};

/** Id of the stand-in for a done task that still dries in its bay. */
export function dryingId(taskId: string): string {
  return `drying:${taskId}`;
}

export function shopProject(
  input: ShopPlanInput,
  clock: ShopClock,
  horizon: number,
  keepOrderOf: ShopPlan | null,
): ShopProject {
  const findings: PlanFinding[] = [];
  const hours = new Map(
    input.people.map((person) => {
      const { working, withoutLeave } = personStretches(clock, person, input.calendar, horizon);
      const worked = unitCalendar(working, horizon);
      return [
        person.id,
        {
          working: worked,
          withoutLeave: person.leave.length === 0 ? worked : unitCalendar(withoutLeave, horizon),
        },
      ];
    }),
  );
  const open = new Map<string, OpenTask>();
  for (const job of input.jobs) {
    const parts = expectedParts(clock, input.settings, job);
    findings.push(...parts.findings);
    for (const task of job.tasks) {
      if (task.state === 'done') continue;
      const one = openTask(input, clock, hours, job, task, parts.byTaskKey.get(task.key) ?? []);
      open.set(task.id, one.open);
      findings.push(...one.findings);
    }
  }
  const shopOpen = openStretches(clock, input.calendar.weeklyHours, closedDays(input.calendar), horizon);
  const project = projectOf(input, clock, horizon, hours, open);
  return {
    project: keepOrderOf === null ? project : inOrderOf(project, keepOrderOf),
    clock,
    horizon,
    open,
    hours,
    shopHours: unitCalendar(shopOpen, horizon),
    findings,
  };
}

function openTask(
  input: ShopPlanInput,
  clock: ShopClock,
  hours: ReadonlyMap<string, PersonHours>,
  job: PlanJob,
  task: PlanTask,
  parts: readonly ExpectedPart[],
): { readonly open: OpenTask; readonly findings: readonly PlanFinding[] } {
  const findings: PlanFinding[] = [];
  const units = Math.max(1, gridUnits(task.remainingMinutes));
  const running = task.state === 'running';
  const longest = Math.max(
    0,
    ...input.people.filter((person) => mayDo(person, task)).map(({ id }) => longestOf(hours.get(id))),
  );
  if (!task.breakable && !running && units > longest) {
    findings.push({
      code: 'longer-than-a-stretch',
      jobId: job.id,
      taskId: task.id,
      taskMinutes: units * GRID_MINUTES,
      longestStretchMinutes: longest * GRID_MINUTES,
    });
  }
  const waits = task.prerequisites.flatMap((prerequisite): OpenWait[] => {
    const before = job.tasks.find(({ key }) => key === prerequisite.taskKey);
    if (before === undefined) return [];
    if (running && before.state !== 'done') {
      findings.push({
        code: 'started-out-of-order',
        jobId: job.id,
        taskId: task.id,
        beforeTaskId: before.id,
      });
      return [];
    }
    const lag = gridUnits(prerequisite.waitMinutes * waitFactorFor(prerequisite, input));
    return [{ prerequisite, before, lag, freesAt: freedAt(clock, before, lag) }];
  });
  const earliest = task.earliestStart === null ? null : clock.unitAtOrAfter(instantMs(task.earliestStart));
  return {
    open: {
      task,
      job,
      units,
      // work in progress stops at closing time whatever was wished, and so does what fits no stretch
      breakable: task.breakable || running || units > longest,
      waits: running ? [] : waits,
      parts: running ? [] : parts,
      earliest: running ? null : earliest,
    },
    findings,
  };
}

/** Glue, coats and adhesive wait for their chemistry; a customer's answer doesn't come later in the cold. */
export function waitFactorFor({ reason }: TaskPrerequisite, { settings }: ShopPlanInput): number {
  return reason === null || reason === 'customer' ? 1 : settings.waitFactor;
}

function freedAt(clock: ShopClock, before: PlanTask, lag: number): number | null {
  if (before.state !== 'done' || before.finishedAt === null) return null;
  return clock.unitAtOrAfter(instantMs(before.finishedAt) + lag * GRID_MINUTES * 60_000);
}

function mayDo(person: { readonly id: string; readonly skills: readonly string[] }, task: PlanTask): boolean {
  if (task.pinnedPersonId !== null) return person.id === task.pinnedPersonId;
  return task.skill === ANY_SKILL || person.skills.includes(task.skill);
}

function longestOf(hours: PersonHours | undefined): number {
  return hours === undefined ? 0 : longestStretch(hours.working.intervals);
}

// ── The project ────────────────────────────────────────────────────────────────────────────────────────────

function projectOf(
  input: ShopPlanInput,
  clock: ShopClock,
  horizon: number,
  hours: ReadonlyMap<string, PersonHours>,
  open: ReadonlyMap<string, OpenTask>,
): Project {
  const tasks = [...open.values()];
  const apart = new Map(tasks.map((one) => [one.task.id, skillApart(one)]));
  return {
    id: 'shop',
    horizon,
    workers: input.people.map((person) => ({
      id: person.id,
      skills: [
        ...new Set([ANY_SKILL, ...person.skills]),
        ...tasks.flatMap((one) => {
          const special = apart.get(one.task.id) ?? null;
          const others = input.people.filter(
            (other) => mayDo(other, one.task) && !special?.not.includes(other.id),
          );
          if (special === null || !mayDo(person, one.task)) return [];
          return special.not.includes(person.id) && others.length > 0 ? [] : [special.skill];
        }),
      ],
      calendar: [...(hours.get(person.id)?.working.intervals ?? [])].map(([from, to]): [number, number] => [
        from,
        to,
      ]),
    })),
    places: input.bays.map((bay) => ({
      id: bay.id,
      kinds: [...bay.kinds],
      // two people may be at one vehicle; a bench and a finishing bay take one piece of work
      shared: bay.kinds.includes('vehicle'),
      changeover: bay.kinds.includes('vehicle') ? gridUnits(input.settings.vehicleMoveMinutes) : 0,
    })),
    activities: [
      ...input.jobs.flatMap((job) => dryingStays(input, clock, job)),
      ...tasks.map((one) => activityOf(input, one, apart.get(one.task.id)?.skill ?? null)),
    ],
    precedences: tasks.flatMap(({ task, waits }) =>
      waits
        .filter(({ freesAt }) => freesAt === null)
        .map(({ before, lag }) => ({ from: before.id, to: task.id, minLag: lag })),
    ),
  };
}

function activityOf(input: ShopPlanInput, one: OpenTask, skillApartName: string | null): ProjectActivity {
  const { task, job, units } = one;
  const known = input.people.some(({ id }) => id === task.pinnedPersonId);
  const running = task.state === 'running';
  const ready = [
    0,
    one.earliest ?? 0,
    ...one.parts.map(({ unit }) => unit),
    ...one.waits.map(({ freesAt }) => freesAt ?? 0),
  ];
  const notByWorkerOf = one.waits
    .filter(({ prerequisite, freesAt }) => prerequisite.byAnotherPerson && freesAt === null)
    .map(({ before }) => before.id);
  const skill = skillApartName ?? (running && known ? ANY_SKILL : task.skill);
  return {
    id: task.id,
    duration: units,
    skills: { [skill]: 1 },
    release: Math.max(...ready),
    breakable: one.breakable,
    group: job.id,
    keepsPlace: keepsUnits(input, job, task),
    ...(known && task.pinnedPersonId !== null ? { worker: task.pinnedPersonId } : {}),
    ...(notByWorkerOf.length > 0 ? { notByWorkerOf } : {}),
    ...bayWish(task),
  };
}

function bayWish({
  pinnedBayId,
  bayKind,
}: PlanTask): { place: string } | { placeKind: string } | Record<never, never> {
  if (pinnedBayId !== null) return { place: pinnedBayId };
  return bayKind === null ? {} : { placeKind: bayKind };
}

/** How long the work stays in its bay after the task: the longest that any task behind it says. */
function keepsUnits(input: ShopPlanInput, job: PlanJob, task: PlanTask): number {
  return Math.max(
    0,
    ...job.tasks
      .filter(({ state }) => state === 'planned')
      .flatMap(({ prerequisites }) => prerequisites.filter(({ taskKey }) => taskKey === task.key))
      .map((prerequisite) => gridUnits(prerequisite.keepsBayMinutes * waitFactorFor(prerequisite, input))),
  );
}

/** Done work that still takes up its bay now. */
function dryingStays(input: ShopPlanInput, clock: ShopClock, job: PlanJob): ProjectActivity[] {
  return job.tasks.flatMap((task): ProjectActivity[] => {
    if (task.state !== 'done' || task.finishedAt === null) return [];
    const until = clock.unitAtOrAfter(instantMs(task.finishedAt)) + keepsUnits(input, job, task);
    const bay = input.bays.find(({ id }) => id === task.pinnedBayId);
    if (until <= 0 || bay === undefined) return [];
    return [{ id: dryingId(task.id), duration: until, group: job.id, place: bay.id }];
  });
}

/**
 * A sign-off after a done task must not fall to whoever did that one. The general model knows workers by skill only, so
 * such a task gets a skill of its own, which everybody able but that person has.
 */
function skillApart({
  task,
  waits,
}: OpenTask): { readonly skill: string; readonly not: readonly string[] } | null {
  const not = waits
    .filter(({ prerequisite, freesAt }) => prerequisite.byAnotherPerson && freesAt !== null)
    .flatMap(({ before }) => (before.pinnedPersonId === null ? [] : [before.pinnedPersonId]));
  return not.length === 0 || task.pinnedPersonId !== null
    ? null
    : { skill: `${task.skill} for ${task.id}`, not };
}

// Is this plan possible? Judged from the shop's own words on the wall clock, with Temporal and none of the planner's
// code: order and waits, one task a person, skills, hours and leave, bays, parts, wishes, what is done already.
import type {
  PlanJob,
  PlannedTask,
  PlanPerson,
  PlanTask,
  ShopPlan,
  ShopPlanInput,
} from '@gusset/contracts/planning';
import { Temporal } from 'temporal-polyfill';

export type ShopPlanFault = {
  readonly rule:
    | 'missing'
    | 'past'
    | 'length'
    | 'order'
    | 'part'
    | 'wish'
    | 'hours'
    | 'skill'
    | 'person-twice'
    | 'bay'
    | 'history';
  readonly taskId: string;
  readonly detail: string;
};

const MINUTE_MS = 60_000;
const WEEKDAYS = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'] as const;

const ms = (iso: string): number => Temporal.Instant.from(iso).epochMilliseconds;

type Entry = { readonly job: PlanJob; readonly task: PlanTask; readonly planned: PlannedTask };
type Span = { readonly from: number; readonly to: number };

/** Everything that is wrong with the plan; empty = it can be worked. */
export function checkShopPlan(input: ShopPlanInput, plan: ShopPlan): ShopPlanFault[] {
  const planned = new Map(plan.tasks.map((task) => [task.taskId, task]));
  const entries: Entry[] = [];
  const missing: ShopPlanFault[] = [];
  for (const job of input.jobs) {
    for (const task of job.tasks) {
      const found = planned.get(task.id);
      if (found === undefined)
        missing.push({ rule: 'missing', taskId: task.id, detail: 'is not in the plan' });
      else entries.push({ job, task, planned: found });
    }
  }
  const open = entries.filter(({ task }) => task.state !== 'done');
  return [
    ...missing,
    ...entries.filter(({ task }) => task.state === 'done').flatMap(historyFaults),
    ...open.flatMap((entry) => [
      ...lengthFaults(input, entry),
      ...orderFaults(input, entry, planned),
      ...partFaults(input, entry),
      ...personFaults(input, entry),
      ...bayKindFaults(input, entry),
    ]),
    ...meetings(open, (entry) => entry.planned.personId, spanOf, 'person-twice'),
    ...bayMeetings(input, open),
  ];
}

function historyFaults({ task, planned }: Entry): ShopPlanFault[] {
  const same = planned.endsAt === task.finishedAt && planned.startsAt === task.startedAt;
  return same ? [] : [{ rule: 'history', taskId: task.id, detail: 'was done at another time' }];
}

function spanOf({ planned }: Entry): Span {
  return { from: ms(planned.segments[0]?.startsAt ?? planned.endsAt), to: ms(planned.endsAt) };
}

function lengthFaults(input: ShopPlanInput, { task, planned }: Entry): ShopPlanFault[] {
  const faults: ShopPlanFault[] = [];
  const worked = planned.segments.reduce((sum, { startsAt, endsAt }) => sum + ms(endsAt) - ms(startsAt), 0);
  const quarters = Math.max(1, Math.ceil(task.remainingMinutes / 15));
  if (worked !== quarters * 15 * MINUTE_MS) {
    faults.push({ rule: 'length', taskId: task.id, detail: `works ${worked / MINUTE_MS} min` });
  }
  if (planned.segments.some(({ startsAt }) => ms(startsAt) < ms(input.now))) {
    faults.push({ rule: 'past', taskId: task.id, detail: 'would have to be worked on before now' });
  }
  return faults;
}

function orderFaults(
  input: ShopPlanInput,
  { job, task, planned }: Entry,
  all: ReadonlyMap<string, PlannedTask>,
): ShopPlanFault[] {
  if (task.state === 'running') return [];
  const start = ms(planned.segments[0]?.startsAt ?? planned.endsAt);
  const faults = task.prerequisites.flatMap((prerequisite): ShopPlanFault[] => {
    const before = job.tasks.find(({ key }) => key === prerequisite.taskKey);
    const end = all.get(before?.id ?? '')?.endsAt;
    const chemistry = prerequisite.reason !== null && prerequisite.reason !== 'customer';
    const wait = prerequisite.waitMinutes * (chemistry ? input.settings.waitFactor : 1);
    if (end !== undefined && start >= ms(end) + wait * MINUTE_MS) return [];
    return [{ rule: 'order', taskId: task.id, detail: `too early after ${prerequisite.taskKey}` }];
  });
  if (task.earliestStart !== null && start < ms(task.earliestStart)) {
    faults.push({ rule: 'wish', taskId: task.id, detail: 'starts before it was wished' });
  }
  return faults;
}

function partFaults(input: ShopPlanInput, { job, task, planned }: Entry): ShopPlanFault[] {
  if (task.state === 'running') return [];
  const start = ms(planned.segments[0]?.startsAt ?? planned.endsAt);
  return job.partDates.flatMap((part): ShopPlanFault[] => {
    if (part.receivedOn !== null || part.expectedOn === null) return [];
    if (!part.neededByTaskKeys.includes(task.key)) return [];
    const time = Temporal.PlainTime.from(
      input.settings.partsInHandAt === '24:00' ? '23:59' : input.settings.partsInHandAt,
    );
    const due = Temporal.PlainDate.from(part.expectedOn).toZonedDateTime({
      timeZone: input.calendar.timeZone,
      plainTime: time,
    }).epochMilliseconds;
    return start >= due
      ? []
      : [{ rule: 'part', taskId: task.id, detail: `starts before ${part.description} is in` }];
  });
}

function personFaults(input: ShopPlanInput, { task, planned }: Entry): ShopPlanFault[] {
  const person = input.people.find(({ id }) => id === planned.personId);
  if (person === undefined) return [{ rule: 'skill', taskId: task.id, detail: 'nobody does it' }];
  const faults: ShopPlanFault[] = [];
  const able = task.skill === 'any' || person.skills.includes(task.skill);
  const pinned = task.pinnedPersonId === person.id;
  if (!able && !(pinned && task.state === 'running')) {
    faults.push({ rule: 'skill', taskId: task.id, detail: `${person.name} has no ${task.skill}` });
  }
  if (task.state === 'planned' && task.pinnedPersonId !== null && !pinned) {
    faults.push({
      rule: 'skill',
      taskId: task.id,
      detail: `${person.name} instead of the one it was given to`,
    });
  }
  for (const { startsAt, endsAt } of planned.segments) {
    const quarters = (ms(endsAt) - ms(startsAt)) / (15 * MINUTE_MS);
    const moments = Array.from({ length: quarters }, (_, k) => ms(startsAt) + k * 15 * MINUTE_MS);
    if ([...moments, ms(endsAt) - 1].every((at) => worksAt(input, person, at))) continue;
    faults.push({ rule: 'hours', taskId: task.id, detail: `${person.name} isn't here at ${startsAt}` });
  }
  return faults;
}

/** Straight from the calendar: is this wall-clock moment within somebody's hours and outside leave? */
function worksAt(input: ShopPlanInput, person: PlanPerson, atMs: number): boolean {
  const wall = Temporal.Instant.fromEpochMilliseconds(atMs).toZonedDateTimeISO(input.calendar.timeZone);
  const date = wall.toPlainDate().toString();
  const time = wall.toPlainTime().toString({ smallestUnit: 'minute', roundingMode: 'trunc' });
  if (input.calendar.closedOn.includes(date)) return false;
  const weekday = WEEKDAYS[wall.dayOfWeek - 1] ?? 'monday';
  const day = (person.hours ?? input.calendar.weeklyHours)[weekday];
  const away = person.leave.some(
    (leave) =>
      (date > leave.fromOn || (date === leave.fromOn && time >= (leave.fromTime ?? '00:00'))) &&
      (date < leave.toOn || (date === leave.toOn && time < (leave.untilTime ?? '24:00'))),
  );
  return !away && day.some(({ from, until }) => from <= time && time < until);
}

function bayKindFaults(input: ShopPlanInput, { task, planned }: Entry): ShopPlanFault[] {
  const bay = input.bays.find(({ id }) => id === planned.bayId);
  if (task.pinnedBayId !== null) {
    return bay?.id === task.pinnedBayId
      ? []
      : [{ rule: 'bay', taskId: task.id, detail: 'is in another bay' }];
  }
  if (task.bayKind === null || bay?.kinds.includes(task.bayKind) === true) return [];
  return [{ rule: 'bay', taskId: task.id, detail: `is in no ${task.bayKind} bay` }];
}

function meetings(
  entries: readonly Entry[],
  keyOf: (entry: Entry) => string | null,
  span: (entry: Entry) => Span,
  rule: ShopPlanFault['rule'],
): ShopPlanFault[] {
  return entries.flatMap((one, k) =>
    entries.slice(k + 1).flatMap((two): ShopPlanFault[] => {
      const key = keyOf(one);
      if (key === null || key !== keyOf(two)) return [];
      const a = span(one);
      const b = span(two);
      if (a.from >= b.to || b.from >= a.to) return [];
      return [{ rule, taskId: one.task.id, detail: `meets ${two.task.id} with ${key}` }];
    }),
  );
}

/** One job at a time in a bay, its setting time counted; within a job, one task at a time except at the vehicle. */
function bayMeetings(input: ShopPlanInput, open: readonly Entry[]): ShopPlanFault[] {
  const keptUntil = ({ job, task, planned }: Entry): number => {
    const kept = job.tasks
      .filter(({ state }) => state === 'planned')
      .flatMap(({ prerequisites }) => prerequisites.filter(({ taskKey }) => taskKey === task.key))
      .map(({ keepsBayMinutes, reason }) =>
        reason === null || reason === 'customer'
          ? keepsBayMinutes
          : keepsBayMinutes * input.settings.waitFactor,
      );
    return ms(planned.endsAt) + Math.max(0, ...kept) * MINUTE_MS;
  };
  return open.flatMap((one, k) =>
    open.slice(k + 1).flatMap((two): ShopPlanFault[] => {
      const bay = input.bays.find(({ id }) => id === one.planned.bayId);
      if (bay === undefined || one.planned.bayId !== two.planned.bayId) return [];
      const own = one.job.id === two.job.id;
      const vehicle = bay.kinds.includes('vehicle');
      if (own && vehicle) return [];
      const gap = own || !vehicle ? 0 : input.settings.vehicleMoveMinutes * MINUTE_MS;
      const a = spanOf(one);
      const b = spanOf(two);
      const aTo = (own ? a.to : keptUntil(one)) + gap;
      const bTo = (own ? b.to : keptUntil(two)) + gap;
      if (a.from >= bTo || b.from >= aTo) return [];
      return [{ rule: 'bay', taskId: one.task.id, detail: `meets ${two.task.id} in ${bay.name}` }];
    }),
  );
}

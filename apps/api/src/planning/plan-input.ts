// What the forward plan is made from: the shop's hours, people, leave, bays, and every job with tasks still to do.
import {
  type PartDate,
  type PlanJob,
  type PlanTask,
  type ShopPlanInput,
  taskPrerequisiteSchema,
  type WeeklyHours,
} from '@gusset/contracts/planning';
import type { ShopSettings } from '@gusset/contracts/shop';
import { waitFactorAt } from '@gusset/planning';
import { isRefusal, toInstant, toShopTime } from '@gusset/units';
import { z } from 'zod';
import { toShopDate } from '../data/dates.ts';
import type { ShopView } from '../shops/shop.service.ts';
import type { OpenJobRow, OpenTaskRow, PlanningRows } from './plan.queries.ts';
import { workedMinutesBetween } from './worked-minutes.ts';

const DAYS = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'] as const;
const ANY_SKILL = 'any';
/** Jobs that the customer has not approved yet queue behind all that are. */
const NOT_APPROVED_RANK = 10_000;
/** Below the coldest temperature at which glue may be used the shop waits longest; the task's own caution says why. */
const COLDEST_FACTOR = 2;
const prerequisitesSchema = z.array(taskPrerequisiteSchema);

export function shopPlanInput(shop: ShopView, rows: PlanningRows, now: Date): ShopPlanInput {
  const { settings, timeZone } = shop;
  const lapsed = new Set(lapsedPins(rows).map(({ taskId }) => taskId));
  return {
    now: now.toISOString(),
    calendar: {
      timeZone,
      weeklyHours: weeklyHours(settings),
      closedOn: settings.closedDays.map(({ on }) => on).sort(),
    },
    people: rows.people.map((person) => ({
      id: person.id,
      name: person.name,
      skills: [...new Set([...person.skills, ANY_SKILL])],
      leave: person.leaves.map((leave) => ({
        fromOn: toShopDate(leave.fromOn) ?? '',
        toOn: toShopDate(leave.toOn) ?? '',
        fromTime: null,
        untilTime: null,
        note: leave.note,
      })),
      hours: null,
    })),
    bays: rows.bays.map((bay) => ({
      id: bay.id,
      name: bay.name,
      kinds: (['bench', 'vehicle', 'finishing'] as const).filter((kind) => bay.kinds.includes(kind)),
    })),
    jobs: rows.jobs.map((job) => toPlanJob(job, { shop, now, known: knownIds(rows), lapsed })),
    settings: {
      waitFactor: waitFactor(settings.workshopTemperatureC),
      promiseBufferMinutes: Math.min(10_000, settings.promiseBufferMinutes),
      partsInHandAt: '13:00',
      unknownPartDays: 7,
      vehicleMoveMinutes: 15,
    },
  };
}

function waitFactor(temperatureC: number): number {
  const factor = waitFactorAt(temperatureC);
  return isRefusal(factor) ? COLDEST_FACTOR : factor;
}

function weeklyHours({ weeklyHours: hours }: ShopSettings): WeeklyHours {
  const entries = DAYS.map((day, i) => [
    day,
    (hours[i] ?? []).map(({ fromMinute, toMinute }) => ({ from: clock(fromMinute), until: clock(toMinute) })),
  ]);
  return Object.fromEntries(entries);
}

function clock(minuteOfDay: number): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${two(Math.floor(minuteOfDay / 60))}:${two(minuteOfDay % 60)}`;
}

/** A pin on somebody who does not have the skill (any more): the plan goes on without it, and says so. */
export type LapsedPin = {
  readonly taskId: string;
  readonly jobId: string;
  readonly title: string;
  readonly personName: string;
  readonly skill: string;
};

export function lapsedPins({ people, jobs }: PlanningRows): LapsedPin[] {
  const byId = new Map(people.map((person) => [person.id, person]));
  return jobs.flatMap(({ tasks }) =>
    tasks.flatMap((task): LapsedPin[] => {
      const pinned = byId.get(task.pinnedPersonId ?? '');
      if (task.startedAt !== null || pinned === undefined) return [];
      if (task.skill === ANY_SKILL || pinned.skills.includes(task.skill)) return [];
      const { id, jobId, title, skill } = task;
      return [{ taskId: id, jobId, title, personName: pinned.name, skill }];
    }),
  );
}

type Frame = {
  readonly shop: ShopView;
  readonly now: Date;
  readonly known: ReadonlySet<string>;
  /** Tasks whose pin on a person has lapsed. */
  readonly lapsed: ReadonlySet<string>;
};

/** Somebody who has left or a bay that was given up holds no task any more: whoever suits takes it. */
function knownIds({ people, bays }: PlanningRows): ReadonlySet<string> {
  return new Set([...people, ...bays].map(({ id }) => id));
}

function toPlanJob(job: OpenJobRow, frame: Frame): PlanJob {
  return {
    id: job.id,
    number: job.number,
    rank: job.planRank + (job.approvedAt === null ? NOT_APPROVED_RANK : 0),
    promisedOn: toShopDate(job.promisedOn),
    approvedAt: job.approvedAt?.toISOString() ?? null,
    tasks: job.tasks.map((task) => toPlanTask(task, frame)),
    partDates: partDates(job, frame.shop.timeZone),
  };
}

function toPlanTask(task: OpenTaskRow, { shop, now, known, lapsed }: Frame): PlanTask {
  const ifKnown = (id: string | null) => (id !== null && known.has(id) ? id : null);
  const state = task.finishedAt !== null ? 'done' : task.startedAt !== null ? 'running' : 'planned';
  const worked = task.startedAt === null ? 0 : workedMinutesBetween(task.startedAt, now, shop);
  return {
    id: task.id,
    key: task.key,
    title: task.title,
    skill: task.skill,
    remainingMinutes: state === 'planned' ? task.minutes : Math.max(0, task.minutes - worked),
    prerequisites: prerequisitesSchema.parse(task.prerequisites),
    bayKind: (['bench', 'vehicle', 'finishing'] as const).find((kind) => kind === task.bayKind) ?? null,
    vehicleOnSite: task.vehicleOnSite,
    breakable: task.breakable,
    state,
    startedAt: task.startedAt?.toISOString() ?? null,
    finishedAt: task.finishedAt?.toISOString() ?? null,
    pinnedPersonId: ifKnown(task.startedBy) ?? (lapsed.has(task.id) ? null : ifKnown(task.pinnedPersonId)),
    pinnedBayId: ifKnown(task.pinnedBayId),
    earliestStart:
      task.earliestOn === null ? null : toInstant(toShopDate(task.earliestOn) ?? '', '00:00', shop.timeZone),
  };
}

/** Each delivery holds the tasks that need its group of parts; a line that the parts sheet lost holds nothing. */
function partDates(job: OpenJobRow, zone: string): PartDate[] {
  return job.deliveries.map((delivery) => {
    const group = job.groupOfLine.get(delivery.lineKey);
    return {
      lineKey: delivery.lineKey,
      description: delivery.description === '' ? delivery.lineKey : delivery.description,
      expectedOn: toShopDate(delivery.expectedOn),
      receivedOn:
        delivery.receivedAt === null ? null : toShopTime(delivery.receivedAt.toISOString(), zone).date,
      neededByTaskKeys: job.tasks
        .filter((task) => group !== undefined && task.needsPartLines.includes(group))
        .map((task) => task.key),
    };
  });
}

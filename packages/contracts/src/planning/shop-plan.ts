// What the forward plan says: who does what where and when, what held each task, and when each job can be promised.
import { z } from 'zod';
import { waitReasonSchema } from './task.ts';
import { instantSchema, planKeySchema, shopDateSchema } from './time-and-keys.ts';

const name = z.string().max(200);
const minutes = z.number().int().min(0);

/**
 * Why a task doesn't start earlier. `prerequisite`: another task ends just then. `wait`: something sets until then.
 * `person`, `bay`: taken by another task (`taskId`), or away (`taskId` null). `part`: not in hand before.
 * `hours`: the shop or the person opens then, or no earlier stretch is long enough. `earliest-start`: wished so.
 */
export const boundBySchema = z.strictObject({
  kind: z.enum(['prerequisite', 'wait', 'person', 'bay', 'part', 'hours', 'earliest-start']),
  /** What it is called: the task, person, bay or part. */
  what: name,
  /** Id of the person, bay or part line; null for the other kinds. */
  id: planKeySchema.nullable(),
  /** The task behind it: the one waited for or the one that has the person or bay; null where there is none. */
  taskId: planKeySchema.nullable(),
  jobId: planKeySchema.nullable(),
  until: instantSchema,
  /** Wall-clock minutes that this alone cost: start less the moment everything else was ready. */
  lostMinutes: minutes,
});
export type BoundBy = Readonly<z.infer<typeof boundBySchema>>;

/** A stretch of work between two interruptions. */
export const workSegmentSchema = z.strictObject({ startsAt: instantSchema, endsAt: instantSchema });
export type WorkSegment = Readonly<z.infer<typeof workSegmentSchema>>;

export const plannedTaskSchema = z.strictObject({
  taskId: planKeySchema,
  jobId: planKeySchema,
  key: planKeySchema,
  title: name,
  state: z.enum(['planned', 'running', 'done']),
  /** Of a running or done task, when it was begun (null where nobody wrote it down). */
  startsAt: instantSchema.nullable(),
  endsAt: instantSchema,
  /** Work still to do, split where the shop closes; empty for a done task. */
  segments: z.array(workSegmentSchema),
  personId: planKeySchema.nullable(),
  bayId: planKeySchema.nullable(),
  /** Null for done and running tasks and for those that start at once. */
  boundBy: boundBySchema.nullable(),
});
export type PlannedTask = Readonly<z.infer<typeof plannedTaskSchema>>;

/** Something sets, dries or is being thought about: nobody is needed. Drawn dashed. */
export const settingIntervalSchema = z.strictObject({
  kind: z.literal('setting'),
  jobId: planKeySchema,
  afterTaskId: planKeySchema,
  beforeTaskId: planKeySchema,
  title: name,
  reason: waitReasonSchema.nullable(),
  startsAt: instantSchema,
  endsAt: instantSchema,
  /** Bay that is taken up, and until when; null where the work stands aside. */
  bayId: planKeySchema.nullable(),
  bayUntil: instantSchema.nullable(),
});
export type SettingInterval = Readonly<z.infer<typeof settingIntervalSchema>>;

const heldTask = { heldTaskId: planKeySchema, heldTitle: name, lostMinutes: minutes };

/** The one line why a job isn't ready earlier, as code and values; the sentence is made where it is shown. */
export const planReasonSchema = z.discriminatedUnion('code', [
  z.strictObject({ code: z.literal('nothing-left') }),
  z.strictObject({ code: z.literal('work'), minutes }),
  z.strictObject({
    code: z.literal('setting'),
    ...heldTask,
    afterTaskId: planKeySchema,
    afterTitle: name,
    reason: waitReasonSchema.nullable(),
    until: instantSchema,
  }),
  z.strictObject({
    code: z.literal('person-busy'),
    ...heldTask,
    personId: planKeySchema,
    personName: name,
    onTaskId: planKeySchema,
    onTitle: name,
    onJobId: planKeySchema,
    onJobNumber: z.number().int(),
    until: instantSchema,
  }),
  z.strictObject({
    code: z.literal('person-away'),
    ...heldTask,
    personId: planKeySchema,
    personName: name,
    until: instantSchema,
  }),
  z.strictObject({
    code: z.literal('bay-taken'),
    ...heldTask,
    bayId: planKeySchema,
    bayName: name,
    onTaskId: planKeySchema,
    onTitle: name,
    onJobId: planKeySchema,
    onJobNumber: z.number().int(),
    until: instantSchema,
  }),
  z.strictObject({
    code: z.literal('part-due'),
    ...heldTask,
    lineKey: planKeySchema,
    description: name,
    /** Null where nobody knows and the shop's usual days were reckoned. */
    expectedOn: shopDateSchema.nullable(),
    until: instantSchema,
  }),
  z.strictObject({
    code: z.literal('after-task'),
    ...heldTask,
    afterTaskId: planKeySchema,
    afterTitle: name,
    until: instantSchema,
  }),
  z.strictObject({ code: z.literal('shop-closed'), ...heldTask, until: instantSchema }),
  z.strictObject({ code: z.literal('earliest-start'), ...heldTask, until: instantSchema }),
]);
export type PlanReason = Readonly<z.infer<typeof planReasonSchema>>;

/** One step back from a job's finish; it may lead into another job that has the person or bay. */
export const chainStepSchema = z.strictObject({
  taskId: planKeySchema,
  jobId: planKeySchema,
  title: name,
  startsAt: instantSchema,
  endsAt: instantSchema,
  boundBy: boundBySchema.nullable(),
});
export type ChainStep = Readonly<z.infer<typeof chainStepSchema>>;

export const plannedJobSchema = z.strictObject({
  jobId: planKeySchema,
  number: z.number().int(),
  /** Last task's end; null where nothing is left to do and nothing was recorded. */
  finishesAt: instantSchema.nullable(),
  /** First date that can honestly be promised: finish plus buffer, as a date in the shop. Null with `finishesAt`. */
  promiseOn: shopDateSchema.nullable(),
  promisedOn: shopDateSchema.nullable(),
  /** Calendar days from the promised date to the planned finish, no buffer counted: above 0 = late; null = no promise. */
  lateDays: z.number().int().nullable(),
  /** From the first step to the job's last task. */
  criticalChain: z.array(chainStepSchema),
  because: planReasonSchema,
  /** When the customer's vehicle must be here. */
  vehicleVisits: z.array(workSegmentSchema),
});
export type PlannedJob = Readonly<z.infer<typeof plannedJobSchema>>;

/** Somebody's work on one date, in order. */
export const dayListSchema = z.strictObject({
  personId: planKeySchema,
  on: shopDateSchema,
  items: z.array(
    z.strictObject({
      taskId: planKeySchema,
      jobId: planKeySchema,
      bayId: planKeySchema.nullable(),
      startsAt: instantSchema,
      endsAt: instantSchema,
    }),
  ),
});
export type DayList = Readonly<z.infer<typeof dayListSchema>>;

/** What somebody should look at; none of it stops the plan. */
export const planFindingSchema = z.discriminatedUnion('code', [
  z.strictObject({
    code: z.literal('part-overdue'),
    jobId: planKeySchema,
    lineKey: planKeySchema,
    description: name,
    expectedOn: shopDateSchema,
  }),
  z.strictObject({
    code: z.literal('part-without-date'),
    jobId: planKeySchema,
    lineKey: planKeySchema,
    description: name,
    reckonedOn: shopDateSchema,
  }),
  z.strictObject({
    code: z.literal('longer-than-a-stretch'),
    jobId: planKeySchema,
    taskId: planKeySchema,
    taskMinutes: minutes,
    longestStretchMinutes: minutes,
  }),
  z.strictObject({ code: z.literal('no-second-person'), jobId: planKeySchema, taskId: planKeySchema }),
  z.strictObject({
    code: z.literal('started-out-of-order'),
    jobId: planKeySchema,
    taskId: planKeySchema,
    beforeTaskId: planKeySchema,
  }),
  z.strictObject({ code: z.literal('promise-missed'), jobId: planKeySchema, lateDays: z.number().int() }),
]);
export type PlanFinding = Readonly<z.infer<typeof planFindingSchema>>;

export const shopPlanSchema = z.strictObject({
  plannedAt: instantSchema,
  timeZone: z.string(),
  jobs: z.array(plannedJobSchema),
  /** By start, then id. */
  tasks: z.array(plannedTaskSchema),
  settingIntervals: z.array(settingIntervalSchema),
  dayLists: z.array(dayListSchema),
  findings: z.array(planFindingSchema),
  /** Schedules tried before this one was kept. */
  schedulesTried: z.number().int(),
});
export type ShopPlan = Readonly<z.infer<typeof shopPlanSchema>>;

/** A promise that a change moved. */
export const changedPromiseSchema = z.strictObject({
  jobId: planKeySchema,
  number: z.number().int(),
  /** Null where one of the two plans doesn't hold the job. */
  from: shopDateSchema.nullable(),
  to: shopDateSchema.nullable(),
  fromFinishesAt: instantSchema.nullable(),
  toFinishesAt: instantSchema.nullable(),
  /** Calendar days, above 0 = later; null where one date is missing. */
  movedDays: z.number().int().nullable(),
  /** What held the task at which the job first slipped; the job's own reason where none slipped. */
  because: planReasonSchema,
});
export type ChangedPromise = Readonly<z.infer<typeof changedPromiseSchema>>;

// What has to be done, in which order and with what: tasks of a template and tasks of a job.
import { z } from 'zod';
import {
  bayKindSchema,
  instantSchema,
  planKeySchema,
  shopDateSchema,
  WAIT_MINUTES_LIMIT,
} from './time-and-keys.ts';

/** What passes during a wait. `glue`, `coat` and `adhesive` set more slowly in a cold shop; `customer` does not. */
export const waitReasonSchema = z.enum(['glue', 'coat', 'adhesive', 'customer']);
export type WaitReason = z.infer<typeof waitReasonSchema>;

/** One thing that must be finished first, and how long to leave it alone afterwards. */
export const taskPrerequisiteSchema = z.strictObject({
  taskKey: planKeySchema,
  kind: z.literal('finish-start').default('finish-start'),
  /** Minutes on the wall clock after the other task's end: nights and weekends count, nobody is needed. */
  waitMinutes: z.number().int().min(0).max(WAIT_MINUTES_LIMIT).default(0),
  /** What is waited for; null where nothing is. */
  reason: waitReasonSchema.nullable().default(null),
  /** Minutes of the wait, from its beginning, for which the work stays where it was done and takes up that bay. */
  keepsBayMinutes: z.number().int().min(0).max(WAIT_MINUTES_LIMIT).default(0),
  /** True where somebody else than the other task's person must do this one, as in a sign-off. */
  byAnotherPerson: z.boolean().default(false),
});
export type TaskPrerequisite = Readonly<z.infer<typeof taskPrerequisiteSchema>>;

export const taskHoursSchema = z.strictObject({
  min: z.number().positive().max(1_000),
  typical: z.number().positive().max(1_000),
  max: z.number().positive().max(1_000),
});
/** Hours of labour for one person: quick, usual and slow. */
export type TaskHours = Readonly<z.infer<typeof taskHoursSchema>>;

export const taskPhaseSchema = z.enum([
  'intake',
  'design',
  'parts',
  'wood',
  'finish',
  'wiring',
  'fitting',
  'handover',
]);
export type TaskPhase = z.infer<typeof taskPhaseSchema>;

/** Kinds of parts that a task may be held for; the parts sheet files each of its lines under one. */
export const partGroupSchema = z.enum([
  'sheet-goods',
  'hardware',
  'finish',
  'power',
  'signal',
  'amplifier',
  'driver',
]);
export type PartGroup = z.infer<typeof partGroupSchema>;

/** One task of a template, before a job makes it its own. */
export const taskTemplateSchema = z.strictObject({
  key: planKeySchema,
  title: z.string().min(1).max(120),
  /** Skill that the person must have; `any` = anybody. */
  skill: planKeySchema,
  hours: taskHoursSchema,
  prerequisites: z.array(taskPrerequisiteSchema).max(20),
  bayKind: bayKindSchema.nullable(),
  /** True where the customer's vehicle must be here. */
  vehicleOnSite: z.boolean(),
  /** True where closing time or a break may interrupt it and it goes on afterwards. */
  breakable: z.boolean(),
  needsParts: z.array(partGroupSchema).max(7),
  phase: taskPhaseSchema,
});
export type TaskTemplate = Readonly<z.infer<typeof taskTemplateSchema>>;

const planTaskShape = z.strictObject({
  id: planKeySchema,
  /** Unique within the job: prerequisites and parts name it. */
  key: planKeySchema,
  title: z.string().min(1).max(120),
  skill: planKeySchema,
  /** Labour still to do, minutes; of a done task, ignored. */
  remainingMinutes: z.number().min(0),
  prerequisites: z.array(taskPrerequisiteSchema).max(20),
  bayKind: bayKindSchema.nullable(),
  vehicleOnSite: z.boolean().default(false),
  breakable: z.boolean(),
  state: z.enum(['planned', 'running', 'done']),
  startedAt: instantSchema.nullable().default(null),
  finishedAt: instantSchema.nullable().default(null),
  /** Who must do it, or who is at it now; null = whoever suits. */
  pinnedPersonId: planKeySchema.nullable().default(null),
  pinnedBayId: planKeySchema.nullable().default(null),
  /** Not before this moment, whatever else allows; null = no such wish. */
  earliestStart: instantSchema.nullable().default(null),
});

/** One task of a job. `remainingMinutes` is checked by the planner, which names the task when it refuses. */
export const planTaskSchema = planTaskShape
  .refine((task) => task.state !== 'done' || task.finishedAt !== null, {
    message: 'a moment: a done task says when it was finished',
    path: ['finishedAt'],
  })
  .refine((task) => task.state !== 'running' || task.startedAt !== null, {
    message: 'a moment: a running task says when it was started',
    path: ['startedAt'],
  });
export type PlanTask = Readonly<z.infer<typeof planTaskSchema>>;

/** When a part line is expected and which tasks it holds. */
export const partDateSchema = z.strictObject({
  lineKey: planKeySchema,
  description: z.string().min(1).max(200),
  /** Null = ordered or not, nobody knows when it comes. */
  expectedOn: shopDateSchema.nullable(),
  receivedOn: shopDateSchema.nullable(),
  neededByTaskKeys: z.array(planKeySchema).max(60),
});
export type PartDate = Readonly<z.infer<typeof partDateSchema>>;

export const planJobSchema = z.strictObject({
  id: planKeySchema,
  number: z.number().int().min(0).max(99_999_999),
  /** Place in the queue: smaller goes first; equal ranks go by promise, then approval, then number. */
  rank: z.number().int().min(-1_000_000).max(1_000_000).default(0),
  promisedOn: shopDateSchema.nullable(),
  approvedAt: instantSchema.nullable().default(null),
  tasks: z.array(planTaskSchema).max(400),
  partDates: z.array(partDateSchema).max(400),
});
export type PlanJob = Readonly<z.infer<typeof planJobSchema>>;

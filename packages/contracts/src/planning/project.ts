// The general planning problem in whole time units, as `solve plan` takes it: activities, what they use, what comes
// before what. The shop's plan is such a project of 15-minute units.
import { z } from 'zod';
import { planKeySchema } from './time-and-keys.ts';

/** Latest moment, in units, that a project may name. */
export const PROJECT_UNITS_LIMIT = 1_000_000;

const unit = z.number().int().min(0).max(PROJECT_UNITS_LIMIT);
const lag = z.number().int().min(-PROJECT_UNITS_LIMIT).max(PROJECT_UNITS_LIMIT);
const count = z.number().int().min(0).max(10_000);

/** `[from, to)` in units, both sorted and apart: usable only inside; absent = always. */
export const unitCalendarSchema = z.array(z.tuple([unit, unit])).max(50_000);

export const projectResourceSchema = z.strictObject({
  id: planKeySchema,
  capacity: count,
  calendar: unitCalendarSchema.optional(),
});

export const projectWorkerSchema = z.strictObject({
  id: planKeySchema,
  skills: z.array(planKeySchema).max(100),
  calendar: unitCalendarSchema.optional(),
});

/** A place that one group has at a time; `changeover` units pass between two groups. */
export const projectPlaceSchema = z.strictObject({
  id: planKeySchema,
  kinds: z.array(planKeySchema).min(1).max(20),
  /** True where activities of one group may be there together. */
  shared: z.boolean().optional(),
  changeover: unit.optional(),
});

export const projectActivitySchema = z.strictObject({
  id: planKeySchema,
  duration: unit,
  demand: z.record(planKeySchema, count).optional(),
  /** Workers needed at the same time, by skill. */
  skills: z.record(planKeySchema, count).optional(),
  release: unit.optional(),
  /** Latest end. */
  deadline: unit.optional(),
  /** May stop where a calendar closes and go on where it opens; for activities of one worker at most. */
  breakable: z.boolean().optional(),
  /** The only worker who may do it. */
  worker: planKeySchema.optional(),
  /** Activities whose worker must not be this one's, where another has the skill. */
  notByWorkerOf: z.array(planKeySchema).max(20).optional(),
  /** Kind of place that it needs, or the one place that it must have. */
  placeKind: planKeySchema.optional(),
  place: planKeySchema.optional(),
  /** Units after its end for which it still takes up the place. */
  keepsPlace: unit.optional(),
  /** Activities of one group share a place; absent = a group of its own. */
  group: planKeySchema.optional(),
  /** Wished end and what each unit of lateness costs, for the aim `lateness`. */
  due: unit.optional(),
  weight: z.number().min(0).max(1_000_000).optional(),
});

/** FS: `to` starts at least `minLag` (at most `maxLag`) after `from` ends; SS, FF, SF likewise on starts and ends. */
export const projectPrecedenceSchema = z.strictObject({
  from: planKeySchema,
  to: planKeySchema,
  type: z.enum(['FS', 'SS', 'FF', 'SF']).optional(),
  minLag: lag.optional(),
  maxLag: lag.optional(),
});

export const projectSchema = z.strictObject({
  id: z.union([z.string().max(200), z.number()]),
  /** Everything ends at or before this unit. */
  horizon: unit.optional(),
  resources: z.array(projectResourceSchema).max(200).optional(),
  workers: z.array(projectWorkerSchema).max(300).optional(),
  places: z.array(projectPlaceSchema).max(100).optional(),
  activities: z.array(projectActivitySchema).max(3_000),
  precedences: z.array(projectPrecedenceSchema).max(30_000).optional(),
  /** `makespan`: all done soonest. `lateness`: least sum of weight x units after `due`, then soonest. */
  aim: z.enum(['makespan', 'lateness']).optional(),
});
export type Project = Readonly<z.infer<typeof projectSchema>>;
export type ProjectActivity = Readonly<z.infer<typeof projectActivitySchema>>;

export const projectScheduleSchema = z.strictObject({
  id: z.union([z.string(), z.number()]),
  /** Start of each activity; empty where no schedule was found. */
  start: z.record(z.string(), z.number().int()),
  assign: z.record(z.string(), z.array(z.strictObject({ worker: z.string(), skill: z.string() }))).optional(),
  place: z.record(z.string(), z.string()).optional(),
  /** Worked stretches of the activities that were broken. */
  segments: z.record(z.string(), z.array(z.tuple([z.number().int(), z.number().int()]))).optional(),
  /** End of the last activity; null where no schedule was found. */
  makespan: z.number().int().nullable(),
  /** No schedule is shorter. */
  lowerBound: z.number().int(),
  /** True where the makespan is known to be the shortest, or where it is known that no schedule exists. */
  proven: z.boolean(),
  /** Sum of weight x units after due, for the aim `lateness`. */
  lateness: z.number().optional(),
  /** Activities that found no place in the best try, where no schedule was found. */
  unplaced: z.array(z.string()).optional(),
  schedules: z.number().int(),
  seconds: z.number().min(0),
});
export type ProjectSchedule = Readonly<z.infer<typeof projectScheduleSchema>>;

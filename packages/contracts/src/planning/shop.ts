// Who works where and when: the shop's hours, its people, its bays and its planning habits.
import { z } from 'zod';
import { planJobSchema } from './task.ts';
import {
  bayKindSchema,
  instantSchema,
  planKeySchema,
  shopDateSchema,
  timeOfDaySchema,
} from './time-and-keys.ts';

/** Open from `from` until `until`, wall clock, `until` not included. */
export const openIntervalSchema = z
  .strictObject({ from: timeOfDaySchema, until: timeOfDaySchema })
  .refine((interval) => interval.from < interval.until, {
    message: 'a time later than the beginning',
    path: ['until'],
  });
export type OpenInterval = Readonly<z.infer<typeof openIntervalSchema>>;

const dayHoursSchema = z.array(openIntervalSchema).max(8);

/** Open intervals of each weekday; an empty list = closed. A break is the gap between two intervals. */
export const weeklyHoursSchema = z.strictObject({
  monday: dayHoursSchema,
  tuesday: dayHoursSchema,
  wednesday: dayHoursSchema,
  thursday: dayHoursSchema,
  friday: dayHoursSchema,
  saturday: dayHoursSchema,
  sunday: dayHoursSchema,
});
export type WeeklyHours = Readonly<z.infer<typeof weeklyHoursSchema>>;

export const shopCalendarSchema = z.strictObject({
  /** IANA name: `Europe/Berlin`. */
  timeZone: z.string().min(1).max(64),
  weeklyHours: weeklyHoursSchema,
  closedOn: z.array(shopDateSchema).max(2_000),
});
export type ShopCalendar = Readonly<z.infer<typeof shopCalendarSchema>>;

/** Away from the first date to the last, both included; times cut the first and the last day. */
export const leaveSchema = z
  .strictObject({
    fromOn: shopDateSchema,
    toOn: shopDateSchema,
    /** Away from this time on the first day; null = all day. */
    fromTime: timeOfDaySchema.nullable().default(null),
    /** Back at this time on the last day; null = not that day. */
    untilTime: timeOfDaySchema.nullable().default(null),
    note: z.string().max(200).default(''),
  })
  .refine((leave) => leave.fromOn <= leave.toOn, { message: 'the first date or later', path: ['toOn'] });
export type Leave = Readonly<z.infer<typeof leaveSchema>>;

export const planPersonSchema = z.strictObject({
  id: planKeySchema,
  name: z.string().min(1).max(120),
  skills: z.array(planKeySchema).max(60),
  leave: z.array(leaveSchema).max(400),
  /** Own hours; null = the shop's. Closed dates count either way. */
  hours: weeklyHoursSchema.nullable().default(null),
});
export type PlanPerson = Readonly<z.infer<typeof planPersonSchema>>;

export const planBaySchema = z.strictObject({
  id: planKeySchema,
  name: z.string().min(1).max(120),
  kinds: z.array(bayKindSchema).min(1).max(3),
});
export type PlanBay = Readonly<z.infer<typeof planBaySchema>>;

export const planSettingsSchema = z.strictObject({
  /** Glue, coats and adhesive take this many times as long as at 20 °C. */
  waitFactor: z.number().min(1).max(10).default(1),
  /** Shop minutes kept between the planned finish and the promise. */
  promiseBufferMinutes: z.number().int().min(0).max(10_000).default(240),
  /** Parts due on a day are counted as in hand from this time of it. */
  partsInHandAt: timeOfDaySchema.default('13:00'),
  /** A part without a date is reckoned this many days from today, and named in the findings. */
  unknownPartDays: z.number().int().min(0).max(365).default(7),
  /** Minutes to take one vehicle out of a bay and bring the next one in. */
  vehicleMoveMinutes: z.number().int().min(0).max(240).default(15),
});
export type PlanSettings = Readonly<z.infer<typeof planSettingsSchema>>;

export const shopPlanInputSchema = z.strictObject({
  now: instantSchema,
  calendar: shopCalendarSchema,
  people: z.array(planPersonSchema).max(200),
  bays: z.array(planBaySchema).max(100),
  jobs: z.array(planJobSchema).max(400),
  settings: planSettingsSchema,
});
/** Everything a forward plan is made from. */
export type ShopPlanInput = Readonly<z.infer<typeof shopPlanInputSchema>>;

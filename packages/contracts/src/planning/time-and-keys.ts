// The small words that every planning contract uses: keys, instants, dates and times of day.
import { z } from 'zod';

/** Record ids, task keys, part line keys. */
export const planKeySchema = z.string().min(1).max(80);

/** A moment in UTC: `2026-11-24T15:30:00Z`. */
export const instantSchema = z.iso.datetime();

/** A date of the shop's wall calendar: `2026-11-24`. */
export const shopDateSchema = z.iso.date();

/** A time of the shop's wall clock, minutes only: `08:00`; `24:00` closes a day at midnight. */
export const timeOfDaySchema = z.string().regex(/^(([01]\d|2[0-3]):[0-5]\d|24:00)$/, 'a time such as 08:00');

/** Longest single task that a plan takes, in minutes of labour (1000 h). */
export const TASK_MINUTES_LIMIT = 60_000;

/** Longest wait between two tasks, in minutes on the wall clock (60 days). */
export const WAIT_MINUTES_LIMIT = 86_400;

/** Where a task is done; null elsewhere means that no bay is needed. */
export const bayKindSchema = z.enum(['bench', 'vehicle', 'finishing']);
export type BayKind = z.infer<typeof bayKindSchema>;

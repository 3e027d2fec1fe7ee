// Sheet 09, Plan: the job's tasks as they will be worked, with what a person decided about them. Dates are not in
// here: they come from the shop's forward plan, which changes with every other job.
import { z } from 'zod';
import { idSchema, shopDateSchema } from '../common/index.ts';
import type { JobTaskSpec } from '../price/index.ts';

/** What a person decided about one task; null = whoever suits, wherever there is room, as soon as it can be. */
export const taskPinSchema = z.strictObject({
  taskKey: z.string().min(1).max(60),
  personId: idSchema.nullable(),
  bayId: idSchema.nullable(),
  earliestOn: shopDateSchema.nullable(),
});
export type TaskPin = z.infer<typeof taskPinSchema>;

export const planInputSchema = z.strictObject({
  pins: z.array(taskPinSchema).max(120),
  /** Place in the queue: smaller goes before the others. */
  rank: z.number().int().min(-1_000).max(1_000),
});
export type PlanInput = z.infer<typeof planInputSchema>;

export type PlanFacts = {
  /** Names of the people and bays that pins speak of. */
  readonly names: readonly { readonly id: string; readonly name: string }[];
};

export type PlanResultTask = JobTaskSpec & Omit<TaskPin, 'taskKey'>;
export type PlanResult = {
  readonly tasks: readonly PlanResultTask[];
  readonly rank: number;
  readonly minutes: number;
};

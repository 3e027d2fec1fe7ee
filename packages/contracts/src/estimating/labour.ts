// Working time and what an hour of it costs and sells for.
import { z } from 'zod';
import { priceMinorSchema } from '../common/index.ts';
import { skillSchema } from '../shop/index.ts';

export const labourTaskSchema = z.strictObject({
  key: z.string().min(1).max(60),
  title: z.string().min(1).max(300),
  skill: skillSchema,
  minutes: z.number().int().min(0).max(525_600),
});
export type LabourTask = Readonly<z.infer<typeof labourTaskSchema>>;

export const labourRatesSchema = z.strictObject({
  /** What an hour sells for where the skill has no rate of its own. */
  hourlyRateMinor: priceMinorSchema,
  hourlyCostMinor: priceMinorSchema,
  bySkill: z.partialRecord(
    skillSchema,
    z.strictObject({ hourlyRateMinor: priceMinorSchema, hourlyCostMinor: priceMinorSchema }),
  ),
});
export type LabourRates = Readonly<z.infer<typeof labourRatesSchema>>;

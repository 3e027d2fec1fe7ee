// In which order a box goes together, and what has to wait for glue. Lengths mm, times in minutes.
import { z } from 'zod';

export const assemblyStepSchema = z.strictObject({
  order: z.number().int().positive(),
  /**
   * `openings`: cut while the panels are loose. `laminate`: doublers onto their panel. `dry`: all of it without glue.
   * `glue`: these panels onto those that stand. `strips`: corner strips and sealing fillets. `try`: carry the open
   * carcass into the vehicle. `close`: the last panel. `leak`: test the seams. `flush`: trim and round edges over.
   */
  what: z.enum(['openings', 'laminate', 'dry', 'glue', 'strips', 'try', 'close', 'leak', 'flush']),
  /** Panels that this step adds or works on. */
  marks: z.array(z.string()),
  /** Glued in this step. */
  seamMm: z.number().nonnegative(),
  screws: z.number().int().nonnegative(),
  clamps: z.number().int().nonnegative(),
  /** In clamps, then until it may be carried or machined, at the temperature asked for. */
  clampMinutes: z.number().nonnegative(),
  waitMinutes: z.number().nonnegative(),
});
export type AssemblyStep = Readonly<z.infer<typeof assemblyStepSchema>>;

export const assemblyPlanSchema = z.strictObject({
  steps: z.array(assemblyStepSchema),
  /** Side that lies on the bench first, and the panel that closes the box. */
  baseMark: z.string(),
  closingMark: z.string(),
  /** All waits one after the other. */
  waitMinutes: z.number().nonnegative(),
  /** How much longer than at 20 °C the glue takes. */
  curingFactor: z.number().positive(),
});
export type AssemblyPlan = Readonly<z.infer<typeof assemblyPlanSchema>>;

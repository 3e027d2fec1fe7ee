import { z } from 'zod';
import { cutPartSchema, layoutSettingsSchema, stockSheetSchema } from './stock.ts';

/** What counts first. Either way the next ties are broken by the other, then by the largest single offcut. */
export const cutAimSchema = z.enum(['fewest-sheets', 'least-cost']);
export type CutAim = z.infer<typeof cutAimSchema>;

/** One material and thickness: the blanks to cut and the sheets to cut them from. */
export const layoutInputSchema = z.strictObject({
  parts: z.array(cutPartSchema).max(1_000),
  sheets: z.array(stockSheetSchema).min(1).max(60),
  settings: layoutSettingsSchema,
  aim: cutAimSchema.default('fewest-sheets'),
});
export type LayoutInput = Readonly<z.infer<typeof layoutInputSchema>>;

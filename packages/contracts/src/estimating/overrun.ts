// How far the final bill may pass what the customer authorised. A setting of the place where the shop stands.
import { z } from 'zod';
import { priceMinorSchema } from '../common/index.ts';
import { rateBasisPointsSchema } from './quote-input.ts';

export const overrunRuleSchema = z.discriminatedUnion('by', [
  /** Nothing above the authorised total without the customer's consent. */
  z.strictObject({ by: z.literal('none') }),
  z.strictObject({ by: z.literal('percent'), rateBasisPoints: rateBasisPointsSchema }),
  z.strictObject({ by: z.literal('amount'), amountMinor: priceMinorSchema }),
]);
export type OverrunRule = Readonly<z.infer<typeof overrunRuleSchema>>;

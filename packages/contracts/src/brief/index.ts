// Sheet 01, Brief: what the customer wants, what must stay free, what it may cost, who brings what.
import { z } from 'zod';
import {
  notesSchema,
  priceMinorSchema,
  shopDateSchema,
  shortTextSchema,
  typedLengthSchema,
} from '../common/index.ts';
import { LISTENING_AIMS } from './listening-aims.ts';
import { PART_BRINGERS } from './part-bringers.ts';

export { LISTENING_AIM_WORDS, LISTENING_AIMS } from './listening-aims.ts';
export { PART_BRINGERS } from './part-bringers.ts';

export const briefInputSchema = z.strictObject({
  /** In the customer's words. */
  wish: notesSchema,
  aim: z.enum(LISTENING_AIMS).nullable(),
  /** Where the box may stand. */
  place: shortTextSchema,
  /** What must stay usable: spare wheel, child seat tether, half the boot for a pram. */
  keepFree: z.array(shortTextSchema).max(20),
  /** Floor depth to leave free in front of the box, mm, with what was typed; null = not asked for. */
  freeDepth: typedLengthSchema(0, 5_000).nullable(),
  budgetMinor: priceMinorSchema.nullable(),
  wishedOn: shopDateSchema.nullable(),
  /** Parts already spoken of, and who brings them. */
  broughtParts: z
    .array(
      z.strictObject({
        key: z.string().min(1).max(40),
        description: shortTextSchema,
        bringer: z.enum(PART_BRINGERS),
        note: shortTextSchema,
      }),
    )
    .max(40),
  notes: notesSchema,
});
export type BriefInput = z.infer<typeof briefInputSchema>;

/** What later sheets read of the brief. */
export type BriefResult = BriefInput & { readonly aim: (typeof LISTENING_AIMS)[number] };

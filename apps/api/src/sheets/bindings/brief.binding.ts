import type { BriefInput, BriefResult } from '@gusset/contracts/brief';
import { briefSheet } from '@gusset/sheets';
import { fromShopDate } from '../../data/dates.ts';
import type { SheetBinding } from '../sheet-binding.ts';

/** Sheet 01: reads no records; an issued wish for a day becomes the job's. */
export const briefBinding: SheetBinding<BriefInput, null, null, BriefResult> = {
  definition: briefSheet,
  loadFacts: async () => null,
  async onIssued({ tx, actor, job }, { result }) {
    if (result.wishedOn === null) return;
    await tx.job.update({
      where: { shopId_id: { shopId: actor.shopId, id: job.id } },
      data: { wishedOn: fromShopDate(result.wishedOn) },
      select: { id: true },
    });
  },
};

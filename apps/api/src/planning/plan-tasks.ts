// The plan's searches, as threads do them: plain data in and out.
import type { ChangedPromise, ShopPlan, ShopPlanInput } from '@gusset/contracts/planning';
import { comparePlans, planShop } from '@gusset/planning';
import { isRefusal, type Refusal } from '@gusset/units';
import type { ComputeTask } from '../compute/compute-task.ts';

/** A plan, and the promises that it moves from those of another (none where there is no other). */
export const planShopTask: ComputeTask<
  { readonly input: ShopPlanInput; readonly before: ShopPlan | null },
  { readonly plan: ShopPlan; readonly moved: readonly ChangedPromise[] } | Refusal
> = ({ input, before }, { seed }) => {
  const plan = planShop(input, { seed });
  if (isRefusal(plan)) return plan;
  return { plan, moved: before === null ? [] : comparePlans(before, plan, input) };
};

/** What a change moves with everybody's turns kept, and with all jobs free to be reordered. */
export const whatIfTask: ComputeTask<
  { readonly changed: ShopPlanInput; readonly plan: ShopPlan },
  | { readonly moved: readonly ChangedPromise[]; readonly movedIfReplanned: readonly ChangedPromise[] }
  | Refusal
> = ({ changed, plan }, { seed }) => {
  const kept = planShop(changed, { keepOrderOf: plan, seed });
  if (isRefusal(kept)) return kept;
  const anew = planShop(changed, { seed });
  if (isRefusal(anew)) return anew;
  return { moved: comparePlans(plan, kept, changed), movedIfReplanned: comparePlans(plan, anew, changed) };
};

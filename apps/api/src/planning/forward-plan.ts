// The shop's forward plan, worked out anew when anything that it is made from has changed, and what that moved.
import { createHash } from 'node:crypto';
import type { ChangedPromise, ShopPlan, ShopPlanInput } from '@gusset/contracts/planning';
import type { Tx } from '@gusset/database';
import { comparePlans, planShop } from '@gusset/planning';
import { canonicalJson } from '@gusset/sheets';
import { isRefusal, toShopTime } from '@gusset/units';
import { fromShopDate } from '../data/dates.ts';
import type { Actor, Deps } from '../deps.ts';
import { notFound, refusedByEngine } from '../errors.ts';
import { findShop } from '../shops/shop.queries.ts';
import { type ShopView, toShopView } from '../shops/shop.service.ts';
import { keepPlanRun, lastPlanRun, noteForecasts, type PlanningRows, planningRows } from './plan.queries.ts';
import { shopPlanInput } from './plan-input.ts';

/** The plan moves with the clock too: after this long it is worked out again though nothing else changed. */
const FRESH_MINUTES = 15;

export type ForwardPlan = {
  readonly shop: ShopView;
  readonly rows: PlanningRows;
  readonly input: ShopPlanInput;
  readonly plan: ShopPlan;
  /** Promises that the last change moved, and by what. */
  readonly moved: readonly ChangedPromise[];
  readonly because: string;
};

type KeptPlan = { readonly plan: ShopPlan; readonly moved: readonly ChangedPromise[] };

/** The plan as of now. Writes what is new of it: the run itself and each job's forecast. */
export async function forwardPlan(
  deps: Pick<Deps, 'clock'>,
  tx: Tx,
  actor: Pick<Actor, 'shopId'>,
  because: string,
): Promise<ForwardPlan> {
  const now = deps.clock.now();
  const row = await findShop(tx, actor.shopId);
  if (row === null) throw notFound('shop');
  const shop = toShopView(row);
  const rows = await planningRows(tx, actor);
  const input = shopPlanInput(shop, rows, now);
  const fingerprint = fingerprintOf(input);
  const last = await lastPlanRun(tx, actor);
  // Written by this same function.
  const kept = last === null ? null : (last.plan as unknown as KeptPlan);
  const isFresh = last !== null && now.getTime() - last.computedAt.getTime() < FRESH_MINUTES * 60_000;
  if (last !== null && kept !== null && isFresh && last.fingerprint === fingerprint) {
    return { shop, rows, input, ...kept, because: last.because };
  }
  const plan = planShop(input);
  if (isRefusal(plan)) throw refusedByEngine([plan.refusal]);
  const isSame = last?.fingerprint === fingerprint;
  const moved = isSame ? (kept?.moved ?? []) : kept === null ? [] : comparePlans(kept.plan, plan, input);
  const reason = isSame ? (last?.because ?? because) : because;
  await keepPlanRun(tx, actor, { fingerprint, plan: { plan, moved }, because: reason, computedAt: now });
  await noteForecasts(
    tx,
    actor,
    plan.jobs.map((job) => ({
      jobId: job.jobId,
      on: job.finishesAt === null ? null : fromShopDate(toShopTime(job.finishesAt, shop.timeZone).date),
    })),
  );
  return { shop, rows, input, plan, moved, because: reason };
}

/** Everything but the clock. */
function fingerprintOf({ now: _now, ...rest }: ShopPlanInput): string {
  const steady = {
    ...rest,
    jobs: rest.jobs.map((job) => ({
      ...job,
      tasks: job.tasks.map((task) => (task.state === 'running' ? { ...task, remainingMinutes: 0 } : task)),
    })),
  };
  return createHash('sha256').update(canonicalJson(steady)).digest('hex');
}

// The shop's forward plan, worked out anew when anything that it is made from has changed, and what that moved.
import { createHash } from 'node:crypto';
import {
  type ChangedPromise,
  changedPromiseSchema,
  type PlannedTask,
  type ShopPlan,
  type ShopPlanInput,
  shopPlanSchema,
} from '@gusset/contracts/planning';
import type { Tx } from '@gusset/database';
import { canonicalJson } from '@gusset/sheets';
import { isRefusal, toInstant, toShopTime } from '@gusset/units';
import { z } from 'zod';
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
  readonly revisions: Revisions;
};

/** A run that an older version kept in another shape counts as none: the plan is worked out anew. */
const keptPlanSchema = z.object({
  plan: shopPlanSchema,
  moved: z.array(changedPromiseSchema),
  revisions: z.record(z.string(), z.number()).default({}),
});
type KeptPlan = Readonly<z.infer<typeof keptPlanSchema>>;

function keptPlanOf(run: { readonly plan: unknown } | null): KeptPlan | null {
  return keptPlanSchema.safeParse(run?.plan).data ?? null;
}

/** By task: when its place in the plan last changed, in seconds. Grows only, as calendars ask of SEQUENCE. */
export type Revisions = Readonly<Record<string, number>>;
const REVISIONS_FROM_MS = Date.UTC(2026, 0, 1);

/** The plan as of now. Writes what is new of it: the run itself and each job's forecast. */
export async function forwardPlan(
  deps: Pick<Deps, 'clock' | 'compute'>,
  tx: Tx,
  actor: Pick<Actor, 'shopId'>,
  because: string,
): Promise<ForwardPlan> {
  const now = deps.clock.now();
  const row = await findShop(tx, actor.shopId);
  if (row === null) throw notFound('shop');
  const shop = toShopView(row);
  const rows = await planningRows(tx, actor, shopDayStart(now, shop.timeZone));
  const input = shopPlanInput(shop, rows, now);
  const fingerprint = fingerprintOf(input);
  const last = await lastPlanRun(tx, actor);
  const kept = keptPlanOf(last);
  const isFresh = last !== null && now.getTime() - last.computedAt.getTime() < FRESH_MINUTES * 60_000;
  if (last !== null && kept !== null && isFresh && last.fingerprint === fingerprint) {
    return { shop, rows, input, ...kept, because: last.because };
  }
  const isSame = last?.fingerprint === fingerprint;
  const before = isSame ? null : (kept?.plan ?? null);
  const planned = await deps.compute.run('plan-shop', { input, before });
  if (isRefusal(planned)) throw refusedByEngine([planned.refusal]);
  const { plan } = planned;
  const moved = isSame ? (kept?.moved ?? []) : planned.moved;
  const reason = isSame ? (last?.because ?? because) : because;
  const revisions = revisionsOf(plan, kept, now);
  const run = { fingerprint, plan: { plan, moved, revisions }, because: reason, computedAt: now };
  await keepPlanRun(tx, actor, run);
  await noteForecasts(
    tx,
    actor,
    plan.jobs.map((job) => ({
      jobId: job.jobId,
      on: job.finishesAt === null ? null : fromShopDate(toShopTime(job.finishesAt, shop.timeZone).date),
    })),
  );
  return { shop, rows, input, plan, moved, because: reason, revisions };
}

function shopDayStart(now: Date, zone: string): Date {
  return new Date(toInstant(toShopTime(now.toISOString(), zone).date, '00:00', zone));
}

/** Which bay the plan gives a task; noted on it when it is begun, so that it does not wander afterwards. */
export async function plannedBayOf(
  tx: Tx,
  actor: Pick<Actor, 'shopId'>,
  taskId: string,
): Promise<string | null> {
  const last = await lastPlanRun(tx, actor);
  return keptPlanOf(last)?.plan.tasks.find((task) => task.taskId === taskId)?.bayId ?? null;
}

function revisionsOf(plan: ShopPlan, before: KeptPlan | null, now: Date): Revisions {
  const seconds = Math.floor((now.getTime() - REVISIONS_FROM_MS) / 1_000);
  const then = new Map((before?.plan.tasks ?? []).map((task) => [task.taskId, placeOf(task)]));
  return Object.fromEntries(
    plan.tasks.map((task) => {
      const isSame = then.get(task.taskId) === placeOf(task);
      return [task.taskId, (isSame ? before?.revisions[task.taskId] : null) ?? seconds];
    }),
  );
}

function placeOf({ title, personId, bayId, startsAt, endsAt, segments }: PlannedTask): string {
  return canonicalJson({ title, personId, bayId, startsAt, endsAt, segments });
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

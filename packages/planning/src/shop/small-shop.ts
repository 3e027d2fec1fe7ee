// Small invented shops for the tests beside it, and plans that are checked as they are made.
import type {
  Leave,
  PlanJob,
  PlanPerson,
  PlanTask,
  ShopPlan,
  ShopPlanInput,
} from '@gusset/contracts/planning';
import { isRefusal } from '@gusset/units';
import { expect } from 'vitest';
import { quarryRoad } from '../../bench/quarry-road.ts';
import { checkShopPlan } from './check-shop-plan.ts';
import type { withLeave } from './plan-changes.ts';
import { type PlanShopOptions, planShop } from './plan-shop.ts';

/** Tuesday 24 November 2026, 08:00 in Lisbon. */
export const NOW = '2026-11-24T08:00:00Z';

export function task(key: string, minutes: number, changes: Partial<PlanTask> = {}): PlanTask {
  return {
    id: `t-${key}`,
    key,
    title: key,
    skill: 'fabrication',
    remainingMinutes: minutes,
    prerequisites: [],
    bayKind: null,
    vehicleOnSite: false,
    breakable: true,
    state: 'planned',
    startedAt: null,
    finishedAt: null,
    pinnedPersonId: null,
    pinnedBayId: null,
    earliestStart: null,
    ...changes,
  };
}

export function after(
  taskKey: string,
  waitMinutes = 0,
  keepsBayMinutes = 0,
): PlanTask['prerequisites'][number] {
  const reason = waitMinutes > 0 ? 'glue' : null;
  return { taskKey, kind: 'finish-start', waitMinutes, reason, keepsBayMinutes, byAnotherPerson: false };
}

export function job(number: number, tasks: readonly PlanTask[], changes: Partial<PlanJob> = {}): PlanJob {
  return {
    id: `j${number}`,
    number,
    rank: 0,
    promisedOn: null,
    approvedAt: null,
    tasks: tasks.map((one) => ({ ...one, id: `${number}/${one.key}` })),
    partDates: [],
    ...changes,
  };
}

export function shop(jobs: readonly PlanJob[], changes: Partial<ShopPlanInput> = {}): ShopPlanInput {
  return { ...quarryRoad(0), now: NOW, jobs: [...jobs], ...changes };
}

export function planned(input: ShopPlanInput, options?: PlanShopOptions): ShopPlan {
  const plan = planShop(input, options);
  if (isRefusal(plan)) throw new Error(`${plan.refusal.field}: ${plan.refusal.why}`);
  expect(checkShopPlan(input, plan)).toEqual([]);
  return plan;
}

export function refused(input: ShopPlanInput) {
  const plan = planShop(input);
  if (!isRefusal(plan)) throw new Error('was planned');
  return plan.refusal;
}

export function changed(input: ReturnType<typeof withLeave>): ShopPlanInput {
  if (isRefusal(input)) throw new Error(input.refusal.why);
  return input;
}

export const taskOf = (plan: ShopPlan, id: string) => plan.tasks.find(({ taskId }) => taskId === id);
export const jobOf = (plan: ShopPlan, id: string) => plan.jobs.find(({ jobId }) => jobId === id);
export const soloShop = (jobs: readonly PlanJob[], leave: Leave[] = []) => {
  const only: PlanPerson = { id: 'ilves', name: 'Ilves', skills: ['fabrication'], leave, hours: null };
  return shop(jobs, { people: [only] });
};
export const away = (fromOn: string, toOn: string): Leave => ({
  fromOn,
  toOn,
  fromTime: null,
  untilTime: null,
  note: '',
});

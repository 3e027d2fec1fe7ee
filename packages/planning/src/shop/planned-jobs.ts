// Each job's finish, its honest promise, the chain of tasks behind it, and the one line why it isn't earlier.
import type {
  BoundBy,
  ChainStep,
  PlanJob,
  PlannedJob,
  PlanReason,
  ShopPlanInput,
  WorkSegment,
} from '@gusset/contracts/planning';
import { brokenEnd, stretchStart } from '../core/unit-calendar.ts';
import type { Stand } from './binding.ts';
import { dayOfDate, gridUnits, instantMs } from './shop-clock.ts';
import type { OpenTask, ShopProject } from './shop-project.ts';

/** A vehicle that is needed again after fewer open shop hours than this stays here. */
const VISIT_GAP_MINUTES = 240;

export function plannedJobs(
  input: ShopPlanInput,
  shop: ShopProject,
  stands: readonly Stand[],
  bound: ReadonlyMap<string, BoundBy>,
): PlannedJob[] {
  const standOf = new Map(stands.map((stand) => [stand.open.task.id, stand]));
  return input.jobs.map((job): PlannedJob => {
    const own = stands.filter(({ open }) => open.job.id === job.id);
    const last = own.reduce<Stand | null>(
      (latest, one) => (latest === null || one.end > latest.end ? one : latest),
      null,
    );
    const finishesAt = last === null ? lastFinish(job) : shop.clock.isoAt(last.end);
    const finishOn = finishesAt === null ? null : shop.clock.dateOf(instantMs(finishesAt) - 1);
    const criticalChain = last === null ? [] : chainTo(shop, standOf, bound, last);
    return {
      jobId: job.id,
      number: job.number,
      finishesAt,
      promiseOn: last === null ? finishOn : promiseDate(input, shop, last.end),
      promisedOn: job.promisedOn,
      lateDays:
        finishOn === null || job.promisedOn === null ? null : dayOfDate(finishOn) - dayOfDate(job.promisedOn),
      criticalChain,
      because: reasonOf(input, job, criticalChain, standOf),
      vehicleVisits: vehicleVisits(shop, own),
    };
  });
}

function lastFinish({ tasks }: PlanJob): string | null {
  const finished = tasks.flatMap(({ finishedAt }) => (finishedAt === null ? [] : [finishedAt]));
  return finished.toSorted((a, b) => instantMs(a) - instantMs(b)).at(-1) ?? null;
}

/** The date on which the buffer, counted in shop hours from the finish, is used up. */
function promiseDate(input: ShopPlanInput, shop: ShopProject, finish: number): string {
  const buffer = gridUnits(input.settings.promiseBufferMinutes);
  const start = stretchStart(shop.shopHours, finish, 1);
  const kept = buffer === 0 ? finish : brokenEnd(shop.shopHours, start, buffer);
  return shop.clock.dateEnding(kept > shop.horizon ? finish + buffer : kept);
}

/** Back from the last task over whatever held each one, into other jobs where they had the person or the bay. */
function chainTo(
  shop: ShopProject,
  standOf: ReadonlyMap<string, Stand>,
  bound: ReadonlyMap<string, BoundBy>,
  last: Stand,
): ChainStep[] {
  const steps: ChainStep[] = [];
  const seen = new Set<string>();
  let stand: Stand | undefined = last;
  while (stand !== undefined && !seen.has(stand.open.task.id)) {
    const { task, job }: OpenTask = stand.open;
    seen.add(task.id);
    const boundBy: BoundBy | null = bound.get(task.id) ?? null;
    steps.push({
      taskId: task.id,
      jobId: job.id,
      title: task.title,
      startsAt: shop.clock.isoAt(stand.start),
      endsAt: shop.clock.isoAt(stand.end),
      boundBy,
    });
    stand = boundBy?.taskId == null ? undefined : standOf.get(boundBy.taskId);
  }
  return steps.reverse();
}

function reasonOf(
  input: ShopPlanInput,
  job: PlanJob,
  chain: readonly ChainStep[],
  standOf: ReadonlyMap<string, Stand>,
): PlanReason {
  if (chain.length === 0) return { code: 'nothing-left' };
  const own = chain.filter((step) => step.jobId === job.id);
  const held = own.filter(({ boundBy }) => boundBy !== null && boundBy.kind !== 'prerequisite');
  const costliest = costliestOf(held.filter(({ boundBy }) => boundBy?.kind !== 'hours')) ?? costliestOf(held);
  if (costliest?.boundBy != null && costliest.boundBy.lostMinutes > 0) {
    return reasonFor(input, costliest, costliest.boundBy);
  }
  const minutes = own.reduce(
    (sum, { taskId }) => sum + Math.ceil(standOf.get(taskId)?.open.task.remainingMinutes ?? 0),
    0,
  );
  return { code: 'work', minutes };
}

function costliestOf(steps: readonly ChainStep[]): ChainStep | null {
  return steps.reduce<ChainStep | null>(
    (most, step) =>
      most === null || (step.boundBy?.lostMinutes ?? 0) > (most.boundBy?.lostMinutes ?? 0) ? step : most,
    null,
  );
}

/** A step's binding as the reason of its job. */
export function reasonFor(
  input: Pick<ShopPlanInput, 'jobs' | 'people'>,
  step: { readonly taskId: string; readonly title: string },
  boundBy: BoundBy,
): PlanReason {
  const held = { heldTaskId: step.taskId, heldTitle: step.title, lostMinutes: boundBy.lostMinutes };
  const { until, what } = boundBy;
  const id = boundBy.id ?? '';
  const onJob = input.jobs.find((job) => job.id === boundBy.jobId);
  const onTask = onJob?.tasks.find((task) => task.id === boundBy.taskId);
  const task = input.jobs.flatMap(({ tasks }) => tasks).find((one) => one.id === step.taskId);
  const on = {
    onTaskId: onTask?.id ?? step.taskId,
    onTitle: onTask?.title ?? '',
    onJobId: onJob?.id ?? '',
    onJobNumber: onJob?.number ?? 0,
  };
  switch (boundBy.kind) {
    case 'prerequisite':
      return { code: 'after-task', ...held, afterTaskId: boundBy.taskId ?? '', afterTitle: what, until };
    case 'wait': {
      const reason = task?.prerequisites.find(({ taskKey }) => taskKey === onTask?.key)?.reason ?? null;
      return { code: 'setting', ...held, afterTaskId: boundBy.taskId ?? '', afterTitle: what, reason, until };
    }
    case 'person':
      return boundBy.taskId === null
        ? { code: 'person-away', ...held, personId: id, personName: what, until }
        : { code: 'person-busy', ...held, personId: id, personName: what, ...on, until };
    case 'bay':
      return { code: 'bay-taken', ...held, bayId: id, bayName: what, ...on, until };
    case 'part': {
      const parts = input.jobs.find((job) => job.id === boundBy.jobId)?.partDates ?? [];
      const expectedOn = parts.find(({ lineKey }) => lineKey === id)?.expectedOn ?? null;
      return { code: 'part-due', ...held, lineKey: id, description: what, expectedOn, until };
    }
    case 'hours':
      return { code: 'shop-closed', ...held, until };
    case 'earliest-start':
      return { code: 'earliest-start', ...held, until };
  }
}

/** When the vehicle must be here: its tasks, joined where it would hardly be worth driving off. */
function vehicleVisits(shop: ShopProject, own: readonly Stand[]): WorkSegment[] {
  const visits: { start: number; end: number }[] = [];
  for (const { open, start, end } of own) {
    if (!open.task.vehicleOnSite) continue;
    const visit = visits.at(-1);
    const opened = (unit: number) => shop.shopHours.openBefore[Math.min(unit, shop.horizon)] ?? 0;
    const near = visit !== undefined && opened(start) - opened(visit.end) < gridUnits(VISIT_GAP_MINUTES);
    if (near) visit.end = Math.max(visit.end, end);
    else visits.push({ start, end });
  }
  return visits.map(({ start, end }) => ({
    startsAt: shop.clock.isoAt(start),
    endsAt: shop.clock.isoAt(end),
  }));
}

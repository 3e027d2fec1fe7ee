// What a change did to the promises: which jobs moved, by how much, and at which task they first slipped.
import type {
  ChainStep,
  ChangedPromise,
  PlannedJob,
  PlanReason,
  ShopPlan,
  ShopPlanInput,
} from '@gusset/contracts/planning';
import { reasonFor } from './planned-jobs.ts';
import { dayOfDate, instantMs } from './shop-clock.ts';

/**
 * Jobs whose promise date differs, in the order of `after`. The reason is that of the task on the job's chain at which
 * most of the shift came in. `input` is what `after` was planned from.
 */
export function comparePlans(before: ShopPlan, after: ShopPlan, input: ShopPlanInput): ChangedPromise[] {
  const earlier = new Map(before.jobs.map((job) => [job.jobId, job]));
  const later = new Map(after.jobs.map((job) => [job.jobId, job]));
  const gone = before.jobs.filter(({ jobId }) => !later.has(jobId));
  return [
    ...after.jobs.flatMap((job) => change(before, earlier.get(job.jobId) ?? null, job, input)),
    ...gone.flatMap((job) => change(before, job, null, input)),
  ];
}

function change(
  before: ShopPlan,
  from: PlannedJob | null,
  to: PlannedJob | null,
  input: ShopPlanInput,
): ChangedPromise[] {
  const job = to ?? from;
  const fromOn = from?.promiseOn ?? null;
  const toOn = to?.promiseOn ?? null;
  if (job === null || fromOn === toOn) return [];
  return [
    {
      jobId: job.jobId,
      number: job.number,
      from: fromOn,
      to: toOn,
      fromFinishesAt: from?.finishesAt ?? null,
      toFinishesAt: to?.finishesAt ?? null,
      movedDays: fromOn === null || toOn === null ? null : dayOfDate(toOn) - dayOfDate(fromOn),
      because: to === null || from === null ? job.because : slipReason(before, from, to, input),
    },
  ];
}

/** Where along the chain the shift grew most, in the direction in which the job moved. */
function slipReason(before: ShopPlan, from: PlannedJob, to: PlannedJob, input: ShopPlanInput): PlanReason {
  const startOf = new Map(
    before.tasks.map((task) => [task.taskId, task.segments[0]?.startsAt ?? task.startsAt]),
  );
  const later = (to.promiseOn ?? '') > (from.promiseOn ?? '');
  let shift = 0;
  let most = 0;
  let at: ChainStep | null = null;
  // a task that only follows another passes a shift on; it is no reason of its own
  const isCause = ({ boundBy }: ChainStep) => boundBy !== null && boundBy.kind !== 'prerequisite';
  for (const step of to.criticalChain) {
    const was = startOf.get(step.taskId);
    if (was == null) continue;
    const now = instantMs(step.startsAt) - instantMs(was);
    const grown = later ? now - shift : shift - now;
    shift = now;
    if (grown <= most || !isCause(step)) continue;
    most = grown;
    at = step;
  }
  return at?.boundBy == null ? to.because : reasonFor(input, at, at.boundBy);
}

// The plan of one job as its sheet stands now: a draft is reckoned with, so that dates are known before it is issued.
import type { PlanResult, PlanResultTask } from '@gusset/contracts/plan';
import type { ChangedPromise } from '@gusset/contracts/planning';
import { canonicalJson } from '@gusset/sheets';
import { isRefusal } from '@gusset/units';
import { fromShopDate } from '../data/dates.ts';
import type { Actor, Deps } from '../deps.ts';
import { notFound, refusedByEngine } from '../errors.ts';
import { inJob } from '../sheets/sheet.service.ts';
import { sheetBook } from '../sheets/sheet-book.ts';
import { forwardPlan } from './forward-plan.ts';
import { type OpenJobRow, type OpenTaskRow, type PlanningRows, planningJob } from './plan.queries.ts';
import { type PlanView, toPlanView } from './plan.service.ts';
import { shopPlanInput } from './plan-input.ts';

export type JobPlanView = PlanView & {
  /** The dates are those of a draft: the bays do not know of it yet. */
  readonly isDraft: boolean;
  /** Promises of other jobs that issuing the draft would move. */
  readonly wouldMove: readonly ChangedPromise[];
};

export function planOfJob(
  deps: Deps,
  actor: Actor,
  { jobId }: { readonly jobId: string },
): Promise<JobPlanView> {
  return inJob(deps, actor, jobId, async (scope) => {
    const current = await forwardPlan(deps, scope.tx, actor, 'the plan was opened');
    const { outcome } = await sheetBook(scope).open('plan');
    const job = await planningJob(scope.tx, actor, jobId);
    if (job === null) throw notFound('job');
    const asIssued = { ...toPlanView(current, actor), isDraft: false, wouldMove: [] };
    if (outcome.state !== 'ready') return asIssued;
    // The book forgets types; this is the plan sheet's own result.
    const rows = withDraft(current.rows, job, outcome.result as PlanResult);
    const input = shopPlanInput(current.shop, rows, new Date(current.input.now));
    if (canonicalJson(input) === canonicalJson(current.input)) return asIssued;
    const planned = await deps.compute.run('plan-shop', { input, before: current.plan });
    if (isRefusal(planned)) throw refusedByEngine([planned.refusal]);
    const { plan, moved } = planned;
    return {
      ...toPlanView({ ...current, rows, input, plan }, actor),
      isDraft: true,
      wouldMove: moved.filter((change) => change.jobId !== jobId && change.from !== null),
    };
  });
}

/** What was begun stays as it is worked; the rest is as the draft says. */
function withDraft(rows: PlanningRows, job: OpenJobRow, result: PlanResult): PlanningRows {
  const known = new Map(job.tasks.map((task) => [task.key, task]));
  const begun = job.tasks.filter(
    ({ key, startedAt }) => startedAt !== null && !result.tasks.some((task) => task.key === key),
  );
  const tasks = result.tasks.map((task): OpenTaskRow => {
    const row = known.get(task.key);
    return row !== undefined && row.startedAt !== null ? row : draftTask(task, row ?? null, job.id);
  });
  const drafted = { ...job, planRank: result.rank, tasks: [...begun, ...tasks] };
  const others = rows.jobs.filter(({ id }) => id !== job.id);
  return { ...rows, jobs: [...others, drafted].sort((a, b) => a.number - b.number) };
}

function draftTask(task: PlanResultTask, row: OpenTaskRow | null, jobId: string): OpenTaskRow {
  return {
    id: row?.id ?? `draft:${task.key}`,
    jobId,
    key: task.key,
    title: task.title,
    skill: task.skill,
    bayKind: task.bayKind,
    minutes: task.minutes,
    breakable: task.breakable,
    vehicleOnSite: task.vehicleOnSite,
    prerequisites: [...task.prerequisites],
    needsPartLines: [...task.needsParts],
    pinnedPersonId: task.personId,
    pinnedBayId: task.bayId,
    earliestOn: fromShopDate(task.earliestOn),
    startedAt: null,
    startedBy: null,
    finishedAt: null,
    workedMinutes: null,
    version: row?.version ?? 1,
  };
}

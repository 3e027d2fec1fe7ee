// Starting, finishing and reopening a task, as the person at the bench reports it.

import type { PlanResult } from '@gusset/contracts/plan';
import { taskPrerequisiteSchema } from '@gusset/contracts/planning';
import { addElapsedMinutes, formatInstant } from '@gusset/units';
import { z } from 'zod';
import { record } from '../data/audit.ts';
import { fromShopDate } from '../data/dates.ts';
import { asRequiredJson } from '../data/json.ts';
import type { Actor, Deps } from '../deps.ts';
import { notFound, ShopError } from '../errors.ts';
import { noteMilestones } from '../jobs/job-standing.ts';
import { forwardPlan, plannedBayOf } from '../planning/forward-plan.ts';
import { workedMinutesBetween } from '../planning/worked-minutes.ts';
import type { SheetScope } from '../sheets/sheet-binding.ts';
import { findShop } from '../shops/shop.queries.ts';
import { type ShopView, toShopView } from '../shops/shop.service.ts';
import { changeTask, dropTasks, findTask, findTasks, putTask, type TaskRow } from './task.queries.ts';

const prerequisitesSchema = z.array(taskPrerequisiteSchema);
/** What an issued plan sheet says of bays. */
const pinnedTasksSchema = z.object({
  tasks: z.array(z.object({ key: z.string(), bayId: z.string().nullable() })),
});

/** After the plan sheet is issued: a row for each task. What was begun or finished stays as it was worked. */
export async function takeTasks({ tx, actor, job, deps }: SheetScope, result: PlanResult): Promise<void> {
  const known = new Map((await findTasks(tx, actor, job.id)).map((task) => [task.key, task]));
  for (const [sort, task] of result.tasks.entries()) {
    const row = known.get(task.key);
    known.delete(task.key);
    if (row !== undefined && row.startedAt !== null) continue;
    await putTask(tx, actor, job.id, {
      key: task.key,
      title: task.title,
      skill: task.skill,
      bayKind: task.bayKind,
      minutes: task.minutes,
      breakable: task.breakable,
      vehicleOnSite: task.vehicleOnSite,
      prerequisites: asRequiredJson(task.prerequisites),
      needsPartLines: [...task.needsParts],
      sort,
      pinnedPersonId: task.personId,
      pinnedBayId: task.bayId,
      earliestOn: fromShopDate(task.earliestOn),
    });
  }
  await dropTasks(
    tx,
    actor,
    [...known.values()].filter((task) => task.startedAt === null).map(({ id }) => id),
  );
  await tx.job.update({
    where: { shopId_id: { shopId: actor.shopId, id: job.id } },
    data: { planRank: result.rank },
    select: { id: true },
  });
  await forwardPlan(deps, tx, actor, `the plan of job ${job.number} was issued`);
}

export type TaskAct = { readonly taskId: string; readonly version: number };

/** TASK_NOT_READY names what it waits for, unless a reason to begin all the same is given. */
export function startTask(
  deps: Deps,
  actor: Actor,
  act: TaskAct & { readonly evenThough: string | null },
): Promise<void> {
  return onTask(deps, actor, act, async (tx, task, shop) => {
    const now = deps.clock.now();
    if (task.startedAt !== null)
      throw new ShopError('TASK_NOT_READY', 'Somebody has started this task already.');
    const waits = waitsFor(task, await findTasks(tx, actor, task.jobId), shop, now);
    if (waits !== null && act.evenThough === null) throw new ShopError('TASK_NOT_READY', waits);
    await noteMilestones(tx, actor, task.jobId, { inBayAt: task.job.inBayAt ?? now });
    return {
      change: {
        startedAt: now,
        startedBy: actor.personId,
        pinnedBayId: task.pinnedBayId ?? (await plannedBayOf(tx, actor, task.id)),
      },
      act: 'task.started',
      after: { title: task.title, evenThough: waits === null ? null : act.evenThough },
    };
  });
}

/** The last task of a job hands it over. */
export function finishTask(
  deps: Deps,
  actor: Actor,
  act: TaskAct & { readonly workedMinutes: number | null },
): Promise<void> {
  return onTask(deps, actor, act, async (tx, task, shop) => {
    const now = deps.clock.now();
    if (task.startedAt === null) throw new ShopError('TASK_NOT_READY', 'Start the task first.');
    if (task.finishedAt !== null) throw new ShopError('TASK_NOT_READY', 'This task is finished already.');
    const workedMinutes = act.workedMinutes ?? workedMinutesBetween(task.startedAt, now, shop);
    const others = (await findTasks(tx, actor, task.jobId)).filter(({ id }) => id !== task.id);
    if (others.every((other) => other.finishedAt !== null))
      await noteMilestones(tx, actor, task.jobId, { handedOverAt: now });
    return {
      change: { finishedAt: now, workedMinutes },
      act: 'task.finished',
      after: { title: task.title, workedMinutes },
    };
  });
}

/** Taken back: pressed by mistake, or the work has to be done again. */
export function reopenTask(deps: Deps, actor: Actor, act: TaskAct): Promise<void> {
  return onTask(deps, actor, act, async (tx, task) => {
    if (task.startedAt === null) throw new ShopError('TASK_NOT_READY', 'This task has not been started.');
    if (task.finishedAt !== null) {
      await noteMilestones(tx, actor, task.jobId, { handedOverAt: null });
      return {
        change: { finishedAt: null, workedMinutes: null },
        act: 'task.reopened',
        after: { title: task.title },
      };
    }
    return {
      change: { startedAt: null, startedBy: null, pinnedBayId: await decidedBayOf(tx, actor, task) },
      act: 'task.not-started',
      after: { title: task.title },
    };
  });
}

/** The bay that the issued plan sheet pins; the one it was begun in was only where it stood. */
async function decidedBayOf(tx: Tx, { shopId }: Actor, { jobId, key }: TaskRow): Promise<string | null> {
  const issue = await tx.sheetIssue.findFirst({
    where: { shopId, jobId, kind: 'plan' },
    select: { result: true },
    orderBy: { revision: 'desc' },
  });
  const pinned = pinnedTasksSchema.safeParse(issue?.result).data?.tasks ?? [];
  return pinned.find((task) => task.key === key)?.bayId ?? null;
}

type Tx = SheetScope['tx'];
type Reported = {
  readonly change: Parameters<typeof changeTask>[3];
  readonly act: string;
  readonly after: unknown;
};

function onTask(
  deps: Deps,
  actor: Actor,
  act: TaskAct,
  work: (tx: Tx, task: TaskRow, shop: ShopView) => Promise<Reported>,
): Promise<void> {
  return deps.doors.inShop(actor.shopId, async (tx) => {
    const task = await findTask(tx, actor, act.taskId);
    const shop = await findShop(tx, actor.shopId);
    if (task === null || shop === null) throw notFound('task');
    const reported = await work(tx, task, toShopView(shop));
    if (!(await changeTask(tx, actor, act, reported.change))) {
      throw new ShopError('CHANGED_MEANWHILE', 'Somebody else reported on this task just now. Look again.');
    }
    await record(tx, actor, {
      act: reported.act,
      subject: 'task',
      subjectId: task.id,
      after: reported.after,
    });
    await forwardPlan(
      deps,
      tx,
      actor,
      `${task.title}, job ${task.job.number}: ${reported.act.replace('task.', '')}`,
    );
  });
}

/** What still holds it, in words; null when it may begin. */
function waitsFor(
  task: TaskRow,
  siblings: readonly { readonly key: string; readonly title: string; readonly finishedAt: Date | null }[],
  shop: ShopView,
  now: Date,
): string | null {
  const byKey = new Map(siblings.map((sibling) => [sibling.key, sibling]));
  for (const prerequisite of prerequisitesSchema.parse(task.prerequisites)) {
    const before = byKey.get(prerequisite.taskKey);
    if (before === undefined) continue;
    if (before.finishedAt === null) return `${before.title} is not finished yet.`;
    const free = addElapsedMinutes(before.finishedAt.toISOString(), prerequisite.waitMinutes);
    if (Date.parse(free) > now.getTime()) {
      return `${before.title} sets until ${formatInstant(free, { zone: shop.timeZone, locale: shop.locale, style: 'full' })}.`;
    }
  }
  return null;
}

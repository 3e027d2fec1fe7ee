// The bays between two looks at the plan: what was planned to be over is over, what was planned for this moment is in
// work. Written in one transaction, because reporting each task by itself would work the whole plan out a hundred
// times. What still waits for a part, or for a task that does, is left alone.
import { record } from '@gusset/api/data/audit';
import { noteMilestones } from '@gusset/api/jobs/job-standing';
import { lastPlanRun, type PlanningRows, planningRows } from '@gusset/api/planning/plan.queries';
import { shopPlanInput } from '@gusset/api/planning/plan-input';
import { findShop } from '@gusset/api/shops/shop.queries';
import { toShopView } from '@gusset/api/shops/shop.service';
import { changeTask } from '@gusset/api/tasks/task.queries';
import { type PlanJob, type PlannedTask, shopPlanSchema } from '@gusset/contracts/planning';
import type { Tx } from '@gusset/database';
import { z } from 'zod';
import type { JobsShop } from './jobs-shop.ts';

/** What the forward plan keeps of a run; the rest of it is not needed here. */
const keptPlanSchema = z.object({ plan: shopPlanSchema });

type Worked = { readonly key: string; readonly finishedAt: Date | null };

export async function workAsPlanned({ deps, staff }: JobsShop, until: Date): Promise<void> {
  const { shopId } = staff;
  await deps.doors.inShop(shopId, async (tx) => {
    const last = await lastPlanRun(tx, { shopId });
    const shop = await findShop(tx, shopId);
    if (last === null || shop === null) return;
    const { plan } = keptPlanSchema.parse(last.plan);
    const rows = await planningRows(tx, { shopId }, until);
    const input = shopPlanInput(toShopView(shop), rows, until);
    for (const job of input.jobs) {
      const tasks = plan.tasks.filter(({ jobId }) => jobId === job.id);
      await workOn({ tx, staff, rows, until }, job, tasks);
    }
  });
}

type Working = {
  readonly tx: Tx;
  readonly staff: JobsShop['staff'];
  readonly rows: PlanningRows;
  readonly until: Date;
};

async function workOn(working: Working, job: PlanJob, planned: readonly PlannedTask[]): Promise<void> {
  const { tx, staff, until } = working;
  const { shopId } = staff;
  const worked = new Map<string, Worked>(
    job.tasks.flatMap(({ key, finishedAt }) =>
      finishedAt === null ? [] : [[key, { key, finishedAt: new Date(finishedAt) }] as const],
    ),
  );
  const waiting = new Set(
    job.partDates.filter(({ receivedOn }) => receivedOn === null).flatMap((part) => part.neededByTaskKeys),
  );
  const inOrder = [...planned].sort(
    (a, b) => Date.parse(a.startsAt ?? a.endsAt) - Date.parse(b.startsAt ?? b.endsAt),
  );
  for (const task of inOrder) {
    const own = job.tasks.find(({ id }) => id === task.taskId);
    const startsAt = task.startsAt === null ? null : new Date(task.startsAt);
    if (own === undefined || own.finishedAt !== null || startsAt === null || startsAt > until) continue;
    const isReady = own.prerequisites.every(
      ({ taskKey }) => (worked.get(taskKey)?.finishedAt ?? null) !== null,
    );
    if (!isReady || waiting.has(task.key)) continue;
    const finishedAt = new Date(task.endsAt) <= until ? new Date(task.endsAt) : null;
    worked.set(task.key, { key: task.key, finishedAt });
    await report(working, task, { startsAt, finishedAt });
  }
  if (worked.size === 0) return;
  const finishes = [...worked.values()].map(({ finishedAt }) => finishedAt);
  const isOver = finishes.length === job.tasks.length && finishes.every((at) => at !== null);
  const first = inOrder.find(({ key }) => worked.has(key))?.startsAt ?? null;
  const row = working.rows.jobs.find(({ id }) => id === job.id);
  await noteMilestones(tx, { shopId }, job.id, {
    ...(row?.standing === 'in-bay' || first === null ? {} : { inBayAt: new Date(first) }),
    ...(isOver ? { handedOverAt: latest(finishes) } : {}),
  });
}

async function report(
  { tx, staff, rows }: Working,
  task: PlannedTask,
  { startsAt, finishedAt }: { readonly startsAt: Date; readonly finishedAt: Date | null },
): Promise<void> {
  const { shopId } = staff;
  const row = rows.jobs.flatMap(({ tasks }) => tasks).find(({ id }) => id === task.taskId);
  if (row === undefined) return;
  const workedMinutes = finishedAt === null ? null : howLong(task.key, row.minutes);
  const change = { startedAt: startsAt, startedBy: task.personId, finishedAt, workedMinutes };
  await changeTask(tx, { shopId }, { taskId: row.id, version: row.version }, change);
  const name = [...staff.personIds].find(([, id]) => id === task.personId)?.[0] ?? 'Workshop';
  await record(
    tx,
    { shopId, userId: task.personId ?? 'workshop', name, requestId: 'demo' },
    {
      act: finishedAt === null ? 'task.started' : 'task.finished',
      subject: 'task',
      subjectId: row.id,
      after: { title: task.title, workedMinutes },
    },
  );
}

/** Some tasks take a little less than was priced and some a good deal more, always the same ones. */
function howLong(key: string, minutes: number): number {
  const letters = [...key].reduce((sum, letter) => sum + letter.charCodeAt(0), 0);
  const factor = 0.9 + (letters % 8) * 0.05;
  return Math.round((minutes * factor) / 5) * 5;
}

function latest(moments: readonly (Date | null)[]): Date {
  return new Date(Math.max(...moments.map((moment) => moment?.getTime() ?? 0)));
}

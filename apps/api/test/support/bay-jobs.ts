// Jobs with tasks in the bays, straight through the shop's door: what the plan sheet makes when it is issued.
import type { TestApi, TestPerson } from './harness.ts';

export type BayTask = {
  readonly key: string;
  readonly title: string;
  readonly skill?: string;
  readonly minutes: number;
  readonly after?: readonly { readonly key: string; readonly waitMinutes: number }[];
  readonly bayKind?: 'bench' | 'vehicle' | 'finishing' | null;
  readonly earliestOn?: string;
};

export async function personWith(api: TestApi, { shopId }: TestPerson, name: string, skills: string[]) {
  return api.deps.doors.inShop(shopId, (tx) =>
    tx.person.create({ data: { shopId, name, skills }, select: { id: true, name: true } }),
  );
}

export async function jobWith(
  api: TestApi,
  { shopId }: TestPerson,
  job: { readonly number: number; readonly rank: number; readonly tasks: readonly BayTask[] },
) {
  return api.deps.doors.inShop(shopId, async (tx) => {
    const customer = await tx.customer.create({ data: { shopId, name: 'R. Okafor' }, select: { id: true } });
    const row = await tx.job.create({
      data: {
        shopId,
        number: job.number,
        title: `Job ${job.number}`,
        customerId: customer.id,
        planRank: job.rank,
        approvedAt: api.deps.clock.now(),
        standing: 'approved',
      },
      select: { id: true },
    });
    const taskIds: Record<string, string> = {};
    for (const [sort, task] of job.tasks.entries()) {
      const { id } = await tx.jobTask.create({
        data: {
          shopId,
          jobId: row.id,
          key: task.key,
          title: task.title,
          skill: task.skill ?? 'any',
          bayKind: task.bayKind ?? null,
          minutes: task.minutes,
          prerequisites: (task.after ?? []).map(({ key, waitMinutes }) => ({
            taskKey: key,
            waitMinutes,
            reason: waitMinutes > 0 ? 'glue' : null,
          })),
          needsPartLines: [],
          earliestOn: task.earliestOn === undefined ? null : new Date(`${task.earliestOn}T00:00:00Z`),
          sort,
        },
        select: { id: true },
      });
      taskIds[task.key] = id;
    }
    return { id: row.id, taskId: (key: string) => taskIds[key] ?? '' };
  });
}

/** A part of a job that holds these tasks: an issued parts sheet with one line, and its delivery. */
export async function partFor(
  api: TestApi,
  { shopId, userId }: TestPerson,
  at: { readonly jobId: string; readonly taskId: string; readonly expectedOn: string },
) {
  const line = { key: 'hand:amplifier', group: 'amplifier', description: 'Amplifier' };
  await api.deps.doors.inShop(shopId, async (tx) => {
    await tx.sheetIssue.create({
      data: {
        shopId,
        jobId: at.jobId,
        kind: 'parts',
        revision: 1,
        input: {},
        facts: {},
        upstream: [],
        result: { lines: [line] },
        fingerprint: at.jobId,
        issuedBy: userId,
        issuedByName: 'Mira Ilves',
        issuedAt: api.deps.clock.now(),
      },
      select: { id: true },
    });
    await tx.partDelivery.create({
      data: {
        shopId,
        jobId: at.jobId,
        lineKey: line.key,
        description: line.description,
        expectedOn: new Date(`${at.expectedOn}T00:00:00Z`),
      },
      select: { id: true },
    });
    await tx.jobTask.updateMany({
      where: { shopId, id: at.taskId },
      data: { needsPartLines: ['amplifier'] },
    });
  });
  return line;
}

import type { Prisma, Tx } from '@gusset/database';
import type { Actor } from '../deps.ts';

const view = {
  id: true,
  jobId: true,
  key: true,
  title: true,
  prerequisites: true,
  pinnedBayId: true,
  startedAt: true,
  finishedAt: true,
  version: true,
  job: { select: { number: true, inBayAt: true } },
} satisfies Prisma.JobTaskSelect;
export type TaskRow = Prisma.JobTaskGetPayload<{ select: typeof view }>;

export function findTask(tx: Tx, { shopId }: Pick<Actor, 'shopId'>, taskId: string): Promise<TaskRow | null> {
  return tx.jobTask.findFirst({ where: { shopId, id: taskId }, select: view });
}

export function findTasks(tx: Tx, { shopId }: Pick<Actor, 'shopId'>, jobId: string): Promise<TaskRow[]> {
  return tx.jobTask.findMany({
    where: { shopId, jobId },
    select: view,
    orderBy: [{ sort: 'asc' }, { id: 'asc' }],
    take: 400,
  });
}

export async function putTask(
  tx: Tx,
  { shopId }: Pick<Actor, 'shopId'>,
  jobId: string,
  task: Omit<Prisma.JobTaskUncheckedCreateInput, 'shopId' | 'jobId'>,
): Promise<void> {
  await tx.jobTask.upsert({
    where: { shopId_jobId_key: { shopId, jobId, key: task.key } },
    create: { shopId, jobId, ...task },
    update: { ...task, version: { increment: 1 } },
    select: { id: true },
  });
}

export async function dropTasks(
  tx: Tx,
  { shopId }: Pick<Actor, 'shopId'>,
  ids: readonly string[],
): Promise<void> {
  await tx.jobTask.deleteMany({ where: { shopId, id: { in: [...ids] }, startedAt: null } });
}

export async function changeTask(
  tx: Tx,
  { shopId }: Pick<Actor, 'shopId'>,
  at: { readonly taskId: string; readonly version: number },
  data: Prisma.JobTaskUncheckedUpdateManyInput,
): Promise<boolean> {
  const { count } = await tx.jobTask.updateMany({
    where: { shopId, id: at.taskId, version: at.version },
    data: { ...data, version: { increment: 1 } },
  });
  return count === 1;
}

import type { Prisma, Tx } from '@gusset/database';
import type { Actor } from '../deps.ts';

const view = {
  id: true,
  jobId: true,
  lineKey: true,
  description: true,
  expectedOn: true,
  receivedAt: true,
  returnDueOn: true,
  version: true,
} satisfies Prisma.PartDeliverySelect;
export type DeliveryRow = Prisma.PartDeliveryGetPayload<{ select: typeof view }>;

export function findDeliveries(
  tx: Tx,
  { shopId }: Pick<Actor, 'shopId'>,
  jobId: string,
): Promise<DeliveryRow[]> {
  return tx.partDelivery.findMany({
    where: { shopId, jobId },
    select: view,
    orderBy: [{ lineKey: 'asc' }],
    take: 400,
  });
}

export function findDelivery(tx: Tx, { shopId }: Pick<Actor, 'shopId'>, jobId: string, lineKey: string) {
  return tx.partDelivery.findUnique({
    where: { shopId_jobId_lineKey: { shopId, jobId, lineKey } },
    select: view,
  });
}

export async function changeDelivery(
  tx: Tx,
  { shopId }: Pick<Actor, 'shopId'>,
  at: { readonly id: string; readonly version: number },
  data: Prisma.PartDeliveryUpdateManyMutationInput,
): Promise<boolean> {
  const { count } = await tx.partDelivery.updateMany({
    where: { shopId, id: at.id, version: at.version },
    data: { ...data, version: { increment: 1 } },
  });
  return count === 1;
}

/** Lead days of the suppliers that lines name, and of the parts themselves where they differ. */
export async function leadDaysOf(
  tx: Tx,
  { shopId }: Pick<Actor, 'shopId'>,
  partIds: readonly string[],
): Promise<ReadonlyMap<string, number>> {
  const rows = await tx.part.findMany({
    where: { shopId, id: { in: [...partIds] } },
    select: { id: true, leadDays: true, supplier: { select: { leadDays: true } } },
    take: 500,
  });
  return new Map(
    rows.flatMap((row) => {
      const days = row.leadDays ?? row.supplier?.leadDays ?? null;
      return days === null ? [] : [[row.id, days] as const];
    }),
  );
}

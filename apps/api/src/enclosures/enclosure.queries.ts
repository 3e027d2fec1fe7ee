// The only place that knows how a job's enclosures are stored.
import type { Prisma, Tx } from '@gusset/database';

export const enclosureView = {
  id: true,
  number: true,
  position: true,
  name: true,
  copies: true,
  setAsideAt: true,
  version: true,
} satisfies Prisma.JobEnclosureSelect;
export type EnclosureRow = Prisma.JobEnclosureGetPayload<{ select: typeof enclosureView }>;

/** Those in use, in the order that the job gives them: the first is what is meant where none is named. */
export function enclosuresInUse(
  tx: Tx,
  { shopId, jobId }: { readonly shopId: string; readonly jobId: string },
): Promise<EnclosureRow[]> {
  return tx.jobEnclosure.findMany({
    where: { shopId, jobId, setAsideAt: null },
    select: enclosureView,
    orderBy: [{ position: 'asc' }, { number: 'asc' }],
    take: 50,
  });
}

/** Any of the job's, set aside or not. */
export function findEnclosure(
  tx: Tx,
  where: { readonly shopId: string; readonly jobId: string; readonly id: string },
): Promise<EnclosureRow | null> {
  return tx.jobEnclosure.findFirst({ where, select: enclosureView });
}

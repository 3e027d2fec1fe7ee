import type { Prisma, Tx } from '@gusset/database';
import type { Actor } from '../deps.ts';

/** More drivers than any shop keeps; the oldest rows win, so that a longer list is cut the same way each time. */
export const MOST_DRIVERS = 3_000;

const select = {
  id: true,
  maker: true,
  name: true,
  buyPriceMinor: true,
  stockQuantity: true,
  figures: true,
} satisfies Prisma.PartSelect;
export type DriverRow = Prisma.PartGetPayload<{ select: typeof select }>;

/** The shop's drivers that are not put away. */
export function driversVisibleTo(tx: Tx, { shopId }: Pick<Actor, 'shopId'>): Promise<DriverRow[]> {
  return tx.part.findMany({
    where: { shopId, kind: 'driver', archivedAt: null },
    select,
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
    take: MOST_DRIVERS,
  });
}

import type { Prisma, Tx } from '@gusset/database';

const membershipView = {
  shopId: true,
  id: true,
  role: true,
  personId: true,
  lengthUnit: true,
  version: true,
  shop: { select: { name: true } },
} satisfies Prisma.MembershipSelect;

/** Oldest first, so that the first shop stays the first. Needs the `asPerson` door. */
export function membershipsOf(tx: Tx, userId: string) {
  return tx.membership.findMany({
    where: { userId, endedAt: null },
    select: membershipView,
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
    take: 50,
  });
}

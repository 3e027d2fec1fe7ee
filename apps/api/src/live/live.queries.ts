// Which of those who listen may go on listening.
import type { Deps } from '../deps.ts';

/** Of these sign-ins, the ones that still hold. */
export async function heldSessions(
  { doors, clock }: Pick<Deps, 'doors' | 'clock'>,
  sessionIds: readonly string[],
): Promise<ReadonlySet<string>> {
  const rows = await doors.signIn.session.findMany({
    where: { id: { in: [...sessionIds] }, expiresAt: { gt: clock.now() } },
    select: { id: true },
  });
  return new Set(rows.map(({ id }) => id));
}

/** Of these people, the ones who are still members of the shop. */
export async function presentMembers(
  { doors }: Pick<Deps, 'doors'>,
  shopId: string,
  userIds: readonly string[],
): Promise<ReadonlySet<string>> {
  const rows = await doors.inShop(shopId, (tx) =>
    tx.membership.findMany({
      where: { shopId, userId: { in: [...userIds] }, endedAt: null },
      select: { userId: true },
    }),
  );
  return new Set(rows.map(({ userId }) => userId));
}

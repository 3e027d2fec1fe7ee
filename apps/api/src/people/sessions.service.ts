// Where one is signed in. Sessions are rows, so an ended one is refused with its next request.
import type { Deps } from '../deps.ts';
import { notFound } from '../errors.ts';
import type { SignedIn } from '../trpc/context.ts';

export type SessionView = {
  readonly id: string;
  readonly isThis: boolean;
  readonly signedInAt: string;
  readonly lastUsedAt: string;
  /** As the browser names itself; empty where it did not. */
  readonly browser: string;
  readonly address: string;
};

export async function ownSessions({ doors, clock }: Deps, person: SignedIn): Promise<SessionView[]> {
  const rows = await doors.signIn.session.findMany({
    where: { userId: person.userId, expiresAt: { gt: clock.now() } },
    select: { id: true, createdAt: true, updatedAt: true, userAgent: true, ipAddress: true },
    orderBy: [{ updatedAt: 'desc' }, { id: 'asc' }],
    take: 100,
  });
  return rows.map((row) => ({
    id: row.id,
    isThis: row.id === person.sessionId,
    signedInAt: row.createdAt.toISOString(),
    lastUsedAt: row.updatedAt.toISOString(),
    browser: row.userAgent ?? '',
    address: row.ipAddress ?? '',
  }));
}

export async function endSession({ doors }: Deps, person: SignedIn, id: string): Promise<void> {
  const { count } = await doors.signIn.session.deleteMany({ where: { id, userId: person.userId } });
  if (count === 0) throw notFound('sign-in of yours');
}

export async function endOtherSessions({ doors }: Deps, person: SignedIn): Promise<{ count: number }> {
  const { count } = await doors.signIn.session.deleteMany({
    where: { userId: person.userId, id: { not: person.sessionId } },
  });
  return { count };
}

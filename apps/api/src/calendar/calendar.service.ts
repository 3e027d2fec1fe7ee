// One calendar address for each person: made, shown once, taken back. Only the SHA-256 of its secret is kept.
import type { Prisma } from '@gusset/database';
import { record } from '../data/audit.ts';
import type { Actor, Deps } from '../deps.ts';
import { ShopError } from '../errors.ts';
import { newSecret } from '../people/secret.ts';
import { FEED_PREFIX } from './presented-feed.ts';

/** Calendars are set up once and forgotten; after this long the address has to be made anew. */
const LASTS_DAYS = 730;
const DAY_MS = 24 * 60 * 60 * 1000;

export type FeedView = {
  /** False: the sign-in belongs to nobody who works at the bench, so there is nothing to show. */
  readonly canHave: boolean;
  readonly madeAt: string | null;
  readonly endsAt: string | null;
  readonly lastReadAt: string | null;
};
export type MadeFeed = FeedView & {
  /** Told once. */
  readonly url: string;
};

export function myFeed({ doors, clock }: Deps, actor: Actor): Promise<FeedView> {
  return doors.inShop(actor.shopId, async (tx) => {
    const row = await tx.accessToken.findFirst({
      where: openFeedsOf(actor, clock.now()),
      select: { createdAt: true, expiresAt: true, lastUsedAt: true },
      orderBy: { createdAt: 'desc' },
    });
    return {
      canHave: actor.personId !== null,
      madeAt: row?.createdAt.toISOString() ?? null,
      endsAt: row?.expiresAt.toISOString() ?? null,
      lastReadAt: row?.lastUsedAt?.toISOString() ?? null,
    };
  });
}

/** A new address; the one before opens nothing any more. */
export function makeFeed({ doors, clock, env }: Deps, actor: Actor): Promise<MadeFeed> {
  const { personId } = actor;
  if (personId === null) {
    throw new ShopError(
      'NOT_ACCEPTED',
      'Your sign-in is not linked to anybody who works at the bench. Ask the owner to link it under People.',
    );
  }
  return doors.inShop(actor.shopId, async (tx) => {
    const now = clock.now();
    const secret = newSecret(FEED_PREFIX);
    await tx.accessToken.updateMany({ where: openFeedsOf(actor, now), data: { revokedAt: now } });
    const row = await tx.accessToken.create({
      data: {
        shopId: actor.shopId,
        tokenHash: secret.tokenHash,
        purpose: 'calendar',
        subjectId: personId,
        createdBy: actor.userId,
        createdAt: now,
        expiresAt: new Date(now.getTime() + LASTS_DAYS * DAY_MS),
      },
      select: { id: true, createdAt: true, expiresAt: true },
    });
    await record(tx, actor, { act: 'calendar.made', subject: 'calendar', subjectId: row.id });
    return {
      canHave: true,
      madeAt: row.createdAt.toISOString(),
      endsAt: row.expiresAt.toISOString(),
      lastReadAt: null,
      url: `${env.PUBLIC_URL}/api/calendar/${secret.token}.ics`,
    };
  });
}

export function revokeFeed({ doors, clock }: Deps, actor: Actor): Promise<{ readonly revoked: number }> {
  return doors.inShop(actor.shopId, async (tx) => {
    const now = clock.now();
    const where = openFeedsOf(actor, now);
    const rows = await tx.accessToken.findMany({ where, select: { id: true }, take: 100 });
    await tx.accessToken.updateMany({ where, data: { revokedAt: now } });
    for (const { id } of rows) {
      await record(tx, actor, { act: 'calendar.revoked', subject: 'calendar', subjectId: id });
    }
    return { revoked: rows.length };
  });
}

function openFeedsOf({ shopId, userId }: Actor, now: Date) {
  return {
    shopId,
    purpose: 'calendar',
    createdBy: userId,
    revokedAt: null,
    expiresAt: { gt: now },
  } satisfies Prisma.AccessTokenWhereInput;
}

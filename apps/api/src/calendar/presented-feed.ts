// Whose calendar a secret opens. It opens nothing once it was taken back, has run out, or its person has left.
import type { Deps } from '../deps.ts';
import { hashOfSecret } from '../people/secret.ts';

/** In front of every feed's secret, so that a leaked one is found by a scan for it. */
export const FEED_PREFIX = 'gcf_';
const FEED_SHAPE = /^gcf_[A-Za-z0-9_-]{43}$/;

export type PresentedFeed = {
  readonly shopId: string;
  readonly tokenId: string;
  readonly personId: string;
};

export async function presentedFeed(
  { doors, clock }: Pick<Deps, 'doors' | 'clock'>,
  token: string,
): Promise<PresentedFeed | null> {
  if (!FEED_SHAPE.test(token)) return null;
  const tokenHash = hashOfSecret(token);
  const row = await doors.withSecret(tokenHash, (tx) =>
    tx.accessToken.findFirst({
      where: { tokenHash, purpose: 'calendar', revokedAt: null, expiresAt: { gt: clock.now() } },
      select: { shopId: true, id: true, subjectId: true, createdBy: true },
    }),
  );
  if (row === null || row.createdBy === null) return null;
  const { shopId, id: tokenId, subjectId: personId, createdBy: userId } = row;
  const isMember = await doors.inShop(shopId, (tx) => tx.membership.count({ where: { shopId, userId } }));
  return isMember === 0 ? null : { shopId, tokenId, personId };
}

// Secret links to a quote. The secret is derived from the send's own key and the server's secret, so that the same send
// asked for twice gives the same link and nothing but its SHA-256 is kept.
import { createHmac } from 'node:crypto';
import type { Prisma, Tx } from '@gusset/database';
import type { Actor, Deps } from '../deps.ts';
import { ShopError } from '../errors.ts';
import { hashOfSecret } from '../people/secret.ts';

/** In front of every quote's secret, so that a leaked one is found by a scan for it. */
export const QUOTE_LINK_PREFIX = 'gqt_';
const LINK_SHAPE = /^gqt_[A-Za-z0-9_-]{43}$/;

/** Holds the secret after the address has been cleaned of it. */
export const QUOTE_COOKIE = '__Host-gusset-quote';

const DAY_MS = 24 * 60 * 60 * 1000;
/** After its last valid day a link still says that it has run out, and what was approved stays readable. */
const KEPT_AFTER_DAYS = 30;
const KEPT_AT_MOST_DAYS = 180;

export function quoteToken(
  { env }: Pick<Deps, 'env'>,
  of: { readonly shopId: string; readonly quoteId: string; readonly key: string },
): string {
  const secret = createHmac('sha256', env.AUTH_SECRET)
    .update(`quote link ${of.shopId} ${of.quoteId} ${of.key}`)
    .digest('base64url');
  return `${QUOTE_LINK_PREFIX}${secret}`;
}

export function quoteUrl({ env }: Pick<Deps, 'env'>, token: string): string {
  return `${env.PUBLIC_URL}/q/${token}`;
}

export async function addQuoteLink(
  tx: Tx,
  actor: Pick<Actor, 'shopId'> & { readonly userId: string | null },
  link: {
    readonly token: string;
    readonly quoteId: string;
    readonly to: string;
    readonly validUntil: Date;
    readonly now: Date;
  },
): Promise<void> {
  const latest = link.now.getTime() + KEPT_AT_MOST_DAYS * DAY_MS;
  const wanted = link.validUntil.getTime() + KEPT_AFTER_DAYS * DAY_MS;
  await tx.accessToken.create({
    data: {
      shopId: actor.shopId,
      tokenHash: hashOfSecret(link.token),
      purpose: 'quote',
      subjectId: link.quoteId,
      detail: { to: link.to },
      createdBy: actor.userId,
      expiresAt: new Date(Math.min(latest, wanted)),
    },
    select: { id: true },
  });
}

/** Which quotes have links that still open, and how many. */
export async function openLinksOf(
  tx: Tx,
  { shopId }: Pick<Actor, 'shopId'>,
  quoteIds: readonly string[],
  now: Date,
): Promise<ReadonlyMap<string, number>> {
  const counted = await tx.accessToken.groupBy({
    by: ['subjectId'],
    where: { shopId, purpose: 'quote', subjectId: { in: [...quoteIds] }, ...opens(now) },
    _count: { _all: true },
  });
  return new Map(counted.map(({ subjectId, _count }) => [subjectId, _count._all]));
}

/** Takes every link of a quote back; answers how many there were. */
export async function endQuoteLinks(
  tx: Tx,
  { shopId }: Pick<Actor, 'shopId'>,
  quoteId: string,
  now: Date,
): Promise<number> {
  const { count } = await tx.accessToken.updateMany({
    where: { shopId, purpose: 'quote', subjectId: quoteId, ...opens(now) },
    data: { revokedAt: now },
  });
  return count;
}

function opens(now: Date) {
  return { revokedAt: null, expiresAt: { gt: now } } satisfies Prisma.AccessTokenWhereInput;
}

export type PresentedQuote = {
  readonly shopId: string;
  readonly tokenId: string;
  readonly quoteId: string;
  /** False: taken back or run out; then nothing but whom to ask is told. */
  readonly isOpen: boolean;
};

/** What a secret opens, through the door of whoever presents it; null for a secret that nobody made. */
export async function presentedQuote(
  { doors, clock }: Pick<Deps, 'doors' | 'clock'>,
  token: string | null,
): Promise<PresentedQuote | null> {
  if (token === null || !LINK_SHAPE.test(token)) return null;
  const tokenHash = hashOfSecret(token);
  const row = await doors.withSecret(tokenHash, (tx) =>
    tx.accessToken.findFirst({
      where: { tokenHash, purpose: 'quote' },
      select: { shopId: true, id: true, subjectId: true, revokedAt: true, expiresAt: true },
    }),
  );
  if (row === null) return null;
  return {
    shopId: row.shopId,
    tokenId: row.id,
    quoteId: row.subjectId,
    isOpen: row.revokedAt === null && row.expiresAt > clock.now(),
  };
}

export function linkEnded(): ShopError {
  return new ShopError('LINK_ENDED', 'This link opens nothing. Ask the shop for a new one.');
}

// The only place that knows how quotes are stored.
import type { QuoteMessageView, QuoteStanding, QuoteView } from '@gusset/contracts/quote';
import { type QuoteSnapshot, quoteSnapshotSchema } from '@gusset/contracts/quote';
import type { Prisma, Tx } from '@gusset/database';
import { toShopDate } from '../data/dates.ts';
import type { Actor } from '../deps.ts';

const view = {
  id: true,
  jobId: true,
  version: true,
  priceIssueId: true,
  snapshot: true,
  snapshotSha256: true,
  currency: true,
  totalMinor: true,
  depositMinor: true,
  validUntil: true,
  promisedOn: true,
  createdBy: true,
  createdAt: true,
  sentAt: true,
  sentTo: true,
  firstSeenAt: true,
  approvedAt: true,
  approvedByName: true,
  declinedAt: true,
  supersededAt: true,
  messages: {
    select: { id: true, side: true, authorName: true, text: true, createdAt: true },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
    take: 200,
  },
} satisfies Prisma.QuoteSelect;
export type QuoteRow = Prisma.QuoteGetPayload<{ select: typeof view }>;

type InShop = Pick<Actor, 'shopId'>;

export function findQuote(tx: Tx, { shopId }: InShop, id: string): Promise<QuoteRow | null> {
  return tx.quote.findFirst({ where: { shopId, id }, select: view });
}

/** Newest first. */
export function quotesOfJob(tx: Tx, { shopId }: InShop, jobId: string): Promise<QuoteRow[]> {
  return tx.quote.findMany({
    where: { shopId, jobId },
    select: view,
    orderBy: { version: 'desc' },
    take: 100,
  });
}

/** Sent and not yet answered, closed or passed by a newer one: what an answer of the customer starts from. */
export function stillOpen() {
  return {
    sentAt: { not: null },
    approvedAt: null,
    declinedAt: null,
    supersededAt: null,
  } satisfies Prisma.QuoteWhereInput;
}

/** Older versions that the customer has and has not answered are closed by a newer one. */
export async function closeOlder(
  tx: Tx,
  { shopId }: InShop,
  { jobId, version }: Pick<QuoteRow, 'jobId' | 'version'>,
  now: Date,
): Promise<number> {
  const { count } = await tx.quote.updateMany({
    where: { shopId, jobId, version: { lt: version }, ...stillOpen() },
    data: { supersededAt: now },
  });
  return count;
}

export function snapshotOf(row: Pick<QuoteRow, 'snapshot'>): QuoteSnapshot {
  return quoteSnapshotSchema.parse(row.snapshot);
}

export function messageViews({ messages }: QuoteRow): QuoteMessageView[] {
  return messages.map(({ id, side, authorName, text, createdAt }) => ({
    id,
    side: side === 'shop' ? 'shop' : 'customer',
    authorName,
    text,
    at: createdAt.toISOString(),
  }));
}

/** What happened last decides; `today` is the shop's. */
export function standingOfQuote(row: QuoteRow, today: string, openLinks: number): QuoteStanding {
  if (row.approvedAt !== null) return 'approved';
  if (row.declinedAt !== null) return 'declined';
  if (row.supersededAt !== null) return 'superseded';
  if ((toShopDate(row.validUntil) ?? '') < today) return 'expired';
  if (row.sentAt === null) return 'draft';
  if (openLinks === 0) return 'ended';
  return row.firstSeenAt === null ? 'sent' : 'seen';
}

/** The one place where a row becomes a quote in the shop's list. */
export function toQuoteView(row: QuoteRow, today: string, openLinks: number): QuoteView {
  const { number, priceRevision } = snapshotOf(row);
  const instant = (date: Date | null) => date?.toISOString() ?? null;
  return {
    id: row.id,
    version: row.version,
    number,
    standing: standingOfQuote(row, today, openLinks),
    currency: row.currency,
    totalMinor: row.totalMinor,
    depositMinor: row.depositMinor,
    priceRevision,
    madeAt: row.createdAt.toISOString(),
    validUntil: toShopDate(row.validUntil) ?? '',
    promisedOn: toShopDate(row.promisedOn),
    sentAt: instant(row.sentAt),
    sentTo: row.sentTo,
    firstSeenAt: instant(row.firstSeenAt),
    approvedAt: instant(row.approvedAt),
    approvedByName: row.approvedByName,
    declinedAt: instant(row.declinedAt),
    supersededAt: instant(row.supersededAt),
    openLinks,
    messages: messageViews(row),
  };
}

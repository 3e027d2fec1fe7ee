// What the customer does with a link: read, approve, turn down, ask. Nobody is signed in; the secret is the right, for
// one quote and nothing else. Reading changes nothing.
import type { CustomerQuotePage, QuoteSnapshot } from '@gusset/contracts/quote';
import type { Tx } from '@gusset/database';
import { toShopTime } from '@gusset/units';
import { type Recorder, record } from '../data/audit.ts';
import { fromShopDate, toShopDate } from '../data/dates.ts';
import { once } from '../data/idempotency.ts';
import type { Deps } from '../deps.ts';
import { ShopError } from '../errors.ts';
import { noteMilestones } from '../jobs/job-standing.ts';
import { askForMail } from '../mail/mail-messages.ts';
import { forwardPlan } from '../planning/forward-plan.ts';
import { findShop } from '../shops/shop.queries.ts';
import { type ShopView, toShopView } from '../shops/shop.service.ts';
import { noteMiss, refuseGuesser } from './guess-limit.ts';
import { findQuote, messageViews, type QuoteRow, snapshotOf, stillOpen } from './quote.queries.ts';
import { linkEnded, type PresentedQuote, presentedQuote } from './quote-link.ts';
import { approvalKeptMail, approvedMail, declinedMail, questionMail } from './quote-mail.ts';
import { snapshotHash } from './quote-snapshot.ts';

/** Who presents what, from where. */
export type Visit = {
  readonly token: string | null;
  readonly address: string;
  readonly requestId: string;
};

/** Acts of the customer stand in the record under this; it is no person's id. */
const CUSTOMER = 'customer';
const QUESTIONS_A_DAY = 20;
const DAY_MS = 24 * 60 * 60 * 1000;

/** Whether the secret was ever made; the address bar is cleaned of it either way. */
export async function knowsLink(deps: Deps, visit: Visit): Promise<{ known: boolean }> {
  await refuseGuesser(deps, visit.address);
  const presented = await presentedQuote(deps, visit.token);
  if (presented === null) await noteMiss(deps, visit.address);
  return { known: presented !== null };
}

export async function customerPage(deps: Deps, visit: Visit): Promise<CustomerQuotePage> {
  const presented = await present(deps, visit);
  return deps.doors.inShop(presented.shopId, async (tx) => {
    const shop = await shopOf(tx, presented);
    const row = await findQuote(tx, presented, presented.quoteId);
    if (row === null || row.sentAt === null) throw linkEnded();
    if (!presented.isOpen) {
      const { phone, email } = shop.settings.letterhead;
      return { state: 'ended', shopName: shop.name, phone, email };
    }
    return pageOf(row, todayOf(deps, shop));
  });
}

/** The page tells that somebody looks at it; opening the link alone is done by mail scanners too. */
export async function noteSeen(deps: Deps, visit: Visit): Promise<void> {
  const presented = await presentOpen(deps, visit);
  const now = deps.clock.now();
  await deps.doors.inShop(presented.shopId, async (tx) => {
    const { shopId, quoteId, tokenId } = presented;
    await tx.accessToken.updateMany({
      where: { shopId, id: tokenId },
      data: { usedCount: { increment: 1 }, lastUsedAt: now },
    });
    const { count } = await tx.quote.updateMany({
      where: { shopId, id: quoteId, firstSeenAt: null },
      data: { firstSeenAt: now },
    });
    if (count === 0) return;
    await record(tx, recorderOf(presented, visit, 'Customer'), {
      act: 'quote.seen',
      subject: 'quote',
      subjectId: quoteId,
      after: { from: visit.address },
    });
  });
}

/** Once for good: a second and a fiftieth call find it approved and change nothing. */
export async function approveQuote(
  deps: Deps,
  visit: Visit,
  approval: { readonly name: string; readonly snapshotSha256: string },
): Promise<CustomerQuotePage> {
  const presented = await presentOpen(deps, visit);
  return inQuote(deps, presented, async ({ tx, shop, row, snapshot }) => {
    const { shopId } = presented;
    const now = deps.clock.now();
    const day = todayOf(deps, shop);
    if (approval.snapshotSha256 !== row.snapshotSha256) throw otherPicture();
    const { count } = await tx.quote.updateMany({
      where: { shopId, id: row.id, ...stillOpen(), validUntil: { gte: fromShopDate(day) ?? now } },
      data: { approvedAt: now, approvedByName: approval.name, approvedFrom: visit.address.slice(0, 100) },
    });
    const after = await rowOrEnded(tx, presented);
    if (count === 0) return approvedAlready(after, day);
    await noteMilestones(tx, presented, row.jobId, { approvedAt: now });
    await tx.job.update({
      where: { shopId_id: { shopId, id: row.jobId } },
      data: { totalMinor: row.totalMinor },
      select: { id: true },
    });
    await record(tx, recorderOf(presented, visit, approval.name), {
      act: 'quote.approved',
      subject: 'quote',
      subjectId: row.id,
      after: { version: row.version, from: visit.address, snapshotSha256: row.snapshotSha256 },
    });
    await forwardPlan(deps, tx, presented, `the customer approved the quote of job ${snapshot.job.number}`);
    await mailShop(deps, tx, { presented, shop, row }, 'quote-answer', approvedMail(snapshot, approval.name));
    if (row.sentTo !== null && row.sentTo !== '') {
      const mail = approvalKeptMail(snapshot, approval.name);
      await askForMail(deps, tx, presented, {
        purpose: 'quote-answer',
        subjectId: row.id,
        to: row.sentTo,
        ...mail,
      });
    }
    return pageOf(after, day);
  });
}

function approvedAlready(row: QuoteRow, day: string): CustomerQuotePage {
  if (row.approvedAt !== null) return pageOf(row, day);
  if (row.supersededAt !== null)
    throw new ShopError('QUOTE_CLOSED', 'The shop has sent a newer version of this quote. Look at that one.');
  if (row.declinedAt !== null)
    throw new ShopError(
      'QUOTE_CLOSED',
      'This quote was turned down. Ask the shop, and they will send it again.',
    );
  throw new ShopError('QUOTE_EXPIRED', 'This quote has run out. Ask the shop for today’s price.');
}

/** Not now: the quote closes, the shop is told. */
export async function declineQuote(
  deps: Deps,
  visit: Visit,
  { snapshotSha256 }: { readonly snapshotSha256: string },
): Promise<CustomerQuotePage> {
  const presented = await presentOpen(deps, visit);
  return inQuote(deps, presented, async ({ tx, shop, row, snapshot }) => {
    const now = deps.clock.now();
    if (snapshotSha256 !== row.snapshotSha256) throw otherPicture();
    const { count } = await tx.quote.updateMany({
      where: { shopId: presented.shopId, id: row.id, ...stillOpen() },
      data: { declinedAt: now },
    });
    const after = await rowOrEnded(tx, presented);
    if (count === 0 && after.declinedAt === null)
      throw new ShopError('QUOTE_CLOSED', 'This quote has been answered or replaced already.');
    if (count === 1) {
      await noteMilestones(tx, presented, row.jobId, { declinedAt: now });
      await record(tx, recorderOf(presented, visit, snapshot.customer.name), {
        act: 'quote.declined',
        subject: 'quote',
        subjectId: row.id,
        after: { version: row.version, from: visit.address },
      });
      await mailShop(deps, tx, { presented, shop, row }, 'quote-answer', declinedMail(snapshot));
    }
    return pageOf(after, todayOf(deps, shop));
  });
}

export async function askAboutQuote(
  deps: Deps,
  visit: Visit,
  question: { readonly key: string; readonly name: string; readonly text: string },
): Promise<CustomerQuotePage> {
  const presented = await presentOpen(deps, visit);
  return inQuote(deps, presented, async ({ tx, shop, row, snapshot }) => {
    const { shopId } = presented;
    const asker = { shopId, userId: `${CUSTOMER} ${row.id}` };
    const now = deps.clock.now();
    await once(tx, asker, question.key, { act: 'quote.ask', ...question }, async () => {
      await refuseFlood(tx, shopId, row.id, now);
      await tx.quoteMessage.create({
        data: {
          shopId,
          quoteId: row.id,
          side: CUSTOMER,
          authorName: question.name,
          text: question.text,
          createdAt: now,
        },
        select: { id: true },
      });
      await record(tx, recorderOf(presented, visit, question.name), {
        act: 'quote.asked',
        subject: 'quote',
        subjectId: row.id,
        after: { from: visit.address },
      });
      const mail = questionMail(snapshot, question.name, question.text);
      await mailShop(deps, tx, { presented, shop, row }, 'quote-question', mail);
      return true;
    });
    return pageOf(await rowOrEnded(tx, presented), todayOf(deps, shop));
  });
}

async function refuseFlood(tx: Tx, shopId: string, quoteId: string, now: Date): Promise<void> {
  const asked = await tx.quoteMessage.count({
    where: { shopId, quoteId, side: CUSTOMER, createdAt: { gt: new Date(now.getTime() - DAY_MS) } },
  });
  if (asked >= QUESTIONS_A_DAY)
    throw new ShopError('TOO_MANY', 'That is a lot of questions for one day. Please call the shop.');
}

/** The frozen picture for the customer's own PDF. */
export async function customerSnapshot(deps: Deps, visit: Visit): Promise<QuoteSnapshot> {
  const presented = await presentOpen(deps, visit);
  return deps.doors.inShop(presented.shopId, async (tx) => snapshotOf(await rowOrEnded(tx, presented)));
}

async function present(deps: Deps, visit: Visit): Promise<PresentedQuote> {
  if (visit.token === null) throw linkEnded();
  await refuseGuesser(deps, visit.address);
  const presented = await presentedQuote(deps, visit.token);
  if (presented !== null) return presented;
  await noteMiss(deps, visit.address);
  throw linkEnded();
}

async function presentOpen(deps: Deps, visit: Visit): Promise<PresentedQuote> {
  const presented = await present(deps, visit);
  if (!presented.isOpen) throw linkEnded();
  return presented;
}

type OpenQuote = {
  readonly tx: Tx;
  readonly shop: ShopView;
  readonly row: QuoteRow;
  readonly snapshot: QuoteSnapshot;
};

function inQuote<T>(
  deps: Deps,
  presented: PresentedQuote,
  work: (open: OpenQuote) => Promise<T>,
): Promise<T> {
  return deps.doors.inShop(presented.shopId, async (tx) => {
    const row = await rowOrEnded(tx, presented);
    if (snapshotHash(row.snapshot) !== row.snapshotSha256) {
      throw new Error(`the picture of quote ${row.id} is not the one that was made`);
    }
    return work({ tx, shop: await shopOf(tx, presented), row, snapshot: snapshotOf(row) });
  });
}

async function rowOrEnded(tx: Tx, presented: PresentedQuote): Promise<QuoteRow> {
  const row = await findQuote(tx, presented, presented.quoteId);
  if (row === null || row.sentAt === null) throw linkEnded();
  return row;
}

async function shopOf(tx: Tx, { shopId }: PresentedQuote): Promise<ShopView> {
  const shop = await findShop(tx, shopId);
  if (shop === null) throw linkEnded();
  return toShopView(shop);
}

function todayOf({ clock }: Pick<Deps, 'clock'>, { timeZone }: Pick<ShopView, 'timeZone'>): string {
  return toShopTime(clock.now().toISOString(), timeZone).date;
}

function pageOf(row: QuoteRow, day: string): CustomerQuotePage {
  return {
    state: stateOf(row, day),
    snapshot: snapshotOf(row),
    snapshotSha256: row.snapshotSha256,
    approvedAt: row.approvedAt?.toISOString() ?? null,
    approvedByName: row.approvedByName,
    messages: messageViews(row),
  };
}

function stateOf(row: QuoteRow, day: string): Exclude<CustomerQuotePage['state'], 'ended'> {
  if (row.approvedAt !== null) return 'approved';
  if (row.declinedAt !== null) return 'declined';
  if (row.supersededAt !== null) return 'superseded';
  return (toShopDate(row.validUntil) ?? '') < day ? 'expired' : 'open';
}

function recorderOf({ shopId }: PresentedQuote, { requestId }: Visit, name: string): Recorder {
  return { shopId, requestId, name, userId: CUSTOMER };
}

function otherPicture(): ShopError {
  return new ShopError(
    'QUOTE_CLOSED',
    'What you read is not the quote behind this link. Open the link again.',
  );
}

/** To the shop's own address; where it has none, to whoever made the quote. */
async function mailShop(
  deps: Deps,
  tx: Tx,
  of: { readonly presented: PresentedQuote; readonly shop: ShopView; readonly row: QuoteRow },
  purpose: 'quote-answer' | 'quote-question',
  mail: { readonly subject: string; readonly text: string },
): Promise<void> {
  const to = of.shop.settings.letterhead.email || (await makersAddress(tx, of.row.createdBy));
  if (to === '') return;
  await askForMail(deps, tx, of.presented, { purpose, subjectId: of.row.id, to, ...mail });
}

async function makersAddress(tx: Tx, userId: string | null): Promise<string> {
  if (userId === null) return '';
  const user = await tx.user.findUnique({ where: { id: userId }, select: { email: true } });
  return user?.email ?? '';
}

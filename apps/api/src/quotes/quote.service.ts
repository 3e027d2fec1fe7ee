// Making, sending, listing and answering quotes, for the people of the shop.
import type { QuoteComparison } from '@gusset/contracts/estimating';
import type { PriceResult } from '@gusset/contracts/price';
import type { QuoteSnapshot, QuoteView } from '@gusset/contracts/quote';
import type { Tx } from '@gusset/database';
import { compareQuotes, hideCosts } from '@gusset/estimating';
import { isRefusal, toShopTime } from '@gusset/units';
import { record } from '../data/audit.ts';
import { nextNumber } from '../data/counter.ts';
import { fromShopDate, toShopDate } from '../data/dates.ts';
import { once } from '../data/idempotency.ts';
import { asRequiredJson } from '../data/json.ts';
import type { Actor, Deps } from '../deps.ts';
import { notAccepted, notFound, refusedByEngine, ShopError } from '../errors.ts';
import { noteMilestones } from '../jobs/job-standing.ts';
import { askForMail } from '../mail/mail-messages.ts';
import { findIssue, type IssueRow, latestIssues } from '../sheets/sheet.queries.ts';
import { inJob } from '../sheets/sheet.service.ts';
import type { SheetScope } from '../sheets/sheet-binding.ts';
import { findShop } from '../shops/shop.queries.ts';
import { type ShopView, toShopView } from '../shops/shop.service.ts';
import {
  closeOlder,
  findQuote,
  type QuoteRow,
  quotesOfJob,
  snapshotOf,
  toQuoteView,
} from './quote.queries.ts';
import { addQuoteLink, endQuoteLinks, openLinksOf, quoteToken, quoteUrl } from './quote-link.ts';
import { quoteSentMail, shopAnsweredMail } from './quote-mail.ts';
import { quoteSnapshot, resultOf, snapshotHash } from './quote-snapshot.ts';

export function quotes(deps: Deps, actor: Actor, jobId: string): Promise<QuoteView[]> {
  return inJob(deps, actor, jobId, async (scope) => {
    const rows = await quotesOfJob(scope.tx, actor, jobId);
    return viewsOf(deps, scope.tx, actor, rows);
  });
}

/** The next version, from the price sheet as it is issued. The same key never makes two. */
export function makeQuote(
  deps: Deps,
  actor: Actor,
  { key, jobId }: { readonly key: string; readonly jobId: string },
): Promise<QuoteView> {
  return inJob(deps, actor, jobId, (scope) =>
    once(scope.tx, actor, key, { act: 'quote.make', jobId }, async () => {
      const issues = await latestIssues(scope.tx, { shopId: actor.shopId, jobId });
      const priceIssue = quotableIssue(issues.get('price'));
      const shop = await shopOf(scope.tx, actor);
      const customer = await customerOf(scope);
      const version = await nextNumber(scope.tx, actor.shopId, `quote ${jobId}`);
      const now = deps.clock.now();
      const snapshot = quoteSnapshot({
        now,
        version,
        job: scope.job,
        customerAddress: customer.address,
        shop,
        priceIssue,
        issues,
      });
      const row = await scope.tx.quote.create({
        data: {
          shopId: actor.shopId,
          jobId,
          version,
          priceIssueId: priceIssue.id,
          snapshot: asRequiredJson(snapshot),
          snapshotSha256: snapshotHash(snapshot),
          currency: snapshot.currency,
          totalMinor: snapshot.totalMinor,
          depositMinor: snapshot.depositMinor,
          validUntil: new Date(`${snapshot.validUntil}T00:00:00Z`),
          promisedOn: fromShopDate(snapshot.promisedOn),
          createdBy: actor.userId,
          createdAt: now,
        },
        select: { id: true, snapshotSha256: true },
      });
      await record(scope.tx, actor, {
        act: 'quote.made',
        subject: 'quote',
        subjectId: row.id,
        after: { jobId, version, totalMinor: snapshot.totalMinor, snapshotSha256: row.snapshotSha256 },
      });
      return oneView(deps, scope.tx, actor, row.id);
    }),
  );
}

/** Refused while the price sheet leaves something open that the customer would stumble over. */
function quotableIssue(issue: IssueRow | undefined): IssueRow {
  if (issue === undefined) {
    throw new ShopError('UPSTREAM_NOT_ISSUED', 'Issue 08 Price first: a quote is made from it.', {
      fields: [{ path: 'price', message: '08 Price is still a draft.' }],
    });
  }
  const { notes } = resultOf<PriceResult>(issue);
  for (const note of notes) {
    if (note.code === 'no-scope') {
      throw notAccepted('scope', 'Write what the customer gets, and issue the price sheet again.');
    }
    if (note.code === 'no-price') {
      throw notAccepted(
        'priceOverrides',
        `${note.description} has no price yet. Give it one and issue again.`,
      );
    }
  }
  return issue;
}

export type SentQuote = {
  readonly quote: QuoteView;
  /** To hand over; null where it went by mail. */
  readonly link: string | null;
};

/** Sends it by mail or makes a link to hand over. The same key never mails twice and gives the same link. */
export async function sendQuote(
  deps: Deps,
  actor: Actor,
  send: { readonly key: string; readonly quoteId: string; readonly to: string | null },
): Promise<SentQuote> {
  const token = quoteToken(deps, { shopId: actor.shopId, ...send });
  const link = quoteUrl(deps, token);
  const quote = await deps.doors.inShop(actor.shopId, (tx) =>
    once(tx, actor, send.key, { act: 'quote.send', quoteId: send.quoteId, to: send.to }, async () => {
      const row = await quoteOrNotFound(tx, actor, send.quoteId);
      const shop = await shopOf(tx, actor);
      await refuseClosed(tx, actor, row, today(deps, shop));
      const now = deps.clock.now();
      const to = send.to ?? '';
      await addQuoteLink(tx, actor, { token, quoteId: row.id, to, validUntil: row.validUntil, now });
      await tx.quote.update({
        where: { shopId_id: { shopId: actor.shopId, id: row.id } },
        data: { sentAt: row.sentAt ?? now, sentTo: to === '' ? (row.sentTo ?? '') : to },
        select: { id: true },
      });
      const closed = await closeOlder(tx, actor, row, now);
      await noteMilestones(tx, actor, row.jobId, { quotedAt: now });
      if (send.to !== null) {
        const mail = quoteSentMail(snapshotOf(row), link);
        await askForMail(deps, tx, actor, { purpose: 'quote', subjectId: row.id, to: send.to, ...mail });
      }
      await record(tx, actor, {
        act: 'quote.sent',
        subject: 'quote',
        subjectId: row.id,
        after: { version: row.version, to: to === '' ? 'by link' : to, closedOlder: closed },
      });
      return oneView(deps, tx, actor, row.id);
    }),
  );
  return { quote, link: send.to === null ? link : null };
}

async function refuseClosed(tx: Tx, actor: Actor, row: QuoteRow, day: string): Promise<void> {
  if (row.approvedAt !== null)
    throw new ShopError('QUOTE_CLOSED', 'The customer has approved this quote already.');
  if (row.declinedAt !== null)
    throw new ShopError('QUOTE_CLOSED', 'The customer has turned this quote down. Make a new version.');
  if (row.supersededAt !== null)
    throw new ShopError('QUOTE_CLOSED', 'A newer version was sent. Send that one.');
  if ((toShopDate(row.validUntil) ?? '') < day)
    throw new ShopError('QUOTE_EXPIRED', 'This quote has run out. Make a new version.');
  const newer = await tx.quote.findFirst({
    where: { shopId: actor.shopId, jobId: row.jobId, version: { gt: row.version }, sentAt: { not: null } },
    select: { version: true },
  });
  if (newer !== null)
    throw new ShopError('QUOTE_CLOSED', `Version ${newer.version} was sent already. Send that one.`);
}

/** All links of a quote end at once; nothing else changes. */
export function withdrawLinks(deps: Deps, actor: Actor, quoteId: string): Promise<QuoteView> {
  return deps.doors.inShop(actor.shopId, async (tx) => {
    const row = await quoteOrNotFound(tx, actor, quoteId);
    const ended = await endQuoteLinks(tx, actor, row.id, deps.clock.now());
    await record(tx, actor, {
      act: 'quote.links-ended',
      subject: 'quote',
      subjectId: row.id,
      after: { ended },
    });
    return oneView(deps, tx, actor, row.id);
  });
}

/** The shop's answer to a question: on the quote's page, and by mail where the quote went by mail. */
export async function answerCustomer(
  deps: Deps,
  actor: Actor,
  answer: { readonly key: string; readonly quoteId: string; readonly text: string },
): Promise<QuoteView> {
  const token = quoteToken(deps, { shopId: actor.shopId, ...answer });
  return deps.doors.inShop(actor.shopId, (tx) =>
    once(tx, actor, answer.key, { act: 'quote.answer', ...answer }, async () => {
      const row = await quoteOrNotFound(tx, actor, answer.quoteId);
      if (row.sentAt === null)
        throw new ShopError('QUOTE_CLOSED', 'The customer has not got this quote yet.');
      const now = deps.clock.now();
      await tx.quoteMessage.create({
        data: {
          shopId: actor.shopId,
          quoteId: row.id,
          side: 'shop',
          authorName: actor.name,
          text: answer.text,
          createdAt: now,
        },
        select: { id: true },
      });
      const to = row.sentTo ?? '';
      if (to !== '') {
        await addQuoteLink(tx, actor, { token, quoteId: row.id, to, validUntil: row.validUntil, now });
        const mail = shopAnsweredMail(snapshotOf(row), actor.name, answer.text, quoteUrl(deps, token));
        await askForMail(deps, tx, actor, { purpose: 'quote-answer', subjectId: row.id, to, ...mail });
      }
      await record(tx, actor, { act: 'quote.answered', subject: 'quote', subjectId: row.id });
      return oneView(deps, tx, actor, row.id);
    }),
  );
}

/** The frozen picture itself, as the customer reads it. */
export function readQuote(deps: Deps, actor: Actor, quoteId: string): Promise<QuoteSnapshot> {
  return deps.doors.inShop(actor.shopId, async (tx) => snapshotOf(await quoteOrNotFound(tx, actor, quoteId)));
}

/** What changed from the version before; null for the first. Costs are left out. */
export function quoteChanges(deps: Deps, actor: Actor, quoteId: string): Promise<QuoteComparison | null> {
  return deps.doors.inShop(actor.shopId, async (tx) => {
    const row = await quoteOrNotFound(tx, actor, quoteId);
    const older = (await quotesOfJob(tx, actor, row.jobId)).find(({ version }) => version < row.version);
    if (older === undefined) return null;
    const before = await pricedQuoteOf(tx, actor, older);
    const after = await pricedQuoteOf(tx, actor, row);
    const changes = compareQuotes(hideCosts(before), hideCosts(after));
    if (isRefusal(changes)) throw refusedByEngine([changes.refusal]);
    return changes;
  });
}

async function pricedQuoteOf(tx: Tx, actor: Actor, row: QuoteRow): Promise<PriceResult['quote']> {
  const issue = await findIssue(tx, actor, row.priceIssueId);
  if (issue === null) throw notFound('issue');
  return resultOf<PriceResult>(issue).quote;
}

async function quoteOrNotFound(tx: Tx, actor: Pick<Actor, 'shopId'>, id: string): Promise<QuoteRow> {
  const row = await findQuote(tx, actor, id);
  if (row === null) throw notFound('quote');
  return row;
}

async function shopOf(tx: Tx, actor: Actor): Promise<ShopView> {
  const shop = await findShop(tx, actor.shopId);
  if (shop === null) throw notFound('shop');
  return toShopView(shop);
}

function customerOf({ tx, actor, job }: SheetScope) {
  return tx.customer.findUniqueOrThrow({
    where: { shopId_id: { shopId: actor.shopId, id: job.customer.id } },
    select: { address: true },
  });
}

function today({ clock }: Pick<Deps, 'clock'>, shop: Pick<ShopView, 'timeZone'>): string {
  return toShopTime(clock.now().toISOString(), shop.timeZone).date;
}

async function viewsOf(deps: Deps, tx: Tx, actor: Actor, rows: readonly QuoteRow[]): Promise<QuoteView[]> {
  const day = today(deps, await shopOf(tx, actor));
  const links = await openLinksOf(
    tx,
    actor,
    rows.map(({ id }) => id),
    deps.clock.now(),
  );
  return rows.map((row) => toQuoteView(row, day, links.get(row.id) ?? 0));
}

async function oneView(deps: Deps, tx: Tx, actor: Actor, id: string): Promise<QuoteView> {
  const [view] = await viewsOf(deps, tx, actor, [await quoteOrNotFound(tx, actor, id)]);
  if (view === undefined) throw notFound('quote');
  return view;
}

// The customer's page in words: where the quote stands, first.
import type { CustomerQuotePage } from '@gusset/contracts/quote';
import { formatInstant, formatMoney, formatShopDate } from '@gusset/units';
import type { VerdictTone } from '../../shared/marks/verdict.tsx';

export type OpenPage = Exclude<CustomerQuotePage, { state: 'ended' }>;

export type PageWords = { readonly tone: VerdictTone; readonly words: string; readonly detail: string };

/** Null while the quote is simply open: then the quote itself comes first. */
export function standingWords(page: OpenPage): PageWords | null {
  const { snapshot } = page;
  switch (page.state) {
    case 'open':
      return null;
    case 'approved':
      return {
        tone: 'pass',
        words: 'Approved, thank you',
        detail: `${page.approvedByName ?? 'You'}${approvedAtWords(page)}. ${
          snapshot.depositMinor === 0
            ? ''
            : `${snapshot.shop.name} will be in touch about the deposit of ${amountOf(page, snapshot.depositMinor)}. `
        }Keep the PDF for your papers.`,
      };
    case 'declined':
      return {
        tone: 'note',
        words: 'Not now',
        detail: `You let ${snapshot.shop.name} know that you are not going ahead. If you change your mind, ask them: a new quote is quickly made.`,
      };
    case 'expired':
      return {
        tone: 'check',
        words: 'This quote has run out',
        detail: `It was valid until ${dayOf(page, snapshot.validUntil)}. Ask ${snapshot.shop.name} for today’s price.`,
      };
    case 'superseded':
      return {
        tone: 'check',
        words: 'There is a newer version',
        detail: `${snapshot.shop.name} has sent a newer quote in place of this one. Open the link in their last mail.`,
      };
  }
}

export function amountOf({ snapshot }: Pick<OpenPage, 'snapshot'>, minor: number): string {
  return formatMoney({ minor, currency: snapshot.currency }, snapshot.locale);
}

export function dayOf({ snapshot }: Pick<OpenPage, 'snapshot'>, day: string): string {
  return formatShopDate(day, snapshot.locale);
}

export function instantOf({ snapshot }: Pick<OpenPage, 'snapshot'>, instant: string): string {
  return formatInstant(instant, { zone: snapshot.timeZone, locale: snapshot.locale });
}

function approvedAtWords(page: OpenPage): string {
  return page.approvedAt === null ? '' : `, ${instantOf(page, page.approvedAt)}`;
}

/** Paragraphs as they were typed; empty lines part them. */
export function paragraphsOf(text: string): string[] {
  return text
    .split(/\n+/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
}

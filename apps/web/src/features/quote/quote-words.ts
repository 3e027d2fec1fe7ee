// A quote's standing and its acts in the shop's words.
import type { QuoteStanding, QuoteView } from '@gusset/contracts/quote';
import type { VerdictTone } from '../../shared/marks/verdict.tsx';

export const STANDING_WORDS: Readonly<Record<QuoteStanding, string>> = {
  draft: 'Not sent yet',
  sent: 'Sent, not opened yet',
  seen: 'The customer has opened it',
  approved: 'Approved',
  declined: 'Not now, says the customer',
  superseded: 'Closed by a newer version',
  expired: 'Has run out',
  ended: 'Its links were taken back',
};

export const STANDING_TONE: Readonly<Record<QuoteStanding, VerdictTone>> = {
  draft: 'note',
  sent: 'note',
  seen: 'note',
  approved: 'pass',
  declined: 'fail',
  superseded: 'note',
  expired: 'check',
  ended: 'check',
};

/** Whether it can still go to the customer. */
export function isSendable({ standing }: Pick<QuoteView, 'standing'>): boolean {
  return standing === 'draft' || standing === 'sent' || standing === 'seen' || standing === 'ended';
}

/** The newest question that nobody has answered; null where none waits. */
export function openQuestion({ messages }: Pick<QuoteView, 'messages'>): string | null {
  const last = messages.at(-1);
  return last?.side === 'customer' ? last.text : null;
}

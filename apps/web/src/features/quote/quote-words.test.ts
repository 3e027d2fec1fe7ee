import type { QuoteMessageView } from '@gusset/contracts/quote';
import { describe, expect, it } from 'vitest';
import { isSendable, openQuestion } from './quote-words.ts';

const message = (side: QuoteMessageView['side'], text: string): QuoteMessageView => ({
  id: text,
  side,
  authorName: 'R. Okafor',
  text,
  at: '2026-11-24T12:00:00Z',
});

describe('a quote in the shop’s list', () => {
  it('waits for an answer while the customer had the last word', () => {
    expect(openQuestion({ messages: [message('shop', 'a'), message('customer', 'b')] })).toBe('b');
    expect(openQuestion({ messages: [message('customer', 'b'), message('shop', 'a')] })).toBeNull();
    expect(openQuestion({ messages: [] })).toBeNull();
  });

  it('is sent again after its links were taken back, and not once it is answered', () => {
    expect(isSendable({ standing: 'ended' })).toBe(true);
    expect(isSendable({ standing: 'approved' })).toBe(false);
    expect(isSendable({ standing: 'superseded' })).toBe(false);
  });
});

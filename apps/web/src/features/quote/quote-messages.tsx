'use client';

import type { QuoteView } from '@gusset/contracts/quote';
import { formatInstant } from '@gusset/units';
import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { TextArea } from '../../shared/controls/text-area.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { useMessages } from '../../shared/overlays/messages.tsx';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { useMay } from '../../shared/shell/person.tsx';
import styles from './quote-panel.module.css';

export type QuoteMessagesProps = { readonly quote: QuoteView; readonly onChanged: () => void };

/** What the customer asked and what the shop said, and the way to answer. */
export function QuoteMessages({ quote, onChanged }: QuoteMessagesProps) {
  const { shop } = useDisplay();
  const trpc = useTRPC();
  const say = useMessages();
  const maySend = useMay('quote.send');
  const [text, setText] = useState('');
  const [key, setKey] = useState(() => crypto.randomUUID());
  const answer = useMutation(
    trpc.quote.answer.mutationOptions({
      onSuccess: () => {
        setText('');
        setKey(crypto.randomUUID());
        say(
          quote.sentTo
            ? `Your answer is on its way to ${quote.sentTo}.`
            : 'Your answer stands on the quote’s page.',
        );
        onChanged();
      },
    }),
  );
  if (quote.messages.length === 0) return null;
  return (
    <section className={styles.messages} aria-label={`Questions about quote ${quote.number}`}>
      <h4 className="caption">Questions</h4>
      <ol>
        {quote.messages.map((message) => (
          <li key={message.id} data-side={message.side}>
            <p className={styles.by}>
              {message.authorName}
              {message.side === 'customer' ? ', customer' : ''} ·{' '}
              {formatInstant(message.at, { zone: shop.timeZone, locale: shop.locale })}
            </p>
            <p dir="auto" className={styles.said}>
              {message.text}
            </p>
          </li>
        ))}
      </ol>
      {maySend ? (
        <>
          <TextArea
            label="Answer"
            value={text}
            onChange={(next) => {
              setText(next);
              setKey(crypto.randomUUID());
            }}
            maxLength={10_000}
            rows={3}
            error={answer.error === null ? null : shownError(answer.error).message}
          />
          <div className={styles.acts}>
            <Button
              isPending={answer.isPending}
              isDisabled={text.trim() === ''}
              onPress={() => answer.mutate({ key, quoteId: quote.id, text })}
            >
              Send the answer
            </Button>
          </div>
        </>
      ) : null}
    </section>
  );
}

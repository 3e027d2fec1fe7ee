'use client';

import type { QuoteView } from '@gusset/contracts/quote';
import { formatInstant, formatMoney, formatShopDate } from '@gusset/units';
import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { ConfirmDialog } from '../../shared/overlays/confirm-dialog.tsx';
import { useMessages } from '../../shared/overlays/messages.tsx';
import { paths } from '../../shared/paths.ts';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { useMay } from '../../shared/shell/person.tsx';
import { QuoteChanges } from './quote-changes.tsx';
import { QuoteMessages } from './quote-messages.tsx';
import styles from './quote-panel.module.css';
import { isSendable, openQuestion, STANDING_TONE, STANDING_WORDS } from './quote-words.ts';
import { SendDialog } from './send-dialog.tsx';

export type QuoteCardProps = {
  readonly quote: QuoteView;
  readonly isNewest: boolean;
  readonly customerEmail: string;
  readonly onChanged: () => void;
};

/** One version: where it stands first, then what it says and who did what when. */
export function QuoteCard({ quote, isNewest, customerEmail, onChanged }: QuoteCardProps) {
  const { shop } = useDisplay();
  const trpc = useTRPC();
  const say = useMessages();
  const maySend = useMay('quote.send');
  const [isSending, setIsSending] = useState(false);
  const [isEnding, setIsEnding] = useState(false);
  const withdraw = useMutation(
    trpc.quote.withdrawLink.mutationOptions({
      onSuccess: () => {
        setIsEnding(false);
        say(`The links to quote ${quote.number} open nothing any more.`);
        onChanged();
      },
    }),
  );
  const money = (minor: number) => formatMoney({ minor, currency: quote.currency }, shop.locale);
  const at = (instant: string) => formatInstant(instant, { zone: shop.timeZone, locale: shop.locale });
  const day = (date: string) => formatShopDate(date, shop.locale);
  const question = openQuestion(quote);
  return (
    <article className={styles.card} aria-labelledby={`quote-${quote.id}`} data-newest={isNewest}>
      <header className={styles.cardHead}>
        <h3 id={`quote-${quote.id}`} className="figures">
          {quote.number}
        </h3>
        <p className={styles.total}>
          <span className="figures">{money(quote.totalMinor)}</span>
          <small>price sheet rev {quote.priceRevision}</small>
        </p>
      </header>
      <div className={styles.cardBody}>
        <Verdict tone={STANDING_TONE[quote.standing]} words={STANDING_WORDS[quote.standing]}>
          {quote.approvedAt === null ? null : (
            <p>
              By {quote.approvedByName}, {at(quote.approvedAt)}. The total of the job is this one.
            </p>
          )}
          {question === null ? null : <p>Waits for an answer: “{question}”</p>}
        </Verdict>
        <Rows>
          <Row label="Made">{at(quote.madeAt)}</Row>
          <Row label="Valid until">{day(quote.validUntil)}</Row>
          <Row label="Deposit">{money(quote.depositMinor)}</Row>
          {quote.promisedOn === null ? null : <Row label="Ready on">{day(quote.promisedOn)}</Row>}
          {quote.sentAt === null ? null : (
            <Row label={quote.sentTo ? 'Mailed' : 'Link made'}>{at(quote.sentAt)}</Row>
          )}
          {quote.sentTo ? (
            <Row label="To" isWords>
              {quote.sentTo}
            </Row>
          ) : null}
          {quote.firstSeenAt === null ? null : <Row label="First opened">{at(quote.firstSeenAt)}</Row>}
          {quote.declinedAt === null ? null : <Row label="Turned down">{at(quote.declinedAt)}</Row>}
        </Rows>
        <div className={styles.acts}>
          {maySend && isSendable(quote) && isNewest ? (
            <Button look="primary" onPress={() => setIsSending(true)}>
              {quote.sentAt === null ? 'Send to the customer' : 'Send again'}
            </Button>
          ) : null}
          <a className={styles.paper} href={paths.quotePaper(quote.id)} target="_blank" rel="noopener">
            Open as PDF
          </a>
          {maySend && quote.openLinks > 0 ? (
            <Button look="quiet" onPress={() => setIsEnding(true)}>
              Take the link back
            </Button>
          ) : null}
        </div>
        {quote.version === 1 ? null : <QuoteChanges quote={quote} money={money} />}
        {quote.sentAt === null ? null : <QuoteMessages quote={quote} onChanged={onChanged} />}
      </div>
      {isSending ? (
        <SendDialog
          quote={quote}
          customerEmail={customerEmail}
          onSent={onChanged}
          onClose={() => setIsSending(false)}
        />
      ) : null}
      <ConfirmDialog
        title={`Take back the link to quote ${quote.number}?`}
        verb="Take the link back"
        keep="Leave it open"
        removes
        isOpen={isEnding}
        isPending={withdraw.isPending}
        onConfirm={() => withdraw.mutate({ quoteId: quote.id })}
        onClose={() => setIsEnding(false)}
      >
        <p>Whoever has it can no longer read or answer the quote, at once. You can send the quote again.</p>
        {withdraw.error === null ? null : <Verdict tone="fail" words={shownError(withdraw.error).message} />}
      </ConfirmDialog>
    </article>
  );
}

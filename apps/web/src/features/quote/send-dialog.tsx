'use client';

import type { QuoteView } from '@gusset/contracts/quote';
import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { RadioGroup } from '../../shared/controls/radio-group.tsx';
import { TextField } from '../../shared/controls/text-field.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import { fieldError, shownError } from '../../shared/data/shop-error.ts';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { Dialog } from '../../shared/overlays/dialog.tsx';
import { useMessages } from '../../shared/overlays/messages.tsx';
import styles from './quote-panel.module.css';

export type SendDialogProps = {
  readonly quote: QuoteView;
  readonly customerEmail: string;
  readonly onSent: () => void;
  readonly onClose: () => void;
};

type Way = 'mail' | 'link';

/** By mail, or as a link to hand over. One opening of this form sends once, however often the button is pressed. */
export function SendDialog({ quote, customerEmail, onSent, onClose }: SendDialogProps) {
  const trpc = useTRPC();
  const say = useMessages();
  const [way, setWay] = useState<Way>('mail');
  const [to, setTo] = useState(quote.sentTo || customerEmail);
  const [key, setKey] = useState(() => crypto.randomUUID());
  const [link, setLink] = useState<string | null>(null);
  const send = useMutation(
    trpc.quote.send.mutationOptions({
      onSuccess: (sent) => {
        onSent();
        setLink(sent.link);
        if (sent.link !== null) return;
        say(`Quote ${quote.number} is on its way to ${to}.`);
        onClose();
      },
    }),
  );
  const problem = send.error === null ? null : shownError(send.error);
  const change = (next: () => void) => {
    next();
    setKey(crypto.randomUUID()); // another request, not the same one again
    send.reset();
  };
  return (
    <Dialog
      title={`Send quote ${quote.number}`}
      isOpen
      onClose={onClose}
      acts={
        link === null ? (
          <Button
            look="primary"
            isPending={send.isPending}
            onPress={() => send.mutate({ key, quoteId: quote.id, to: way === 'mail' ? to.trim() : null })}
          >
            {way === 'mail' ? 'Send quote' : 'Make a link'}
          </Button>
        ) : null
      }
    >
      <div className={styles.form}>
        <RadioGroup
          label="How"
          isRow
          options={[
            { id: 'mail', label: 'By mail' },
            { id: 'link', label: 'As a link to hand over' },
          ]}
          value={way}
          onChange={(next) => change(() => setWay(next === 'link' ? 'link' : 'mail'))}
        />
        {way === 'mail' ? (
          <TextField
            label="To"
            type="email"
            value={to}
            onChange={(next) => change(() => setTo(next))}
            error={fieldError(problem, 'to')}
          />
        ) : null}
        {link === null ? (
          <p>
            Once it is sent, older versions that the customer has not answered are closed. Whoever has the
            link can read and approve this quote, and nothing else.
          </p>
        ) : (
          <HandOver link={link} />
        )}
        {problem !== null && fieldError(problem, 'to') === null ? (
          <Verdict tone="fail" words={problem.message} />
        ) : null}
      </div>
    </Dialog>
  );
}

function HandOver({ link }: { readonly link: string }) {
  const [isCopied, setIsCopied] = useState(false);
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(link);
      setIsCopied(true);
    } catch {
      setIsCopied(false); // not allowed here: the field is there to be marked and copied by hand
    }
  };
  return (
    <>
      <TextField
        label="Link, shown this once"
        value={link}
        isReadOnly
        onFocus={(event) => selectAll(event.target)}
      />
      <div className={styles.acts}>
        <Button look="primary" onPress={() => void copy()}>
          Copy the link
        </Button>
        <span role="status">{isCopied ? 'Copied.' : ''}</span>
      </div>
    </>
  );
}

function selectAll(target: Element): void {
  if (target instanceof HTMLInputElement) target.select();
}

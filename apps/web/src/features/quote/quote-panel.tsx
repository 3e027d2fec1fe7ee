'use client';

import type { QuoteView } from '@gusset/contracts/quote';
import { useMutation, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { type ShownError, shownError } from '../../shared/data/shop-error.ts';
import { EmptyState } from '../../shared/marks/empty-state.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { useMay } from '../../shared/shell/person.tsx';
import { QuoteCard } from './quote-card.tsx';
import styles from './quote-panel.module.css';

export type QuotePanelProps = {
  readonly job: ApiOutputs['job']['byNumber']['job'];
  readonly start: readonly QuoteView[];
  /** Where a quote goes unless somebody says otherwise; empty = not known. */
  readonly customerEmail: string;
};

/** How often the list looks whether the customer has answered. */
const LOOK_AGAIN_MS = 30_000;

/** The versions of the job's quote, newest first: made from the issued price sheet, sent, answered. */
export function QuotePanel({ job, start, customerEmail }: QuotePanelProps) {
  const trpc = useTRPC();
  const maySend = useMay('quote.send');
  const list = useQuery(
    trpc.quote.list.queryOptions(
      { jobId: job.id },
      { initialData: [...start], refetchInterval: LOOK_AGAIN_MS },
    ),
  );
  const [key, setKey] = useState(() => crypto.randomUUID());
  const make = useMutation(
    trpc.quote.make.mutationOptions({
      onSuccess: () => {
        setKey(crypto.randomUUID());
        void list.refetch();
      },
    }),
  );
  const problem: ShownError | null = make.error === null ? null : shownError(make.error);
  const quotes = list.data;
  const button = maySend ? (
    <Button
      look={quotes.length === 0 ? 'primary' : 'plain'}
      isPending={make.isPending}
      onPress={() => make.mutate({ key, jobId: job.id })}
    >
      {quotes.length === 0 ? 'Make a quote' : 'Make the next version'}
    </Button>
  ) : null;
  return (
    <section className={styles.panel} aria-labelledby="quotes-head" data-screen-only="">
      <header className={styles.head}>
        <h2 id="quotes-head">Quotes</h2>
        {quotes.length === 0 ? null : button}
      </header>
      {problem === null ? null : (
        <Verdict tone="fail" words="No quote was made">
          <p>{problem.message}</p>
        </Verdict>
      )}
      {list.isError ? (
        <Verdict tone="check" words="The list may be old">
          <p>{shownError(list.error).message}</p>
        </Verdict>
      ) : null}
      {quotes.length === 0 ? (
        <EmptyState title="No quote yet" act={button}>
          A quote freezes the price sheet as it is issued, with the drawing, for the customer to read and
          approve. Prices that change later leave it as it is.
        </EmptyState>
      ) : (
        quotes.map((quote, index) => (
          <QuoteCard
            key={quote.id}
            quote={quote}
            isNewest={index === 0}
            customerEmail={customerEmail}
            onChanged={() => void list.refetch()}
          />
        ))
      )}
    </section>
  );
}

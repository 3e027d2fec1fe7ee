'use client';

import type { QuoteView } from '@gusset/contracts/quote';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useTRPC } from '../../shared/data/api-client.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { comparisonChanges, type MoneyWords } from '../../shared/job/quote-changes.ts';
import { Skeleton } from '../../shared/marks/skeleton.tsx';
import { ChangeList } from '../../shared/sheet/change-list.tsx';
import styles from './quote-panel.module.css';

export type QuoteChangesProps = { readonly quote: QuoteView; readonly money: MoneyWords };

/** What this version changed against the one before; asked for when somebody wants to see it. */
export function QuoteChanges({ quote, money }: QuoteChangesProps) {
  const [isOpen, setIsOpen] = useState(false);
  return (
    <details className={styles.changes} onToggle={(event) => setIsOpen(event.currentTarget.open)}>
      <summary>What changed since the version before</summary>
      {isOpen ? <Answer quote={quote} money={money} /> : null}
    </details>
  );
}

function Answer({ quote, money }: QuoteChangesProps) {
  const trpc = useTRPC();
  const { data, error } = useQuery(trpc.quote.changes.queryOptions({ quoteId: quote.id }));
  if (error !== null) return <p role="alert">{shownError(error).message}</p>;
  if (data === undefined) return <Skeleton lines={3} what="Comparing the two versions" />;
  const changes = data === null ? [] : comparisonChanges(data, money);
  return changes.length === 0 ? <p>Lines and prices are the same.</p> : <ChangeList changes={changes} />;
}

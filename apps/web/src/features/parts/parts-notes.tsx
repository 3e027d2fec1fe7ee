'use client';

import { SHEETS } from '@gusset/contracts/sheet';
import { UnreadyVerdict } from '../../shared/job/unready-verdict.tsx';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import type { PartsSheet } from './parts-lines.tsx';
import styles from './parts-screen.module.css';

/** What is short, what others bring, what the designs above do not say yet. */
export function PartsNotes({ sheet }: { readonly sheet: PartsSheet }) {
  const { outcome, data } = sheet;
  const stock = new Map(data.facts.parts.map((part) => [part.id, part.stockQuantity]));
  const lines = sheet.result?.lines ?? [];
  const short = lines.filter(
    (line) =>
      line.source === 'stock' && line.partId !== null && (stock.get(line.partId) ?? 0) < line.quantity,
  );
  const count = (source: (typeof lines)[number]['source']) =>
    lines.filter((line) => line.source === source).length;
  return (
    <div className={styles.notes}>
      {outcome.state !== 'ready' ? (
        <UnreadyVerdict outcome={outcome} refused="That cannot be" />
      ) : lines.length === 0 ? (
        <Verdict tone="note" words="No parts: labour only">
          Issue it like this if nothing is bought, taken from the shelf or brought for this job.
        </Verdict>
      ) : short.length > 0 ? (
        <Verdict tone="check" words="The shelf holds too few">
          {short.map((line) => line.description).join(', ')}
        </Verdict>
      ) : (
        <Verdict tone="pass" words="Every line has a source" />
      )}
      {data.draftUpstream.length > 0 ? (
        <Verdict tone="note" words="Reads drafts">
          {data.draftUpstream.map((kind) => `${SHEETS[kind].number} ${SHEETS[kind].title}`).join(', ')}:
          quantities follow until they are issued.
        </Verdict>
      ) : null}
      <Rows title="Where from">
        <Row label="From the shelf">{count('stock')}</Row>
        <Row label="To buy">{count('buy')}</Row>
        <Row label="Customer brings">{count('customer')}</Row>
        <Row label="Sponsors lend or give">{count('sponsor')}</Row>
      </Rows>
    </div>
  );
}

'use client';

import type { PartsFacts, PartsInput, PartsLine, PartsResult } from '@gusset/contracts/parts';
import type { PartsUpstream } from '@gusset/sheets';
import { useQuery } from '@tanstack/react-query';
import { useTRPC } from '../../shared/data/api-client.ts';
import type { JobSheet } from '../../shared/job/use-job-sheet.ts';
import { LineRow } from './line-row.tsx';
import styles from './parts-screen.module.css';

export type PartsSheet = JobSheet<PartsInput, PartsFacts, PartsUpstream, PartsResult>;

const GROUP_WORDS: Readonly<Record<PartsLine['group'], string>> = {
  'sheet-goods': 'Sheet goods',
  driver: 'Drivers',
  amplifier: 'Amplifiers and what others bring',
  finish: 'Finish',
  hardware: 'Glue, screws, hardware',
  power: 'Power',
  signal: 'Signal',
};
const ORDER: readonly PartsLine['group'][] = [
  'sheet-goods',
  'driver',
  'amplifier',
  'power',
  'signal',
  'finish',
  'hardware',
];

export type PartsLinesProps = {
  readonly sheet: PartsSheet;
  readonly jobId: string;
  readonly lines: readonly PartsLine[];
};

/** A schedule of lines by group; each says why it is there. */
export function PartsLines({ sheet, jobId, lines }: PartsLinesProps) {
  const trpc = useTRPC();
  const deliveries = useQuery(trpc.delivery.ofJob.queryOptions({ jobId }));
  const byLine = new Map((deliveries.data ?? []).map((delivery) => [delivery.lineKey, delivery]));
  const stock = new Map(sheet.data.facts.parts.map((part) => [part.id, part.stockQuantity]));
  if (lines.length === 0) {
    return (
      <p className={styles.empty}>
        Nothing yet. Sheets, drivers and finish come from the designs above as they are drawn; anything else
        is added below.
      </p>
    );
  }
  return (
    <>
      {ORDER.map((group) => {
        const inGroup = lines.filter((line) => line.group === group);
        if (inGroup.length === 0) return null;
        return (
          <section key={group} aria-label={GROUP_WORDS[group]}>
            <h2 className="caption">{GROUP_WORDS[group]}</h2>
            <ul className={styles.lines}>
              {inGroup.map((line) => (
                <LineRow
                  key={line.key}
                  line={line}
                  sheet={sheet}
                  jobId={jobId}
                  delivery={byLine.get(line.key) ?? null}
                  inStock={line.partId === null ? null : (stock.get(line.partId) ?? null)}
                />
              ))}
            </ul>
          </section>
        );
      })}
    </>
  );
}

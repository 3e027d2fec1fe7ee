'use client';

import { may } from '@gusset/contracts/access';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import type { LengthRule } from '../../shared/job/length-rule.ts';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { usePerson } from '../../shared/shell/person.tsx';
import styles from './cutting-screen.module.css';
import type { CuttingJobSheet } from './cutting-types.ts';
import { counted } from './cutting-words.ts';

export type CutReportProps = {
  readonly sheet: CuttingJobSheet;
  readonly jobId: string;
  readonly rule: LengthRule;
};

/** Says that the issued sheet has been cut: only then does stock move. */
export function CutReport({ sheet, jobId, rule }: CutReportProps) {
  const trpc = useTRPC();
  const client = useQueryClient();
  const { role } = usePerson();
  const { issue } = sheet.data;
  const question = trpc.cutReport.ofJob.queryOptions({ jobId });
  const reports = useQuery(question);
  const [key, setKey] = useState(() => crypto.randomUUID());
  const settled = {
    onSuccess: async () => {
      setKey(crypto.randomUUID());
      await client.invalidateQueries({ queryKey: trpc.offcut.list.queryKey() });
    },
    onSettled: () => client.invalidateQueries({ queryKey: question.queryKey }),
  };
  const reporting = useMutation(trpc.cutReport.report.mutationOptions(settled));
  const undoing = useMutation(trpc.cutReport.undo.mutationOptions(settled));
  if (issue === null || reports.data === undefined) return null;
  const standing = reports.data.find(({ issueId }) => issueId === issue.id) ?? null;
  const fault = reporting.error ?? undoing.error;
  const shown = fault === null ? null : shownError(fault);
  const mayReport = may(role, 'cut.report');
  const left = (sheet.result?.boards ?? []).flatMap(({ layout }) =>
    layout.sheets.flatMap(({ offcuts }) => offcuts),
  );
  return (
    <section aria-label="Cut or not yet" className={styles.report}>
      {standing === null ? (
        <p className={styles.reportWords}>
          Not reported cut yet. Stock moves only then: the sheets go out, {counted(left.length, 'offcut')} of
          revision {issue.revision} into the rack, each with its number.
        </p>
      ) : (
        <>
          <p className={styles.reportWords}>
            <strong>Cut</strong>, reported by {standing.reportedByName}.
            {standing.taken.length === 0
              ? ' No sheet was taken out of stock.'
              : ` Out of stock: ${standing.taken.map(({ count, name }) => `${count} × ${name}`).join(', ')}.`}
            {standing.usedNumbers.length === 0
              ? ''
              : ` Used up: ${standing.usedNumbers.map((number) => `R${number}`).join(', ')}.`}
          </p>
          {standing.left.length === 0 ? null : (
            <ul className={styles.cards} aria-label="Into the rack">
              {standing.left.map((piece) => (
                <li key={piece.id} className={styles.rackRow}>
                  <strong className={styles.mark}>R{piece.number}</strong>
                  <span>
                    {rule.drawn(piece.lengthMm)} × {rule.drawn(piece.widthMm)} {piece.boardName}
                    <span className={styles.rowNote}>write the number on it</span>
                  </span>
                </li>
              ))}
            </ul>
          )}
        </>
      )}
      {shown === null ? null : <Verdict tone="fail" words={shown.message} />}
      {mayReport ? (
        <div className={styles.acts} data-screen-only="">
          {standing === null ? (
            <Button
              isDisabled={reporting.isPending}
              onPress={() => reporting.mutate({ key, jobId, issueId: issue.id })}
            >
              Report it cut
            </Button>
          ) : (
            <Button
              look="quiet"
              isDisabled={undoing.isPending}
              onPress={() => undoing.mutate({ jobId, reportId: standing.id })}
            >
              It is not cut: move stock back
            </Button>
          )}
        </div>
      ) : null}
    </section>
  );
}

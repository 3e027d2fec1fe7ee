'use client';

import type { RackedOffcut } from '@gusset/contracts/offcuts';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Button } from '../../shared/controls/button.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { Skeleton } from '../../shared/marks/skeleton.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import styles from './cutting-screen.module.css';
import type { SettingsProps } from './cutting-types.ts';
import { useBoards } from './use-boards.ts';

/** What stands in the rack of the boards that this job cuts; taking one puts it on the sheet. */
export function RackList({ sheet, rule }: SettingsProps) {
  const trpc = useTRPC();
  const client = useQueryClient();
  const boards = useBoards(sheet);
  const partIds = boards.cut.map(({ id }) => id);
  const question = trpc.offcut.list.queryOptions({ partIds }, { enabled: partIds.length > 0 });
  const rack = useQuery(question);
  const throwing = useMutation(
    trpc.offcut.throwAway.mutationOptions({
      onSettled: () => client.invalidateQueries({ queryKey: question.queryKey }),
    }),
  );
  const { offcuts } = sheet.input;
  const free = (rack.data ?? []).filter(({ id }) => !offcuts.some(({ offcutId }) => offcutId === id));
  const take = (piece: RackedOffcut) =>
    sheet.changeNow({
      offcuts: [
        ...offcuts,
        {
          key: crypto.randomUUID(),
          boardId: piece.partId,
          length: { mm: piece.lengthMm, typed: rule.write(piece.lengthMm), unit: rule.unit },
          width: { mm: piece.widthMm, typed: rule.write(piece.widthMm), unit: rule.unit },
          count: 1,
          offcutId: piece.id,
        },
      ],
    });
  if (partIds.length === 0) return null;
  if (rack.isPending) return <Skeleton lines={2} what="Looking into the rack" />;
  if (rack.isError) {
    return <Verdict tone="fail" words={shownError(rack.error).message} />;
  }
  const fault = throwing.error === null ? null : shownError(throwing.error);
  if (free.length === 0) {
    return (
      <p className={styles.quiet}>Nothing of these boards stands in the rack that is not on this sheet.</p>
    );
  }
  return (
    <>
      {fault === null ? null : <Verdict tone="fail" words={fault.message} />}
      <ul className={styles.cards} aria-label="In the rack">
        {free.map((piece) => (
          <li key={piece.id} className={styles.rackRow}>
            <strong className={styles.mark}>R{piece.number}</strong>
            <span>
              {rule.drawn(piece.lengthMm)} × {rule.drawn(piece.widthMm)} {piece.boardName}
              <span className={styles.rowNote}>
                {[piece.place, piece.fromJobNumber === null ? '' : `left by job ${piece.fromJobNumber}`]
                  .filter((words) => words !== '')
                  .join(', ')}
              </span>
            </span>
            {sheet.mayEdit ? (
              <Button look="quiet" onPress={() => take(piece)}>
                Use R{piece.number}
              </Button>
            ) : null}
            {sheet.mayEdit ? (
              <Button
                look="quiet"
                isDisabled={throwing.isPending}
                onPress={() => throwing.mutate({ id: piece.id, version: piece.version })}
              >
                Throw R{piece.number} away
              </Button>
            ) : null}
          </li>
        ))}
      </ul>
    </>
  );
}

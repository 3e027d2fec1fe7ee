'use client';

import type { ChangedPromise } from '@gusset/contracts/planning';
import Link from 'next/link';
import { paths } from '../../shared/paths.ts';
import { moveWords, reasonWords } from '../../shared/plan/plan-words.ts';
import { usePlanFrame } from '../../shared/plan/use-plan-frame.ts';
import styles from './plan-screen.module.css';

export type MovedListProps = { readonly moved: readonly ChangedPromise[]; readonly plannedAt: string };

/** Whose promise moves, by how much, and by which task and resource. */
export function MovedList({ moved, plannedAt }: MovedListProps) {
  const frame = usePlanFrame(plannedAt);
  return (
    <ul className={styles.moved}>
      {moved.map((change) => (
        <li key={change.jobId}>
          <Link prefetch={false} href={paths.job(change.number, 'plan')}>
            {change.number}
          </Link>{' '}
          <span className="figures">{moveWords(change, frame)}</span>
          <br />
          {reasonWords(change.because, frame)}
        </li>
      ))}
    </ul>
  );
}

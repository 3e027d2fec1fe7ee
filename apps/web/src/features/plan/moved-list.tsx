'use client';

import type { ChangedPromise } from '@gusset/contracts/planning';
import Link from 'next/link';
import { paths } from '../../shared/paths.ts';
import { heldJobOf, moveWords, reasonWords } from '../../shared/plan/plan-words.ts';
import { usePlanFrame } from '../../shared/plan/use-plan-frame.ts';
import styles from './plan-screen.module.css';
import type { JobPlan } from './plan-screen.tsx';

export type MovedListProps = { readonly moved: readonly ChangedPromise[]; readonly view: JobPlan };

/** Whose promise moves, by how much, and by which task and resource. */
export function MovedList({ moved, view }: MovedListProps) {
  const frame = usePlanFrame(view.plan.plannedAt);
  return (
    <ul className={styles.moved}>
      {moved.map((change) => (
        <li key={change.jobId}>
          <Link prefetch={false} href={paths.job(change.number, 'plan')}>
            {change.number}
          </Link>{' '}
          <span className="figures">{moveWords(change, frame)}</span>
          <br />
          {reasonWords(change.because, frame, heldJobOf(change, view))}
        </li>
      ))}
    </ul>
  );
}

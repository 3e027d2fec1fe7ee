import type { ReactNode } from 'react';
import styles from './empty-state.module.css';

export type EmptyStateProps = {
  /** What belongs here: "No jobs yet". */
  readonly title: string;
  /** What it is for, in a sentence or two. */
  readonly children: ReactNode;
  /** The one next act. */
  readonly act?: ReactNode;
};

/** An empty sheet: crossed by the line a draughtsman puts through unused paper. */
export function EmptyState({ title, children, act }: EmptyStateProps) {
  return (
    <div className={styles.empty}>
      <svg className={styles.cross} preserveAspectRatio="none" viewBox="0 0 100 100" aria-hidden="true">
        <path d="M0 100L100 0" vectorEffect="non-scaling-stroke" />
      </svg>
      <div className={styles.words}>
        <h2>{title}</h2>
        <p>{children}</p>
        {act}
      </div>
    </div>
  );
}

'use client';

import { useEffect, useState } from 'react';
import styles from './skeleton.module.css';

/** Under this nobody notices the wait, and a flash of grey lines would be noise. */
const SHOW_AFTER_MS = 300;

export type SkeletonProps = {
  /** Lines to hold the place of. */
  readonly lines: number;
  /** What is being fetched: "Fetching the jobs". */
  readonly what: string;
};

/** Holds the place of rows that are on their way, so that nothing jumps when they come. */
export function Skeleton({ lines, what }: SkeletonProps) {
  const [isShown, setIsShown] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setIsShown(true), SHOW_AFTER_MS);
    return () => clearTimeout(timer);
  }, []);
  return (
    <div className={styles.skeleton} role="status" data-shown={isShown}>
      <span className="unseen">{isShown ? `${what}…` : ''}</span>
      {Array.from({ length: lines }, (_, line) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the lines are alike and never reordered.
        <span key={line} className={styles.line} style={{ inlineSize: `${92 - ((line * 17) % 41)}%` }} />
      ))}
    </div>
  );
}

import type { ReactNode } from 'react';
import { classNames } from '../controls/class-names.ts';
import styles from './verdict.module.css';

export type VerdictTone = 'pass' | 'check' | 'fail' | 'note';

const MARKS: Readonly<Record<VerdictTone, { readonly path: string; readonly name: string }>> = {
  pass: { path: 'M2 8.5l4 4 8-10', name: 'Passed' },
  check: { path: 'M8 2v8M8 12.5v2', name: 'Check this' },
  fail: { path: 'M3 3l10 10M13 3L3 13', name: 'Failed' },
  note: { path: 'M8 7v7M8 2v2.5', name: 'Note' },
};

export type VerdictProps = {
  readonly tone: VerdictTone;
  /** The verdict in plain words: "Goes in, comes out". */
  readonly words: string;
  /** Then the number, then how sure we are. */
  readonly children?: ReactNode;
};

export function Verdict({ tone, words, children }: VerdictProps) {
  const mark = MARKS[tone];
  return (
    <div className={classNames(styles.verdict, styles[tone])}>
      <svg className={styles.mark} viewBox="0 0 16 16" role="img" aria-label={mark.name}>
        <path d={mark.path} />
      </svg>
      <p className={styles.words}>{words}</p>
      {children ? <div className={styles.body}>{children}</div> : null}
    </div>
  );
}

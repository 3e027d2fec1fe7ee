'use client';

import { classNames } from '../controls/class-names.ts';
import styles from './save-state.module.css';

export type SaveStatus =
  | { readonly kind: 'idle' }
  | { readonly kind: 'saving' }
  /** `at` is the wall time shown: "14:02". */
  | { readonly kind: 'saved'; readonly at: string }
  | { readonly kind: 'waiting'; readonly unsent: number }
  /** The server took exception to a field; the message also stands there. */
  | { readonly kind: 'refused'; readonly why: string }
  | { readonly kind: 'conflict' };

/** The words for each state; the same in the header of a sheet and in a test. */
export function saveWords(status: SaveStatus): string {
  switch (status.kind) {
    case 'idle':
      return '';
    case 'saving':
      return 'Saving…';
    case 'saved':
      return `Saved ${status.at}`;
    case 'waiting':
      return status.unsent > 1
        ? `Not saved, will retry. ${status.unsent} changes kept on this device`
        : 'Not saved, will retry. Kept on this device';
    case 'refused':
      return `Not saved. ${status.why}`;
    case 'conflict':
      return 'Conflict: someone else changed this too';
  }
}

export type SaveStateProps = {
  readonly status: SaveStatus;
  /** Opens the comparison of both versions. */
  readonly onResolve?: () => void;
};

export function SaveState({ status, onResolve }: SaveStateProps) {
  return (
    <p className={classNames(styles.state, styles[status.kind])} role="status" data-screen-only="">
      {saveWords(status)}
      {status.kind === 'conflict' && onResolve ? (
        <button type="button" className={styles.resolve} onClick={onResolve}>
          Compare both
        </button>
      ) : null}
    </p>
  );
}

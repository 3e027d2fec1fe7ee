'use client';

import { ProgressBar } from 'react-aria-components/ProgressBar';
import { Button } from '../controls/button.tsx';
import styles from './progress.module.css';

export type ProgressProps = {
  /** What is being done: "Trying 41 ways out through the hatch". */
  readonly what: string;
  /** Share done, 0 to 1; null while it can't be known. */
  readonly share: number | null;
  /** Best result so far, time so far. */
  readonly soFar?: string;
  /** Stops the work and keeps what it has. */
  readonly onCancel?: () => void;
};

/** For work over one second: what is being done, how far, and a Cancel that works. */
export function Progress({ what, share, soFar, onCancel }: ProgressProps) {
  return (
    <div className={styles.progress}>
      <ProgressBar
        aria-label={what}
        value={share === null ? undefined : share * 100}
        isIndeterminate={share === null}
      >
        {({ percentage }) => (
          <>
            <div className={styles.words}>
              <span>{what}</span>
              <span className="figures">{share === null ? '' : `${Math.round(percentage ?? 0)} %`}</span>
            </div>
            <div className={styles.track}>
              <div
                className={share === null ? styles.unknown : styles.done}
                style={{ inlineSize: `${percentage ?? 100}%` }}
              />
            </div>
          </>
        )}
      </ProgressBar>
      <div className={styles.foot}>
        <span>{soFar}</span>
        {onCancel ? (
          <Button look="quiet" onPress={onCancel}>
            Cancel
          </Button>
        ) : null}
      </div>
    </div>
  );
}

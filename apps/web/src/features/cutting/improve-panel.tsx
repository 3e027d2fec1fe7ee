'use client';

import { Button } from '../../shared/controls/button.tsx';
import { Progress } from '../../shared/marks/progress.tsx';
import styles from './cutting-screen.module.css';
import type { CuttingJobSheet } from './cutting-types.ts';
import { useImprove } from './use-improve.ts';

/** Looks for a better layout for up to five seconds; Cancel keeps the best so far. */
export function ImprovePanel({ sheet }: { readonly sheet: CuttingJobSheet }) {
  const { running, outcome, start, stop } = useImprove(sheet);
  if (!sheet.mayEdit) return null;
  return (
    <div className={styles.improve} data-screen-only="">
      {running === null ? (
        <div className={styles.acts}>
          <Button onPress={start} isDisabled={sheet.outcome.state !== 'ready' || sheet.isStale}>
            Look for a better layout
          </Button>
          {sheet.input.searches.length > 0 ? (
            <Button look="quiet" onPress={() => sheet.changeNow({ searches: [] })}>
              Back to the first layout
            </Button>
          ) : null}
          <span role="status" className={styles.quiet}>
            {outcome ?? ''}
          </span>
        </div>
      ) : (
        <Progress
          what="Looking for a better layout"
          share={running.share}
          soFar={running.soFar}
          onCancel={stop}
        />
      )}
    </div>
  );
}

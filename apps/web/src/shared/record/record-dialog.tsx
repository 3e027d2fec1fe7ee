'use client';

import { Verdict } from '../marks/verdict.tsx';
import { ConflictDialog } from '../overlays/conflict-dialog.tsx';
import { Dialog } from '../overlays/dialog.tsx';
import { pathWords, plainWords } from './flat-conflict.ts';
import styles from './record-page.module.css';
import type { RecordPageProps } from './record-page.tsx';

export type RecordDialogProps = Pick<RecordPageProps, 'title' | 'form' | 'acts' | 'children' | 'labels'> & {
  readonly onClose: () => void;
};

/** A record small enough for a dialog, with the same rules as one on a page. */
export function RecordDialog({ title, form, acts, children, labels, onClose }: RecordDialogProps) {
  const { conflict, problem } = form;
  return (
    <>
      <Dialog title={title} isOpen onClose={onClose} isDismissable={false} acts={acts}>
        <form
          className={styles.form}
          noValidate
          onSubmit={(event) => {
            event.preventDefault();
            void form.save();
          }}
        >
          <div role="alert" className={styles.alert}>
            {problem === null ? null : <Verdict tone="fail" words={problem.message} />}
          </div>
          {children}
        </form>
      </Dialog>
      {conflict === null ? null : (
        <ConflictDialog
          isOpen
          otherPerson={conflict.savedBy}
          fields={conflict.differences.map(({ path, yours, theirs }) => ({
            field: path,
            label: labels[path] ?? pathWords(path),
            mine: plainWords(yours),
            theirs: plainWords(theirs),
          }))}
          onClose={form.closeConflict}
          onResolve={form.resolve}
        />
      )}
    </>
  );
}

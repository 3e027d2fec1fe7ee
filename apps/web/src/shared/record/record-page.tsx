'use client';

import { type ReactNode, useSyncExternalStore } from 'react';
import { Button } from '../controls/button.tsx';
import type { ShownError } from '../data/shop-error.ts';
import { Verdict } from '../marks/verdict.tsx';
import { ConflictDialog, type Keep } from '../overlays/conflict-dialog.tsx';
import { SheetFrame } from '../sheet/sheet-frame.tsx';
import type { TitleCell } from '../sheet/title-block.tsx';
import { Page } from '../shell/page.tsx';
import { PageHeader } from '../shell/page-header.tsx';
import { pathWords, plainWords } from './flat-conflict.ts';
import styles from './record-page.module.css';
import type { RecordConflict } from './use-record-form.ts';

export type RecordPageProps = {
  readonly kicker: ReactNode;
  readonly title: string;
  readonly verb: string;
  /** What the form answers; the page needs nothing of its fields. */
  readonly form: {
    readonly save: () => Promise<void>;
    readonly isSaving: boolean;
    readonly problem: ShownError | null;
    readonly conflict: RecordConflict | null;
    readonly closeConflict: () => void;
    readonly resolve: (choice: Readonly<Record<string, Keep>>) => void;
  };
  readonly mayEdit: boolean;
  /** Archive or restore, beside the button that saves. */
  readonly acts?: ReactNode;
  readonly isArchived?: boolean;
  readonly titleBlock: readonly TitleCell[];
  readonly notes?: ReactNode;
  readonly viewCaption?: string;
  /** Between header and sheet: the other pages of the same thing. */
  readonly above?: ReactNode;
  readonly children: ReactNode;
  /** What fields are called in the comparison, by their path. */
  readonly labels: Readonly<Record<string, string>>;
  readonly showValue?: (path: string, value: unknown) => string | null;
};

/** One record on a sheet of its own: its fields, what hangs on it, a title block, one button that saves. */
export function RecordPage(props: RecordPageProps) {
  const { kicker, title, verb, form, mayEdit, acts, isArchived, titleBlock, notes, viewCaption, children } =
    props;
  // Before the page is alive the browser would send the form itself: what is typed would land in the address.
  const isLive = useSyncExternalStore(
    neverChanges,
    () => true,
    () => false,
  );
  const { conflict, problem } = form;
  const labelOf = (path: string) => props.labels[path] ?? pathWords(path);
  const show = (path: string, value: unknown) => props.showValue?.(path, value) ?? plainWords(value);
  return (
    <Page>
      <form
        className={styles.form}
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void form.save();
        }}
      >
        <PageHeader
          kicker={kicker}
          title={title}
          acts={
            mayEdit ? (
              <>
                {acts}
                <Button look="primary" type={isLive ? 'submit' : 'button'} isPending={form.isSaving}>
                  {verb}
                </Button>
              </>
            ) : null
          }
        />
        {props.above}
        <div role="alert" className={styles.alert}>
          {problem === null ? null : (
            <Verdict tone="fail" words={problem.message}>
              {problem.referenceId === null ? null : <p>Reference {problem.referenceId}</p>}
            </Verdict>
          )}
        </div>
        {isArchived === true ? (
          <Verdict
            tone="note"
            words="In the archive: kept for the jobs that name it, left out of the lists."
          />
        ) : null}
        <SheetFrame titleBlock={titleBlock} notes={notes} viewCaption={viewCaption}>
          <div className={styles.fields}>{children}</div>
        </SheetFrame>
      </form>
      {conflict === null ? null : (
        <ConflictDialog
          isOpen
          otherPerson={conflict.savedBy}
          fields={conflict.differences.map(({ path, yours, theirs }) => ({
            field: path,
            label: labelOf(path),
            mine: show(path, yours),
            theirs: show(path, theirs),
          }))}
          onClose={form.closeConflict}
          onResolve={form.resolve}
        />
      )}
    </Page>
  );
}

const neverChanges = () => () => undefined;

/** Fields that belong together, under their caption. */
export function FieldSet({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <fieldset className={styles.set}>
      <legend className="caption">{title}</legend>
      {children}
    </fieldset>
  );
}

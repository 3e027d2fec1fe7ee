'use client';

import { SHEETS, type SheetKind } from '@gusset/contracts/sheet';
import { useQuery } from '@tanstack/react-query';
import { type ReactNode, useState } from 'react';
import { Button } from '../controls/button.tsx';
import { useTRPC } from '../data/api-client.ts';
import { SaveState } from '../marks/save-state.tsx';
import { Verdict } from '../marks/verdict.tsx';
import { ConflictDialog } from '../overlays/conflict-dialog.tsx';
import { useMessages } from '../overlays/messages.tsx';
import { paths } from '../paths.ts';
import { ChangeList } from '../sheet/change-list.tsx';
import { SheetIndex } from '../sheet/sheet-index.tsx';
import { jobTitleCells, type TitleCell } from '../sheet/title-block.tsx';
import { useDisplay } from '../shell/display-provider.tsx';
import { Page } from '../shell/page.tsx';
import { PageHeader } from '../shell/page-header.tsx';
import { usePerson } from '../shell/person.tsx';
import { conflictWords, type FieldWords, type OpenedJob } from './job-sheet.ts';
import type { JobSheet } from './use-job-sheet.ts';

export type JobSheetPageProps<Input extends object, Facts, Upstream, Result> = {
  readonly opened: OpenedJob;
  readonly sheet: JobSheet<Input, Facts, Upstream, Result>;
  /** What the fields are called, for the comparison after a conflict. */
  readonly fieldWords?: FieldWords;
  /** Buttons beside "Issue this sheet": print, export. */
  readonly acts?: ReactNode;
  readonly children: ReactNode;
};

/** The page of one sheet: index at the left, title with its state, acts, changes upstream, the sheet itself. */
export function JobSheetPage<Input extends object, Facts, Upstream, Result>({
  opened,
  sheet,
  fieldWords = {},
  acts,
  children,
}: JobSheetPageProps<Input, Facts, Upstream, Result>) {
  const { number, title } = SHEETS[sheet.kind];
  const { job } = opened;
  return (
    <Page index={<JobIndex opened={opened} current={sheet.kind} />}>
      <PageHeader
        kicker={`Job ${job.number} · sheet ${number} · ${standingWords(sheet)}`}
        title={title}
        state={<SheetSaveState sheet={sheet} fieldWords={fieldWords} />}
        acts={
          <>
            {acts}
            <IssueButtons sheet={sheet} />
          </>
        }
      />
      {sheet.actError === null ? null : (
        <Verdict tone="fail" words={sheet.actError.message}>
          {sheet.actError.referenceId === null ? null : `Reference ${sheet.actError.referenceId}`}
        </Verdict>
      )}
      {sheet.fault === null ? null : (
        <Verdict tone="fail" words="The figures could not be worked out">
          {sheet.fault}
        </Verdict>
      )}
      {sheet.data.changes.length > 0 ? (
        <Verdict tone="check" words="Something this sheet reads has changed since it was issued">
          <ChangeList changes={sheet.data.changes} />
          <p>Look it over and issue the sheet again.</p>
        </Verdict>
      ) : null}
      {/* biome-ignore lint/a11y/noStaticElementInteractions: leaving any field sends what was typed; nothing to press. */}
      <div onBlur={sheet.autosave.onBlur}>{children}</div>
    </Page>
  );
}

function standingWords(sheet: {
  readonly data: { readonly issue: { readonly revision: string } | null };
  readonly isDraft: boolean;
}) {
  const { issue } = sheet.data;
  if (issue === null) return 'draft';
  return sheet.isDraft ? `draft after rev ${issue.revision}` : `issued, rev ${issue.revision}`;
}

type IssueableSheet = {
  readonly mayEdit: boolean;
  readonly isBusy: boolean;
  readonly isDraft: boolean;
  readonly outcome: { readonly state: string };
  readonly data: {
    readonly changes: readonly unknown[];
    readonly issue: {
      readonly revision: string;
      readonly checkedByName: string | null;
      readonly issuedByName: string;
    } | null;
  };
  readonly issue: () => Promise<void>;
  readonly check: () => Promise<void>;
};

function IssueButtons({ sheet }: { readonly sheet: IssueableSheet }) {
  const person = usePerson();
  const say = useMessages();
  const { issue } = sheet.data;
  if (!sheet.mayEdit) return null;
  const canCheck =
    issue !== null && !sheet.isDraft && issue.checkedByName === null && issue.issuedByName !== person.name;
  const hasNews = sheet.isDraft || sheet.data.changes.length > 0;
  return (
    <>
      {canCheck ? (
        <Button
          isPending={sheet.isBusy}
          onPress={() => void sheet.check().then(() => say('Checked: your name stands in the title block.'))}
        >
          Mark as checked
        </Button>
      ) : null}
      {hasNews ? (
        <Button
          look="primary"
          isPending={sheet.isBusy}
          isDisabled={sheet.outcome.state !== 'ready'}
          onPress={() => void sheet.issue()}
        >
          {issue === null ? 'Issue this sheet' : 'Issue again'}
        </Button>
      ) : null}
    </>
  );
}

function SheetSaveState<Input extends object, Facts, Upstream, Result>({
  sheet,
  fieldWords,
}: {
  readonly sheet: JobSheet<Input, Facts, Upstream, Result>;
  readonly fieldWords: FieldWords;
}) {
  const [isOpen, setIsOpen] = useState(true);
  const { autosave } = sheet;
  const { conflict } = autosave;
  return (
    <>
      <SaveState status={autosave.status} onResolve={() => setIsOpen(true)} />
      {conflict === null ? null : (
        <ConflictDialog
          otherPerson={conflict.savedBy ?? 'Someone else'}
          fields={conflictWords(conflict, fieldWords)}
          isOpen={isOpen}
          onClose={() => setIsOpen(false)}
          onResolve={(choice) => {
            const theirs = conflict.differences.filter(({ field }) => choice[field] === 'theirs');
            const kept = Object.fromEntries(theirs.map(({ field, theirs: value }) => [field, value]));
            autosave.resolve({ ...autosave.value, ...kept });
          }}
        />
      )}
    </>
  );
}

/** The index of the job's sheets, fresh after every save and issue. */
export function JobIndex({ opened, current }: { readonly opened: OpenedJob; readonly current: SheetKind }) {
  const trpc = useTRPC();
  const { job } = opened;
  const { data = opened } = useQuery(
    trpc.job.byNumber.queryOptions({ number: job.number }, { initialData: opened, staleTime: 5_000 }),
  );
  return (
    <SheetIndex
      title={`Job ${job.number}`}
      subtitle={[job.vehicle?.name ?? job.title, job.customer.name].join(' · ')}
      current={current}
      sheets={data.sheets.map((entry) => ({ ...entry, href: paths.job(job.number, entry.kind) }))}
    />
  );
}

/** The cells that close this sheet, on screen and on paper. */
export function useTitleCells<Input extends object, Facts, Upstream, Result>(
  { job }: OpenedJob,
  sheet: JobSheet<Input, Facts, Upstream, Result>,
  scale: string | null = null,
): readonly TitleCell[] {
  const { shop, lengthUnit } = useDisplay();
  const person = usePerson();
  const { issue } = sheet.data;
  const places = Object.values(SHEETS);
  return jobTitleCells({
    shopName: shop.name,
    vehicle: job.vehicle?.name ?? 'none yet',
    customer: job.customer.name,
    jobNumber: String(job.number),
    revision: issue !== null && !sheet.isDraft ? issue.revision : null,
    drawnBy: issue?.issuedByName ?? person.name,
    checkedBy: issue?.checkedByName ?? null,
    units: lengthUnit,
    scale,
    sheet: { number: SHEETS[sheet.kind].number, of: places.at(-1)?.number ?? '' },
  });
}

'use client';

import type { PartsFacts, PartsInput, PartsResult } from '@gusset/contracts/parts';
import type { PartsUpstream } from '@gusset/sheets';
import { Button } from '../../shared/controls/button.tsx';
import { useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import type { OpenedJob } from '../../shared/job/job-sheet.ts';
import { JobSheetPage, useTitleCells } from '../../shared/job/job-sheet-page.tsx';
import { useJobSheet } from '../../shared/job/use-job-sheet.ts';
import { SheetFrame } from '../../shared/sheet/sheet-frame.tsx';
import { AddPart } from './add-part.tsx';
import { PartsLines } from './parts-lines.tsx';
import { PartsNotes } from './parts-notes.tsx';
import styles from './parts-screen.module.css';

const FIELD_WORDS: Readonly<Record<keyof PartsInput, string>> = {
  handLines: 'Lines by hand',
  overrides: 'Changes to worked-out lines',
  settledBriefKeys: 'Parts of the brief turned down',
};

export type PartsScreenProps = {
  readonly opened: OpenedJob;
  readonly start: ApiOutputs['sheet']['parts']['read'];
};

const readPartsInputDraft = async (kept: unknown): Promise<PartsInput | null> => {
  const { partsInputSchema } = await import('@gusset/contracts/parts');
  return partsInputSchema.safeParse(kept).data ?? null;
};

/** Sheet 07: what the job needs and where each thing comes from; when it is expected, and what has come. */
export function PartsScreen({ opened, start }: PartsScreenProps) {
  const { job } = opened;
  const sheet = useJobSheet<PartsInput, PartsFacts, PartsUpstream, PartsResult>({
    kind: 'parts',
    jobId: job.id,
    jobNumber: job.number,
    start,
    procedures: useTRPCClient().sheet.parts,
    readDraft: readPartsInputDraft,
  });
  const lines = sheet.result?.lines ?? [];
  return (
    <JobSheetPage
      opened={opened}
      sheet={sheet}
      fieldWords={FIELD_WORDS}
      acts={<Button onPress={() => window.print()}>Print</Button>}
    >
      <SheetFrame
        viewCaption={`${lines.length} ${lines.length === 1 ? 'line' : 'lines'}`}
        titleBlock={useTitleCells(opened, sheet)}
        isStale={sheet.isStale}
        notesFirst
        notes={<PartsNotes sheet={sheet} />}
      >
        <div className={styles.view}>
          <PartsLines sheet={sheet} jobId={job.id} lines={lines} />
          {sheet.mayEdit ? (
            <AddPart onAdd={(line) => sheet.changeNow({ handLines: [...sheet.input.handLines, line] })} />
          ) : null}
        </div>
      </SheetFrame>
    </JobSheetPage>
  );
}

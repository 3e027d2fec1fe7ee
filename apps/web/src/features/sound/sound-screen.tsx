'use client';

import {
  type SoundFacts,
  type SoundInput,
  type SoundResult,
  soundInputSchema,
} from '@gusset/contracts/sound';
import type { SoundUpstream } from '@gusset/sheets';
import { Button } from '../../shared/controls/button.tsx';
import { useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import type { OpenedJob } from '../../shared/job/job-sheet.ts';
import { JobSheetPage, useTitleCells } from '../../shared/job/job-sheet-page.tsx';
import { useJobSheet } from '../../shared/job/use-job-sheet.ts';
import { SheetFrame } from '../../shared/sheet/sheet-frame.tsx';
import { SoundCurves } from './sound-curves.tsx';
import { SoundNotes } from './sound-notes.tsx';
import styles from './sound-screen.module.css';
import { SoundSettings } from './sound-settings.tsx';

const FIELD_WORDS: Readonly<Record<keyof SoundInput, string>> = {
  driverId: 'Driver',
  count: 'How many',
  seriesPerString: 'In series',
  coilWiring: 'Coils',
  drive: 'Power',
  targetNet: 'Net volume',
  fill: 'Lining',
  cabin: 'Cabin',
  notes: 'Notes',
};

export type SoundScreenProps = {
  readonly opened: OpenedJob;
  readonly start: ApiOutputs['sheet']['sound']['read'];
};

/** Sheet 03: which driver in how much air, and what that does in this car; redrawn while the volume is dragged. */
export function SoundScreen({ opened, start }: SoundScreenProps) {
  const { job } = opened;
  const sheet = useJobSheet<SoundInput, SoundFacts, SoundUpstream, SoundResult>({
    kind: 'sound',
    jobId: job.id,
    jobNumber: job.number,
    start,
    procedures: useTRPCClient().sheet.sound,
    readDraft: (kept) => soundInputSchema.safeParse(kept).data ?? null,
  });
  const { result } = sheet;
  const issued = sheet.isDraft && sheet.data.issue !== null ? sheet.data.issue.result : null;
  return (
    <JobSheetPage
      opened={opened}
      sheet={sheet}
      fieldWords={FIELD_WORDS}
      acts={<Button onPress={() => window.print()}>Print</Button>}
    >
      <SheetFrame
        viewCaption={result === null ? 'Sound' : `${result.count} × ${result.driverName} · closed box`}
        titleBlock={useTitleCells(opened, sheet)}
        isStale={sheet.isStale}
        notes={<SoundNotes outcome={sheet.outcome} result={result} />}
      >
        <div className={styles.view}>
          <SoundSettings sheet={sheet} words={FIELD_WORDS} />
          {result === null ? (
            <p className={styles.empty}>
              Choose a driver, the power and the net volume: the curves draw themselves here.
            </p>
          ) : (
            <SoundCurves result={result} compared={issued} />
          )}
        </div>
      </SheetFrame>
    </JobSheetPage>
  );
}

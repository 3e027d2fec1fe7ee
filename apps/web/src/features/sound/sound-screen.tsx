'use client';

import { ENCLOSURE_WORDS } from '@gusset/contracts/sound';
import { useDeferredValue } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { LinkButton } from '../../shared/controls/link-button.tsx';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import type { OpenedJob } from '../../shared/job/job-sheet.ts';
import { JobSheetPage, useTitleCells } from '../../shared/job/job-sheet-page.tsx';
import { paths } from '../../shared/paths.ts';
import { SheetFrame } from '../../shared/sheet/sheet-frame.tsx';
import { useCurveView } from './curve-view.ts';
import { DesignsTable } from './designs-table.tsx';
import { DriveLevels } from './drive-levels.tsx';
import { LevelCurve } from './level-curve.tsx';
import { SettingsTabs } from './settings/settings-tabs.tsx';
import { SoundCurves } from './sound-curves.tsx';
import { FIELD_WORDS } from './sound-field-words.ts';
import { SoundNotes } from './sound-notes.tsx';
import styles from './sound-screen.module.css';
import { SoundVerdict } from './sound-verdict.tsx';
import { StepResponse } from './step-response.tsx';
import { useSoundSheet } from './use-sound-sheet.ts';

export type SoundScreenProps = {
  readonly opened: OpenedJob;
  readonly start: ApiOutputs['sheet']['sound']['read'];
};

/** Sheet 03: which drivers in which box, and what that does in this car; redrawn while it is dragged. */
export function SoundScreen({ opened, start }: SoundScreenProps) {
  const sheet = useSoundSheet(opened, start);
  const { result } = sheet;
  const issued = sheet.isDraft && sheet.data.issue !== null ? sheet.data.issue.result : null;
  const view = useCurveView(sheet, issued);
  // The level follows a drag at once; the many curves under it may come a moment later.
  const rested = useDeferredValue(result);
  const caption =
    result === null
      ? 'Sound'
      : `${result.count} × ${result.driverName} · ${ENCLOSURE_WORDS[result.enclosure].toLowerCase()}`;
  return (
    <JobSheetPage
      opened={opened}
      sheet={sheet}
      fieldWords={FIELD_WORDS}
      acts={
        <>
          <LinkButton href={paths.builtBox(opened.job.number)}>Measure the built box</LinkButton>
          {sheet.data.issue !== null || sheet.data.outcome.state === 'ready' ? (
            <LinkButton href={paths.soundSheetPaper(opened.job.id)} isDownload>
              One page, PDF
            </LinkButton>
          ) : null}
          <Button onPress={() => window.print()}>Print</Button>
        </>
      }
    >
      <SheetFrame
        viewCaption={caption}
        titleBlock={useTitleCells(opened, sheet)}
        isStale={sheet.isStale}
        notes={<SoundNotes result={result} />}
      >
        <div className={styles.view}>
          <SoundVerdict outcome={sheet.outcome} />
          {/* The same place for the settings with and without a curve: what is being typed keeps its field. */}
          <div className={styles.live}>
            {result === null ? null : <LevelCurve result={result} view={view} />}
            <SettingsTabs sheet={sheet} />
          </div>
          {result === null || rested === null ? (
            <p className={styles.empty}>
              Choose a driver, a box and the power: the curves draw themselves here.
            </p>
          ) : (
            <>
              <SoundCurves result={rested} view={view} />
              <StepResponse input={sheet.input} facts={sheet.data.facts} />
              <DriveLevels input={sheet.input} facts={sheet.data.facts} />
              <DesignsTable sheet={sheet} result={result} view={view} />
            </>
          )}
        </div>
      </SheetFrame>
    </JobSheetPage>
  );
}

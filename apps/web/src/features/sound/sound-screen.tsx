'use client';

import { type DesignLetter, ENCLOSURE_WORDS } from '@gusset/contracts/sound';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import type { OpenedJob } from '../../shared/job/job-sheet.ts';
import { JobSheetPage, useTitleCells } from '../../shared/job/job-sheet-page.tsx';
import { SheetFrame } from '../../shared/sheet/sheet-frame.tsx';
import { DesignsTable } from './designs-table.tsx';
import { SettingsTabs } from './settings/settings-tabs.tsx';
import { SoundCurves } from './sound-curves.tsx';
import { FIELD_WORDS } from './sound-field-words.ts';
import { SoundNotes } from './sound-notes.tsx';
import styles from './sound-screen.module.css';
import { SoundVerdict } from './sound-verdict.tsx';
import { useSoundSheet } from './use-sound-sheet.ts';

export type SoundScreenProps = {
  readonly opened: OpenedJob;
  readonly start: ApiOutputs['sheet']['sound']['read'];
};

/** Sheet 03: which drivers in which box, and what that does in this car; redrawn while it is dragged. */
export function SoundScreen({ opened, start }: SoundScreenProps) {
  const sheet = useSoundSheet(opened, start);
  const { result } = sheet;
  const [hidden, setHidden] = useState<readonly DesignLetter[]>([]);
  const letters = (result?.variants ?? [])
    .map(({ letter }) => letter)
    .filter((letter) => !hidden.includes(letter));
  const issued = sheet.isDraft && sheet.data.issue !== null ? sheet.data.issue.result : null;
  const caption =
    result === null
      ? 'Sound'
      : `${result.count} × ${result.driverName} · ${ENCLOSURE_WORDS[result.enclosure].toLowerCase()}`;
  return (
    <JobSheetPage
      opened={opened}
      sheet={sheet}
      fieldWords={FIELD_WORDS}
      acts={<Button onPress={() => window.print()}>Print</Button>}
    >
      <SheetFrame
        viewCaption={caption}
        titleBlock={useTitleCells(opened, sheet)}
        isStale={sheet.isStale}
        notes={<SoundNotes result={result} />}
      >
        <div className={styles.view}>
          <SoundVerdict outcome={sheet.outcome} />
          <SettingsTabs sheet={sheet} />
          {result === null ? (
            <p className={styles.empty}>
              Choose a driver, a box and the power: the curves draw themselves here.
            </p>
          ) : (
            <>
              <SoundCurves result={result} issued={issued} letters={letters} />
              <DesignsTable
                sheet={sheet}
                result={result}
                letters={letters}
                onLetters={(shown) =>
                  setHidden(
                    result.variants.map(({ letter }) => letter).filter((letter) => !shown.includes(letter)),
                  )
                }
              />
            </>
          )}
        </div>
      </SheetFrame>
    </JobSheetPage>
  );
}

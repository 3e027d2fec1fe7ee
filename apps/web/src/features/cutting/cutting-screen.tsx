'use client';

import type { CuttingFacts, CuttingInput, CuttingResult } from '@gusset/contracts/cutting-sheet';
import type { CuttingUpstream } from '@gusset/sheets';
import { Button } from '../../shared/controls/button.tsx';
import { LinkButton } from '../../shared/controls/link-button.tsx';
import { useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { fieldError } from '../../shared/data/shop-error.ts';
import type { OpenedJob } from '../../shared/job/job-sheet.ts';
import { JobSheetPage, useTitleCells } from '../../shared/job/job-sheet-page.tsx';
import { useLengthRule } from '../../shared/job/length-rule.ts';
import { useJobSheet } from '../../shared/job/use-job-sheet.ts';
import { paths } from '../../shared/paths.ts';
import { SheetFrame } from '../../shared/sheet/sheet-frame.tsx';
import { AssemblyPage } from './assembly-page.tsx';
import { CutList } from './cut-list.tsx';
import { CutReport } from './cut-report.tsx';
import { CuttingNotes } from './cutting-notes.tsx';
import styles from './cutting-screen.module.css';
import { CuttingSettings } from './cutting-settings.tsx';
import { ImprovePanel } from './improve-panel.tsx';
import { MachinePages } from './machine-pages.tsx';
import { SheetMaps } from './sheet-maps.tsx';

const FIELD_WORDS: Readonly<Record<keyof CuttingInput, string>> = {
  kerf: 'Kerf',
  trim: 'Trim',
  oversize: 'Cut larger to trim flush',
  mayTurn: 'Parts may be turned',
  aim: 'What counts first',
  sheetChoices: 'Sheets to cut from',
  offcuts: 'Offcuts in the rack',
  handParts: 'Parts by hand',
  spares: 'Spare parts',
  searches: 'Layout',
  machines: 'Router and straightedge',
  gluing: 'Glue',
  testFit: 'Test fit',
  notes: 'Notes',
};

export type CuttingScreenProps = {
  readonly opened: OpenedJob;
  readonly start: ApiOutputs['sheet']['cutting']['read'];
};

const readCuttingInputDraft = async (kept: unknown): Promise<CuttingInput | null> => {
  const { cuttingInputSchema } = await import('@gusset/contracts/cutting-sheet');
  return cuttingInputSchema.safeParse(kept).data ?? null;
};

/** Sheet 05: every sheet as it is to be cut, the list for the saw, and what is left for the rack. */
export function CuttingScreen({ opened, start }: CuttingScreenProps) {
  const { job } = opened;
  const sheet = useJobSheet<CuttingInput, CuttingFacts, CuttingUpstream, CuttingResult>({
    kind: 'cutting',
    jobId: job.id,
    jobNumber: job.number,
    start,
    procedures: useTRPCClient().sheet.cutting,
    readDraft: readCuttingInputDraft,
  });
  const rule = useLengthRule();
  const { result, outcome } = sheet;
  const errorOf = (field: string): string | null => {
    const refusal =
      outcome.state === 'refused' ? outcome.refusals.find((one) => one.field === field) : undefined;
    if (refusal !== undefined) return `${refusal.why}. Accepted: ${refusal.allowed}.`;
    return fieldError(sheet.autosave.error, `input.${field}`);
  };
  return (
    <JobSheetPage
      opened={opened}
      sheet={sheet}
      fieldWords={FIELD_WORDS}
      acts={
        <>
          {sheet.data.issue !== null || sheet.data.outcome.state === 'ready' ? (
            <>
              <LinkButton href={paths.cutSheetPaper(job.id)} isDownload>
                Cut sheet, PDF
              </LinkButton>
              <LinkButton href={paths.cutFiles(job.id)} isDownload>
                DXF, SVG and list, ZIP
              </LinkButton>
            </>
          ) : null}
          <Button onPress={() => window.print()}>Print</Button>
        </>
      }
    >
      <SheetFrame
        viewCaption={`Sheets as they are cut · ${rule.unit}${
          result !== null && outcome.state !== 'ready' ? ' · as it could last be laid out' : ''
        }`}
        titleBlock={useTitleCells(opened, sheet)}
        isStale={sheet.isStale}
        notes={<CuttingNotes sheet={sheet} result={result} rule={rule} />}
      >
        <div className={styles.view}>
          {result === null ? (
            <p className={styles.empty}>
              Draw the box on sheet 04: its panels are listed and laid out here, with the sheets they need.
            </p>
          ) : (
            <>
              <SheetMaps result={result} rule={rule} />
              <ImprovePanel sheet={sheet} />
              <CutList result={result} rule={rule} />
              <CutReport sheet={sheet} jobId={job.id} rule={rule} />
              <MachinePages sheet={sheet} result={result} rule={rule} />
              <AssemblyPage sheet={sheet} rule={rule} />
            </>
          )}
          <CuttingSettings sheet={sheet} errorOf={errorOf} rule={rule} />
        </div>
      </SheetFrame>
    </JobSheetPage>
  );
}

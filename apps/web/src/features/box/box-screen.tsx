'use client';

import type { BoxFacts, BoxInput, BoxSheetResult } from '@gusset/contracts/box';
import type { BoxUpstream } from '@gusset/sheets';
import type { ReactNode } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { fieldError } from '../../shared/data/shop-error.ts';
import type { OpenedJob } from '../../shared/job/job-sheet.ts';
import { JobSheetPage, useTitleCells } from '../../shared/job/job-sheet-page.tsx';
import { type LengthRule, useLengthRule } from '../../shared/job/length-rule.ts';
import { useJobSheet } from '../../shared/job/use-job-sheet.ts';
import { SheetFrame } from '../../shared/sheet/sheet-frame.tsx';
import { BoxDetails } from './box-details.tsx';
import { BoxDrawings } from './box-drawings.tsx';
import { BoxNotes, VerdictStrip } from './box-notes.tsx';
import styles from './box-screen.module.css';
import type { BoxJobSheet } from './box-types.ts';
import { OutsideSettings } from './outside-settings.tsx';

const FIELD_WORDS: Readonly<Record<keyof BoxInput, string>> = {
  shape: 'Shape',
  outside: 'Outside sizes',
  slopedFace: 'Which face leans',
  carcassId: 'Board',
  baffleId: 'Baffle board',
  finishes: 'Finish by face',
  finishWrapsOpenings: 'Finish tucked into the openings',
  baffle: 'Baffle',
  drivers: 'How the drivers are fitted',
  joints: 'Joints',
  baffleSetBack: 'Baffle set back',
  roundOver: 'Rounded edges',
  divider: 'Divider',
  bracing: 'Braces',
  cornerBlocks: 'Corner blocks',
  terminalCup: 'Terminal cup',
  lining: 'Lining',
  lowPassHz: 'Low-pass corner',
  place: 'Where it stands',
  notes: 'Notes',
};

export type BoxScreenProps = {
  readonly opened: OpenedJob;
  readonly start: ApiOutputs['sheet']['box']['read'];
  /** How the box goes in and out, under its drawings. */
  readonly wayIn?: (sheet: BoxJobSheet, rule: LengthRule) => ReactNode;
};

const readBoxInputDraft = async (kept: unknown): Promise<BoxInput | null> => {
  const { boxInputSchema } = await import('@gusset/contracts/box');
  return boxInputSchema.safeParse(kept).data ?? null;
};

/** Sheet 04: the box in the car, drawn, changed on the drawing, and everything that follows from it. */
export function BoxScreen({ opened, start, wayIn }: BoxScreenProps) {
  const { job } = opened;
  const sheet = useJobSheet<BoxInput, BoxFacts, BoxUpstream, BoxSheetResult>({
    kind: 'box',
    jobId: job.id,
    jobNumber: job.number,
    start,
    procedures: useTRPCClient().sheet.box,
    readDraft: readBoxInputDraft,
  });
  const rule = useLengthRule();
  const { result, outcome } = sheet;
  const errorOf = (field: string): string | null => {
    const refusal =
      outcome.state === 'refused' ? outcome.refusals.find((one) => one.field === field) : undefined;
    if (refusal !== undefined) return `${refusal.why}. Accepted: ${refusal.allowed}.`;
    return fieldError(sheet.autosave.error, `input.${field}`);
  };
  const settings = <OutsideSettings sheet={sheet} errorOf={errorOf} rule={rule} />;
  return (
    <JobSheetPage
      opened={opened}
      sheet={sheet}
      fieldWords={FIELD_WORDS}
      acts={<Button onPress={() => window.print()}>Print</Button>}
    >
      <SheetFrame
        viewCaption={`Side section on centre line · ${rule.unit}${
          result !== null && outcome.state !== 'ready' ? ' · as it could last be built' : ''
        }`}
        titleBlock={useTitleCells(opened, sheet)}
        isStale={sheet.isStale}
        notes={
          <BoxNotes
            outcome={outcome}
            result={result}
            sound={sheet.data.upstream.sound ?? null}
            drafts={sheet.data.draftUpstream}
            length={rule.words}
            reread={sheet.reread}
          />
        }
      >
        <div className={styles.view}>
          <VerdictStrip outcome={outcome} length={rule.words} />
          {result === null ? (
            <>
              <p className={styles.empty}>
                Choose the board and type the outside sizes, or take the largest box that stands in the
                measured space: the box draws itself here.
              </p>
              {settings}
            </>
          ) : (
            <BoxDrawings sheet={sheet} result={result} rule={rule} errorOf={errorOf}>
              {settings}
            </BoxDrawings>
          )}
          {wayIn?.(sheet, rule)}
          <BoxDetails sheet={sheet} errorOf={errorOf} rule={rule} />
        </div>
      </SheetFrame>
    </JobSheetPage>
  );
}

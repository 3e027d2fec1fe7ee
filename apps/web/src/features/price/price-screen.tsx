'use client';

import type { PriceFacts, PriceInput, PriceResult } from '@gusset/contracts/price';
import { type PriceUpstream, standardJobTasks } from '@gusset/sheets';
import type { ReactNode } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import type { OpenedJob } from '../../shared/job/job-sheet.ts';
import { JobSheetPage, useTitleCells } from '../../shared/job/job-sheet-page.tsx';
import { useJobSheet } from '../../shared/job/use-job-sheet.ts';
import { EmptyState } from '../../shared/marks/empty-state.tsx';
import { SheetFrame } from '../../shared/sheet/sheet-frame.tsx';
import { PriceList } from './price-list.tsx';
import { PriceNotes } from './price-notes.tsx';
import styles from './price-screen.module.css';
import { PriceSettings } from './price-settings.tsx';
import type { PriceJobSheet } from './price-sheet-types.ts';
import { TaskList } from './task-list.tsx';

const FIELD_WORDS: Readonly<Record<keyof PriceInput, string>> = {
  tasks: 'Tasks',
  extraLines: 'Lines by hand',
  priceOverrides: 'Prices of this job',
  discount: 'Discount',
  taxCodeByKind: 'Taxes of this job',
  deposit: 'Deposit',
  validDays: 'Valid for',
  scope: 'What the customer gets',
  exclusions: 'Not included',
  terms: 'Terms',
};

export type PriceScreenProps = {
  readonly opened: OpenedJob;
  readonly start: ApiOutputs['sheet']['price']['read'];
  /** The quotes made from it, under the sheet. */
  readonly children: ReactNode;
};

const readPriceInputDraft = async (kept: unknown): Promise<PriceInput | null> => {
  const { priceInputSchema } = await import('@gusset/contracts/price');
  return priceInputSchema.safeParse(kept).data ?? null;
};

/** Sheet 08: what the job costs the customer and earns the shop, line by line. */
export function PriceScreen({ opened, start, children }: PriceScreenProps) {
  const { job } = opened;
  const sheet = useJobSheet<PriceInput, PriceFacts, PriceUpstream, PriceResult>({
    kind: 'price',
    jobId: job.id,
    jobNumber: job.number,
    start,
    procedures: useTRPCClient().sheet.price,
    readDraft: readPriceInputDraft,
  });
  const { result, input } = sheet;
  return (
    <JobSheetPage
      opened={opened}
      sheet={sheet}
      fieldWords={FIELD_WORDS}
      acts={<Button onPress={() => window.print()}>Print</Button>}
    >
      <div className={styles.screen}>
        <SheetFrame
          viewCaption={`Priced list · ${sheet.data.facts.currency}`}
          titleBlock={useTitleCells(opened, sheet)}
          isStale={sheet.isStale}
          notesFirst
          notes={<PriceNotes sheet={sheet} />}
        >
          {input.tasks === null ? (
            <TakeTasks sheet={sheet} />
          ) : (
            <div className={styles.view}>
              {result === null ? null : <PriceList sheet={sheet} result={result} group="goods" />}
              <TaskList sheet={sheet} tasks={input.tasks} result={result} />
              {result === null ? null : <PriceList sheet={sheet} result={result} group="also" />}
              <PriceSettings sheet={sheet} words={FIELD_WORDS} />
            </div>
          )}
        </SheetFrame>
        {children}
      </div>
    </JobSheetPage>
  );
}

/** Where nothing is priced yet: the usual tasks, with the finish that decides between them. */
function TakeTasks({ sheet }: { readonly sheet: PriceJobSheet }) {
  const take = (finish: 'carpet' | 'coating') => sheet.changeNow({ tasks: standardJobTasks(finish) });
  return (
    <EmptyState
      title="No tasks yet"
      act={
        sheet.mayEdit ? (
          <div className={styles.buttons}>
            <Button look="primary" onPress={() => take('carpet')}>
              Take the tasks for a carpeted box
            </Button>
            <Button onPress={() => take('coating')}>For a coated box</Button>
            <Button look="quiet" onPress={() => sheet.changeNow({ tasks: [] })}>
              Begin with an empty list
            </Button>
          </div>
        ) : null
      }
    >
      A job is priced by its tasks and the parts of sheet 07. Begin with the usual tasks and their hours, then
      change what is different here. The plan takes the same tasks.
    </EmptyState>
  );
}

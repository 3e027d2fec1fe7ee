'use client';

import type { PlanFacts, PlanInput, PlanResult } from '@gusset/contracts/plan';
import type { PlanUpstream } from '@gusset/sheets';
import { useQuery } from '@tanstack/react-query';
import { useEffect, useRef } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { useTRPC, useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import type { OpenedJob } from '../../shared/job/job-sheet.ts';
import { JobSheetPage, useTitleCells } from '../../shared/job/job-sheet-page.tsx';
import { type JobSheet, useJobSheet } from '../../shared/job/use-job-sheet.ts';
import { Progress } from '../../shared/marks/progress.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { SheetFrame } from '../../shared/sheet/sheet-frame.tsx';
import { PlanNotes } from './plan-notes.tsx';
import styles from './plan-screen.module.css';
import { PlanTasks } from './plan-tasks.tsx';
import { WhatIfPanel } from './what-if-panel.tsx';

export type PlanSheet = JobSheet<PlanInput, PlanFacts, PlanUpstream, PlanResult>;
export type JobPlan = ApiOutputs['plan']['ofJob'];

const FIELD_WORDS: Readonly<Record<keyof PlanInput, string>> = {
  pins: 'People, bays and days',
  rank: 'Place in the queue',
};

export type PlanScreenProps = {
  readonly opened: OpenedJob;
  readonly start: ApiOutputs['sheet']['plan']['read'];
};

const readPlanInputDraft = async (kept: unknown): Promise<PlanInput | null> => {
  const { planInputSchema } = await import('@gusset/contracts/plan');
  return planInputSchema.safeParse(kept).data ?? null;
};

/** Sheet 09: the job's tasks in the shop's forward plan, why each begins no earlier, and the promise. */
export function PlanScreen({ opened, start }: PlanScreenProps) {
  const { job } = opened;
  const trpc = useTRPC();
  const sheet = useJobSheet<PlanInput, PlanFacts, PlanUpstream, PlanResult>({
    kind: 'plan',
    jobId: job.id,
    jobNumber: job.number,
    start,
    procedures: useTRPCClient().sheet.plan,
    readDraft: readPlanInputDraft,
  });
  const { savedAt, version, issue } = sheet.data;
  // Read anew after each save and issue: both change what the shop's plan is made from.
  const planned = useQuery({
    ...trpc.plan.ofJob.queryOptions({ jobId: job.id }),
    placeholderData: (before) => before,
    refetchOnMount: 'always',
  });
  const { refetch } = planned;
  useRefetchOn(`${savedAt} ${version} ${issue?.revision ?? ''}`, refetch);
  const view = planned.data ?? null;
  return (
    <JobSheetPage
      opened={opened}
      sheet={sheet}
      fieldWords={FIELD_WORDS}
      acts={<Button onPress={() => window.print()}>Print</Button>}
    >
      <SheetFrame
        viewCaption={
          view?.isDraft ? 'Dates of the draft: the bays follow when it is issued' : 'As the bays work it'
        }
        titleBlock={useTitleCells(opened, sheet)}
        isStale={planned.isFetching && view !== null}
        notesFirst
        notes={<PlanNotes sheet={sheet} view={view} jobId={job.id} onPromised={() => void refetch()} />}
      >
        <div className={styles.view}>
          {planned.error === null ? null : (
            <Verdict tone="fail" words="The plan could not be worked out">
              {shownError(planned.error).message}
            </Verdict>
          )}
          {view === null && planned.isFetching ? (
            <Progress what="Working out who does what when" share={null} />
          ) : null}
          {view === null ? null : <PlanTasks sheet={sheet} view={view} jobId={job.id} />}
          {view === null ? null : <WhatIfPanel view={view} jobId={job.id} />}
        </div>
      </SheetFrame>
    </JobSheetPage>
  );
}

/** Not for the first value: the query asks by itself when the screen opens. */
function useRefetchOn(changing: string, refetch: () => Promise<unknown>) {
  const last = useRef(changing);
  useEffect(() => {
    if (last.current === changing) return;
    last.current = changing;
    void refetch();
  }, [changing, refetch]);
}

'use client';

import {
  keptSoundInput,
  type SoundFacts,
  type SoundInput,
  type SoundResult,
  toSoundInput,
  toSoundResult,
} from '@gusset/contracts/sound';
import type { SoundUpstream } from '@gusset/sheets';
import { useMemo, useState } from 'react';
import { useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import type { OpenedJob } from '../../shared/job/job-sheet.ts';
import { type JobSheet, useJobSheet } from '../../shared/job/use-job-sheet.ts';

export type SoundSheet = JobSheet<SoundInput, SoundFacts, SoundUpstream, SoundResult>;
type SoundData = ApiOutputs['sheet']['sound']['read'];

/** A sheet of any age as today's: drafts and issues of the first program knew closed boxes only. */
function inTodaysShape(data: SoundData): SoundData {
  const { issue } = data;
  return {
    ...data,
    input: toSoundInput(data.input),
    issue:
      issue === null
        ? null
        : { ...issue, input: toSoundInput(issue.input), result: toSoundResult(issue.result) },
  };
}

/** Sheet 03 of a job, live. */
export function useSoundSheet({ job }: OpenedJob, start: SoundData): SoundSheet {
  const { sound } = useTRPCClient().sheet;
  const [begun] = useState(() => inTodaysShape(start));
  const procedures = useMemo(
    () => ({
      read: { query: async (at: { jobId: string }) => inTodaysShape(await sound.read.query(at)) },
      save: {
        mutate: async (draft: { jobId: string; version: number; input: SoundInput }) =>
          inTodaysShape(await sound.save.mutate(draft)),
      },
      issue: {
        mutate: async (at: { jobId: string; version: number }) => inTodaysShape(await sound.issue.mutate(at)),
      },
      check: {
        mutate: async (at: { jobId: string; issueId: string }) => inTodaysShape(await sound.check.mutate(at)),
      },
    }),
    [sound],
  );
  return useJobSheet<SoundInput, SoundFacts, SoundUpstream, SoundResult>({
    kind: 'sound',
    jobId: job.id,
    jobNumber: job.number,
    start: begun,
    procedures,
    readDraft: keptSoundInput,
  });
}

'use client';

import { may } from '@gusset/contracts/access';
import { SHEETS, type SheetKind } from '@gusset/contracts/sheet';
import { canonicalJson, type SheetOutcome } from '@gusset/sheets';
import { useQueryClient } from '@tanstack/react-query';
import { useMemo, useRef, useState } from 'react';
import { useTRPC } from '../data/api-client.ts';
import { type ShownError, shownError } from '../data/shop-error.ts';
import { type UseAutosaveOptions, type UsedAutosave, useAutosave } from '../data/use-autosave.ts';
import { useEngine } from '../data/use-engine.ts';
import { isInField, useFollow } from '../data/use-follow.ts';
import { usePerson } from '../shell/person.tsx';
import type { SheetData, SheetProcedures } from './job-sheet.ts';

export type UseJobSheetOptions<Input, Facts, Upstream, Result> = {
  readonly kind: SheetKind;
  readonly jobId: string;
  readonly jobNumber: number;
  /** As the server read it for this page. */
  readonly start: SheetData<Input, Facts, Upstream, Result>;
  /** `useTRPCClient().sheet.<kind>` */
  readonly procedures: SheetProcedures<SheetData<Input, Facts, Upstream, Result>, Input>;
  /** The contract's schema, fetched when a draft was kept. */
  readonly readDraft: UseAutosaveOptions<Input>['readDraft'];
};

export type JobSheet<Input, Facts, Upstream, Result> = {
  readonly kind: SheetKind;
  /** What stands in the fields now, saved or not. */
  readonly input: Input;
  readonly change: (changes: Partial<Input>) => void;
  /** The same, sent at once: for choices that bring other records with them (a driver, a sheet of board). */
  readonly changeNow: (changes: Partial<Input>) => void;
  readonly data: SheetData<Input, Facts, Upstream, Result>;
  /** Worked out live from `input`; the server's until the worker has answered. */
  readonly outcome: SheetOutcome<Result>;
  /** The newest result there has been; stays in sight while a field is half typed. */
  readonly result: Result | null;
  readonly isStale: boolean;
  readonly fault: string | null;
  readonly autosave: UsedAutosave<Input>;
  readonly mayEdit: boolean;
  /** Draft differs from the last issue. */
  readonly isDraft: boolean;
  /** Reads it again, with what the records that it reads say now. */
  readonly reread: () => Promise<void>;
  readonly issue: () => Promise<void>;
  readonly check: () => Promise<void>;
  readonly isBusy: boolean;
  readonly actError: ShownError | null;
};

/** One sheet of a job on a screen: typed, saved by itself, worked out live, issued and checked. */
export function useJobSheet<Input extends object, Facts, Upstream, Result>(
  options: UseJobSheetOptions<Input, Facts, Upstream, Result>,
): JobSheet<Input, Facts, Upstream, Result> {
  const { kind, jobId, jobNumber, start, procedures, readDraft } = options;
  const person = usePerson();
  const trpc = useTRPC();
  const queries = useQueryClient();
  const [data, setData] = useState(start);
  const version = useRef(start.version);
  const [isBusy, setIsBusy] = useState(false);
  const [actError, setActError] = useState<ShownError | null>(null);

  const take = (next: typeof start) => {
    version.current = next.version;
    setData(next);
    void queries.invalidateQueries({ queryKey: trpc.job.byNumber.queryKey({ number: jobNumber }) });
    return next;
  };
  const autosave = useAutosave<Input>({
    key: { userId: person.userId, shopId: person.shopId, document: `sheet ${kind} ${jobId}` },
    start: { value: start.input, version: start.version },
    save: async (input, over) => take(await procedures.save.mutate({ jobId, version: over, input })),
    readDraft,
  });
  const input = autosave.value;

  const request = useMemo(
    () => ({ kind, input, facts: data.facts, upstream: data.upstream }),
    [kind, input, data.facts, data.upstream],
  );
  const engine = useEngine<Result>(request);
  const outcome = engine.outcome ?? data.outcome;
  const lastResult = useRef<Result | null>(start.outcome.state === 'ready' ? start.outcome.result : null);
  if (outcome.state === 'ready') lastResult.current = outcome.result;

  /** What others changed: the records and sheets above at once, the fields when nobody is in one. */
  const follow = async (): Promise<'done' | 'later'> => {
    try {
      const next = await procedures.read.query({ jobId });
      if (next.version < version.current) return 'done'; // read before the last save from here
      if (next.version === version.current) {
        setData((now) => ({ ...next, input: now.input }));
        return 'done';
      }
      if (isInField()) return 'later';
      if (autosave.adopt({ value: next.input, version: next.version })) take(next);
      return 'done'; // what is unsent meets theirs when it is saved
    } catch {
      return 'done'; // the line tells when it is back, and this is asked again
    }
  };
  useFollow(({ noun, id }) => (noun === 'job' || noun.startsWith('sheet.') ? id === jobId : true), follow);

  const act = async (work: () => Promise<typeof start>) => {
    setIsBusy(true);
    setActError(null);
    try {
      await autosave.flush();
      take(await work());
    } catch (error) {
      setActError(shownError(error));
    } finally {
      setIsBusy(false);
    }
  };
  const change = (changes: Partial<Input>) => autosave.change({ ...input, ...changes });
  return {
    kind,
    input,
    change,
    changeNow: (changes) => {
      change(changes);
      void autosave.flush();
    },
    data,
    outcome,
    result: lastResult.current,
    // The server has worked out what it sent: nothing is old until something has been changed here.
    isStale: engine.isStale && input !== data.input,
    fault: engine.fault,
    autosave,
    mayEdit: may(person.role, SHEETS[kind].editPermission),
    // The database sorts the keys of what it keeps; a sheet nobody wrote on has them as the code does.
    isDraft: data.issue === null || canonicalJson(data.issue.input) !== canonicalJson(data.input),
    reread: () =>
      act(async () => {
        const next = await procedures.read.query({ jobId });
        if (next.version !== version.current) autosave.adopt({ value: next.input, version: next.version });
        return next;
      }),
    issue: () => act(() => procedures.issue.mutate({ jobId, version: version.current })),
    check: () =>
      act(async () => {
        if (data.issue === null) return data;
        return procedures.check.mutate({ jobId, issueId: data.issue.id });
      }),
    isBusy,
    actError,
  };
}

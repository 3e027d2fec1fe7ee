'use client';

import { zodResolver } from '@hookform/resolvers/zod';
import { useEffect, useState } from 'react';
import {
  type DefaultValues,
  type FieldPath,
  type FieldValues,
  type UseFormReturn,
  useForm,
} from 'react-hook-form';
import type { z } from 'zod';
import { type ShownError, shownError } from '../data/shop-error.ts';
import type { Keep } from '../overlays/conflict-dialog.tsx';
import { useMessages } from '../overlays/messages.tsx';
import { type FlatDifference, flatDifferences } from './flat-conflict.ts';
import { formWords } from './form-words.ts';

/** What every saved record answers. */
export type SavedRecord = { readonly id: string; readonly version: number; readonly archived: boolean };

export type RecordFormOptions<Values extends FieldValues, Input, Saved extends SavedRecord> = {
  readonly schema: z.ZodType<Input, Values>;
  readonly start: DefaultValues<Values>;
  /** Null for one that is not made yet. */
  readonly record: SavedRecord | null;
  readonly create: (key: string, input: Input) => Promise<Saved>;
  readonly change: (at: { readonly id: string; readonly version: number }, input: Input) => Promise<Saved>;
  readonly onSaved: (saved: Saved, wasNew: boolean) => void;
  /** Where the form keeps what the server calls by this path; the same where nothing is said. */
  readonly pathOf?: (serverPath: string) => string;
  /** "Customer", for the message after saving. */
  readonly noun: string;
};

export type RecordConflict = {
  readonly version: number;
  readonly savedBy: string;
  readonly differences: readonly FlatDifference[];
};

export type RecordForm<Values extends FieldValues, Input> = {
  readonly form: UseFormReturn<Values, unknown, Input>;
  readonly save: () => Promise<void>;
  readonly isSaving: boolean;
  /** What belongs to no field. */
  readonly problem: ShownError | null;
  readonly conflict: RecordConflict | null;
  readonly closeConflict: () => void;
  readonly resolve: (choice: Readonly<Record<string, Keep>>) => void;
  /** After archiving or restoring, which counts as one change. */
  readonly adopt: (saved: SavedRecord) => void;
};

/** One record's form: checks by its contract, saves once, shows both values when somebody saved in between. */
export function useRecordForm<Values extends FieldValues, Input, Saved extends SavedRecord>(
  options: RecordFormOptions<Values, Input, Saved>,
): RecordForm<Values, Input> {
  const { schema, start, record, create, change, onSaved, noun, pathOf = asItIs } = options;
  const say = useMessages();
  // Made when the form opens, so that pressing twice makes one record.
  const [key] = useState(() => crypto.randomUUID());
  const [version, setVersion] = useState(record?.version ?? 0);
  const [problem, setProblem] = useState<ShownError | null>(null);
  const [conflict, setConflict] = useState<RecordConflict | null>(null);
  const form = useForm<Values, unknown, Input>({
    resolver: zodResolver(schema, { error: formWords }),
    defaultValues: start,
  });
  const { isDirty, isSubmitting } = form.formState;

  useEffect(() => {
    if (!isDirty) return;
    const warn = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener('beforeunload', warn);
    return () => window.removeEventListener('beforeunload', warn);
  }, [isDirty]);

  const send = async (input: Input, atVersion: number): Promise<void> => {
    setProblem(null);
    try {
      const saved =
        record === null
          ? await create(key, input)
          : await change({ id: record.id, version: atVersion }, input);
      setVersion(saved.version);
      setConflict(null);
      form.reset(undefined, { keepValues: true });
      say(`${noun} saved.`);
      onSaved(saved, record === null);
    } catch (failure) {
      take(shownError(failure));
    }
  };

  const take = (error: ShownError): void => {
    if (error.conflict !== null) {
      setConflict({
        version: error.conflict.currentVersion,
        savedBy: error.conflict.savedBy ?? 'Someone else',
        differences: flatDifferences(error.conflict).map((one) => ({ ...one, path: pathOf(one.path) })),
      });
      return;
    }
    for (const { path, message } of error.fields) {
      // The API names the field as its own input spells it: `input.email`.
      form.setError(path.replace(/^input\./u, '') as FieldPath<Values>, { message });
    }
    setProblem(error);
  };

  return {
    form,
    save: form.handleSubmit((input) => send(input, version)),
    isSaving: isSubmitting,
    problem,
    conflict,
    closeConflict: () => setConflict(null),
    adopt(saved) {
      // Only where nobody else saved in between; else the next save must say so.
      setVersion((seen) => (saved.version === seen + 1 ? saved.version : seen));
    },
    resolve(choice) {
      if (conflict === null) return;
      for (const { path, theirs } of conflict.differences) {
        // A path of the form by construction: the server compares this form's own input with what stands now.
        if (choice[path] === 'theirs') form.setValue(path as FieldPath<Values>, theirs as never);
      }
      setVersion(conflict.version);
      void form.handleSubmit((input) => send(input, conflict.version))();
    },
  };
}

function asItIs(path: string): string {
  return path;
}

'use client';

import { may } from '@gusset/contracts/access';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { LengthValue } from '../controls/length-entry.ts';
import { LengthField } from '../controls/length-field.tsx';
import { useTRPC } from '../data/api-client.ts';
import { shownError } from '../data/shop-error.ts';
import { usePerson } from '../shell/person.tsx';

const THINNEST_MM = 1;
const THICKEST_MM = 100;

export type ThicknessFieldProps = {
  readonly boardId: string;
  readonly name: string;
  /** `JobSheet.reread`: the sheet then knows what the board measures. */
  readonly reread: () => Promise<void>;
};

/** The calliper reading of the real sheet, written into the catalogue: every job that cuts this board reads it. */
export function ThicknessField({ boardId, name, reread }: ThicknessFieldProps) {
  const trpc = useTRPC();
  const queries = useQueryClient();
  const person = usePerson();
  // What was typed stays in the field while it is sent, and when it is refused.
  const [typed, setTyped] = useState<LengthValue | null>(null);
  const [error, setError] = useState<string | null>(null);
  const mayMeasure = may(person.role, 'board.measure');
  const board = useQuery(trpc.part.sheet.read.queryOptions({ id: boardId }, { enabled: mayMeasure }));
  const measuring = useMutation(
    trpc.part.sheet.measure.mutationOptions({
      onSuccess: async () => {
        await queries.invalidateQueries({ queryKey: trpc.part.sheet.pathKey() });
        await reread();
      },
      onError: async (fault) => {
        setError(shownError(fault).message);
        await queries.invalidateQueries({ queryKey: trpc.part.sheet.read.queryKey({ id: boardId }) });
      },
    }),
  );
  if (!mayMeasure) return <p>Whoever stands at the saw enters here what the callipers read.</p>;
  return (
    <LengthField
      label={`Measured thickness of ${name}`}
      hint="Callipers on the real sheet, at two corners; Enter writes it into the catalogue"
      value={typed}
      onCommit={(length) => {
        setTyped(length);
        setError(null);
        if (length === null || board.data === undefined) return;
        measuring.mutate({ id: boardId, version: board.data.version, measuredThicknessMm: length.mm });
      }}
      minMm={THINNEST_MM}
      maxMm={THICKEST_MM}
      isDisabled={board.data === undefined || measuring.isPending}
      error={error ?? (board.isError ? 'The catalogue could not be read. Try again in a moment.' : null)}
    />
  );
}

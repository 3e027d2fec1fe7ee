'use client';

import { may } from '@gusset/contracts/access';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { LengthField } from '../../shared/controls/length-field.tsx';
import { useTRPC, useTRPCClient } from '../../shared/data/api-client.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { usePerson } from '../../shared/shell/person.tsx';
import type { CuttingJobSheet } from './cutting-types.ts';

const THINNEST_MM = 1;
const THICKEST_MM = 100;

export type ThicknessFieldProps = {
  readonly sheet: CuttingJobSheet;
  readonly boardId: string;
  readonly name: string;
};

/** The calliper reading of the real sheet, written into the catalogue: every job that cuts this board reads it. */
export function ThicknessField({ sheet, boardId, name }: ThicknessFieldProps) {
  const trpc = useTRPC();
  const client = useTRPCClient();
  const queries = useQueryClient();
  const person = usePerson();
  const [error, setError] = useState<string | null>(null);
  const mayMeasure = may(person.role, 'catalogue.edit') && sheet.mayEdit;
  const boards = useQuery(trpc.part.sheet.list.queryOptions({ limit: 200 }, { enabled: mayMeasure }));
  const row = boards.data?.rows.find(({ id }) => id === boardId) ?? null;
  const measuring = useMutation({
    mutationFn: async (measuredThicknessMm: number) => {
      if (row === null || row.buyPriceMinor === null || row.sellPriceMinor === null)
        throw new Error('This board is no longer in the catalogue.');
      await client.part.sheet.change.mutate({
        id: row.id,
        version: row.version,
        input: {
          kind: row.kind,
          maker: row.maker,
          name: row.name,
          code: row.code,
          unit: row.unit,
          supplierId: row.supplierId,
          buyPriceMinor: row.buyPriceMinor,
          sellPriceMinor: row.sellPriceMinor,
          stockQuantity: row.stockQuantity,
          leadDays: row.leadDays,
          notes: row.notes,
          figures: { ...row.figures, measuredThicknessMm },
        },
      });
    },
    onSuccess: async () => {
      setError(null);
      await queries.invalidateQueries({ queryKey: trpc.part.sheet.list.queryKey() });
      // The sheet is read again with what it now knows of the board.
      sheet.changeNow({});
    },
    onError: (fault) => setError(shownError(fault).message),
  });
  if (!mayMeasure) return <p>Tell whoever keeps the catalogue what your callipers read.</p>;
  return (
    <LengthField
      label={`Measured thickness of ${name}`}
      hint="Callipers on the real sheet, at two corners; Enter writes it into the catalogue"
      value={null}
      onCommit={(length) => {
        if (length !== null) measuring.mutate(length.mm);
      }}
      minMm={THINNEST_MM}
      maxMm={THICKEST_MM}
      isDisabled={row === null || measuring.isPending}
      error={error ?? (boards.isError ? 'The catalogue could not be read. Try again in a moment.' : null)}
    />
  );
}

import { idempotencyKeySchema, idSchema } from '@gusset/contracts/common';
import { z } from 'zod';
import { allowed } from '../../trpc/procedures.ts';
import type { RecordRow } from '../record-kind.ts';
import { exportList, importList, previewImport, undoImport } from './csv.service.ts';
import type { CsvKind } from './csv-kind.ts';

/** Stays below the largest request, quotation marks and line ends of JSON included. */
const textSchema = z
  .string()
  .min(1, 'The file is empty.')
  .max(900_000, 'The file is larger than 900,000 characters. Split it.');

/** The four procedures of a kind whose list goes out and comes back. */
export function csvProcedures<Input extends object, Row extends RecordRow, View>(
  csv: CsvKind<Input, Row, View>,
) {
  const { kind } = csv;
  return {
    importPreview: allowed(kind.edit)
      .input(z.strictObject({ text: textSchema }))
      .mutation(({ ctx, input }) => previewImport(ctx.deps, ctx.who, csv, input.text)),

    import: allowed(kind.edit)
      .input(z.strictObject({ key: idempotencyKeySchema, text: textSchema }))
      .mutation(({ ctx, input }) => importList(ctx.deps, ctx.who, csv, input)),

    importUndo: allowed(kind.edit)
      .input(z.strictObject({ importId: idSchema }))
      .mutation(({ ctx, input }) => undoImport(ctx.deps, ctx.who, csv, input.importId)),

    export: allowed('list.export').query(({ ctx }) => exportList(ctx.deps, ctx.who, csv)),
  };
}

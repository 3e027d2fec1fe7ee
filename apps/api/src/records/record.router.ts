// The same five procedures for every kind of record, each with the kind's own permissions; four more where the list
// goes out to a spreadsheet and comes back.
import { idempotencyKeySchema, idSchema, pageSchema, versionSchema } from '@gusset/contracts/common';
import { z } from 'zod';
import { allowed, router } from '../trpc/procedures.ts';
import { csvProcedures } from './csv/csv.router.ts';
import type { CsvKind } from './csv/csv-kind.ts';
import { archiveRecord, changeRecord, createRecord, listRecords, readRecord } from './record.service.ts';
import type { RecordKind, RecordRow } from './record-kind.ts';

export function recordRouter<Input extends object, Row extends RecordRow, View>(
  kind: RecordKind<Input, Row, View>,
) {
  return router(recordProcedures(kind));
}

export function listedRecordRouter<Input extends object, Row extends RecordRow, View>(
  csv: CsvKind<Input, Row, View>,
) {
  return router(listedRecordProcedures(csv));
}

export function listedRecordProcedures<Input extends object, Row extends RecordRow, View>(
  csv: CsvKind<Input, Row, View>,
) {
  return { ...recordProcedures(csv.kind), ...csvProcedures(csv) };
}

function recordProcedures<Input extends object, Row extends RecordRow, View>(
  kind: RecordKind<Input, Row, View>,
) {
  return {
    list: allowed(kind.read)
      .input(pageSchema.extend({ sort: z.enum(kind.sorts).default(kind.sorts[0]) }))
      .query(({ ctx, input }) => listRecords(ctx.deps, ctx.who, kind, input)),

    read: allowed(kind.read)
      .input(z.strictObject({ id: idSchema }))
      .query(({ ctx, input }) => readRecord(ctx.deps, ctx.who, kind, input.id)),

    create: allowed(kind.edit)
      .input(z.strictObject({ key: idempotencyKeySchema, input: kind.inputSchema }))
      .mutation(({ ctx, input }) => createRecord(ctx.deps, ctx.who, kind, input.key, input.input)),

    change: allowed(kind.edit)
      .input(z.strictObject({ id: idSchema, version: versionSchema, input: kind.inputSchema }))
      .mutation(({ ctx, input }) => changeRecord(ctx.deps, ctx.who, kind, input, input.input)),

    archive: allowed(kind.edit)
      .input(z.strictObject({ id: idSchema, archived: z.boolean() }))
      .mutation(({ ctx, input }) => archiveRecord(ctx.deps, ctx.who, kind, input)),
  };
}

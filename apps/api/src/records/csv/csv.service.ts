// Lists in and out. An import is looked at first, then taken whole or not at all, and can be undone in one step.
import type { Tx } from '@gusset/database';
import { v7 as uuidv7 } from 'uuid';
import { z } from 'zod';
import { record } from '../../data/audit.ts';
import { once } from '../../data/idempotency.ts';
import type { Actor, Deps } from '../../deps.ts';
import { notFound, ShopError } from '../../errors.ts';
import type { RecordRow } from '../record-kind.ts';
import { headerOf, type ReadList, readList, toCells } from './csv-column.ts';
import type { CsvKind } from './csv-kind.ts';
import { csvShop } from './csv-shop.ts';
import { type CsvProblem, writeCsv } from './csv-text.ts';

/** What one transaction takes in well under its ten seconds. */
export const MOST_ROWS = 2_000;
const MOST_EXPORTED = 20_000;
/** Enough to mend a file by; a file with more faults has one fault. */
const MOST_PROBLEMS = 200;
const PREVIEWED_ROWS = 500;

export type ImportPreview = {
  readonly total: number;
  readonly rows: readonly {
    readonly row: number;
    readonly name: string;
    /** There is one of this name already, in the shop or further up in the file. */
    readonly isAlike: boolean;
  }[];
  readonly alikeCount: number;
  readonly problems: readonly CsvProblem[];
  readonly problemCount: number;
  readonly ignoredColumns: readonly string[];
};

/** Reads the text as it would be imported and writes nothing. */
export function previewImport<Input, Row extends RecordRow, View>(
  { doors }: Deps,
  actor: Actor,
  csv: CsvKind<Input, Row, View>,
  text: string,
): Promise<ImportPreview> {
  return doors.inShop(actor.shopId, async (tx) => {
    const list = await readFor(tx, actor, csv, text);
    const known = new Set((await everything(tx, actor, csv)).map((input) => keyOf(csv.nameOf(input))));
    const rows = list.rows.map(({ row, input }) => {
      const name = csv.nameOf(input);
      const isAlike = known.has(keyOf(name));
      known.add(keyOf(name));
      return { row, name, isAlike };
    });
    return {
      total: rows.length,
      rows: rows.slice(0, PREVIEWED_ROWS),
      alikeCount: rows.filter(({ isAlike }) => isAlike).length,
      problems: list.problems.slice(0, MOST_PROBLEMS),
      problemCount: list.problems.length,
      ignoredColumns: list.ignoredColumns,
    };
  });
}

/** NOT_ACCEPTED with every bad cell where there is one; then nothing is written. */
export function importList<Input, Row extends RecordRow, View>(
  { doors }: Deps,
  actor: Actor,
  csv: CsvKind<Input, Row, View>,
  { key, text }: { readonly key: string; readonly text: string },
): Promise<{ importId: string; count: number }> {
  const { subject } = csv.kind;
  return doors.inShop(actor.shopId, (tx) =>
    once(tx, actor, key, { act: 'import', subject, text }, async () => {
      const list = await readFor(tx, actor, csv, text);
      if (list.problems.length > 0) throw badList(list.problems);
      const rows = list.rows.map(({ input }) => ({ id: uuidv7(), input }));
      await csv.insertMany(tx, actor, rows);
      const importId = uuidv7();
      await record(tx, actor, {
        act: `${subject}.imported`,
        subject,
        subjectId: importId,
        after: { count: rows.length, ids: rows.map(({ id }) => id) },
      });
      return { importId, count: rows.length };
    }),
  );
}

const importedSchema = z.object({ ids: z.array(z.uuid()) });

/** Archives what came in with one import. Twice does no more than once. */
export function undoImport<Input, Row extends RecordRow, View>(
  { doors, clock }: Deps,
  actor: Actor,
  csv: CsvKind<Input, Row, View>,
  importId: string,
): Promise<{ count: number }> {
  const { subject } = csv.kind;
  return doors.inShop(actor.shopId, async (tx) => {
    const entry = await tx.auditEntry.findFirst({
      where: { shopId: actor.shopId, subject, subjectId: importId, act: `${subject}.imported` },
      select: { after: true },
    });
    if (entry === null) throw notFound('import');
    const { ids } = importedSchema.parse(entry.after);
    const count = await csv.archiveMany(tx, actor, ids, clock.now());
    if (count > 0) {
      await record(tx, actor, {
        act: `${subject}.import-undone`,
        subject,
        subjectId: importId,
        after: { count },
      });
    }
    return { count };
  });
}

/** Everything that is not archived, as a spreadsheet opens it. */
export function exportList<Input extends object, Row extends RecordRow, View>(
  { doors }: Deps,
  actor: Actor,
  csv: CsvKind<Input, Row, View>,
): Promise<{ fileName: string; text: string }> {
  return doors.inShop(actor.shopId, async (tx) => {
    const columns = csv.columns(await csvShop(tx, actor));
    const inputs = await everything(tx, actor, csv);
    const rows = [columns.map(headerOf), ...inputs.map((input) => toCells(columns, input))];
    return { fileName: `${csv.fileName}.csv`, text: writeCsv(rows) };
  });
}

async function readFor<Input, Row extends RecordRow, View>(
  tx: Tx,
  actor: Actor,
  csv: CsvKind<Input, Row, View>,
  text: string,
): Promise<ReadList<Input>> {
  const columns = csv.columns(await csvShop(tx, actor));
  const list = readList(text, columns, csv.kind.inputSchema, csv.fixed);
  const count = list.rows.length + new Set(list.problems.map(({ row }) => row)).size;
  if (count <= MOST_ROWS) return list;
  const why = `A file may hold ${MOST_ROWS} rows; this one has ${count}. Split it.`;
  return { rows: [], problems: [{ row: MOST_ROWS + 2, column: '', why }], ignoredColumns: [] };
}

async function everything<Input, Row extends RecordRow, View>(
  tx: Tx,
  actor: Actor,
  { kind }: CsvKind<Input, Row, View>,
): Promise<Input[]> {
  const { rows } = await kind.list(tx, actor, {
    limit: MOST_EXPORTED,
    offset: 0,
    search: '',
    sort: kind.sorts[0],
    descending: false,
    archived: false,
  });
  return rows.map((row) => kind.toInput(row));
}

function badList(problems: readonly CsvProblem[]): ShopError {
  const fields = problems.slice(0, MOST_PROBLEMS).map(({ row, column, why }) => ({
    path: column === '' ? `row ${row}` : `row ${row}, ${column}`,
    message: why,
  }));
  return new ShopError('NOT_ACCEPTED', `${problems.length} cells could not be read. Nothing was written.`, {
    fields,
  });
}

function keyOf(name: string): string {
  return name.toLocaleLowerCase().replace(/\s+/gu, ' ').trim();
}

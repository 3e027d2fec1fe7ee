// What a kind of record needs so that its list can go out to a spreadsheet and come back.
import type { Tx } from '@gusset/database';
import type { Actor } from '../../deps.ts';
import type { RecordKind, RecordRow } from '../record-kind.ts';
import type { CsvColumn } from './csv-column.ts';
import type { NameBook } from './name-book.ts';

/** What columns may need to know about the shop. */
export type CsvShop = {
  readonly currency: string;
  readonly customers: NameBook;
  readonly models: NameBook;
  readonly suppliers: NameBook;
};

export type NewRow<Input> = { readonly id: string; readonly input: Input };

export type CsvKind<Input, Row extends RecordRow, View> = {
  readonly kind: RecordKind<Input, Row, View>;
  /** File name of the export without its ending. */
  readonly fileName: string;
  readonly columns: (shop: CsvShop) => readonly CsvColumn[];
  /** What the input holds that no column says: the kind of a part. */
  readonly fixed: Readonly<Record<string, unknown>>;
  /** How a person would call the row; two rows of one name are pointed out before an import. */
  readonly nameOf: (input: Input) => string;
  readonly insertMany: (tx: Tx, actor: Actor, rows: readonly NewRow<Input>[]) => Promise<unknown>;
  /** Archives those of the ids that are not archived yet; answers how many. */
  readonly archiveMany: (tx: Tx, actor: Actor, ids: readonly string[], at: Date) => Promise<number>;
};

/** The list form of a kind that is declared elsewhere. */
export type CsvOf<Kind> =
  Kind extends RecordKind<infer Input, infer Row, infer View> ? CsvKind<Input, Row, View> : never;

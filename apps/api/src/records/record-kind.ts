// What differs between the kinds of record a shop keeps; everything else (paging, versions, archive, the record of
// what happened, NOT_FOUND for other shops' rows) is the same and stands in `record.service.ts`.
import type { Permission } from '@gusset/contracts/access';
import type { Page } from '@gusset/contracts/common';
import type { Prisma, Tx } from '@gusset/database';
import type { z } from 'zod';
import type { Actor } from '../deps.ts';

/** Columns that every record row has. */
export type RecordRow = {
  readonly id: string;
  readonly version: number;
  readonly archivedAt: Date | null;
  readonly updatedAt: Date;
};

export type ListAsk = Page & { readonly sort: string };

export type RecordKind<Input, Row extends RecordRow, View> = {
  /** In the record of what happened and in "there is no such …". */
  readonly subject: string;
  readonly read: Permission;
  readonly edit: Permission;
  readonly inputSchema: z.ZodType<Input>;
  /** What the list can be sorted by; the first is the usual order. */
  readonly sorts: readonly [string, ...string[]];
  readonly list: (tx: Tx, actor: Actor, ask: ListAsk) => Promise<{ rows: Row[]; total: number }>;
  readonly find: (tx: Tx, actor: Actor, id: string) => Promise<Row | null>;
  readonly insert: (tx: Tx, actor: Actor, input: Input) => Promise<{ id: string }>;
  /** One statement on the version that was seen: how many rows it changed. */
  readonly change: (
    tx: Tx,
    actor: Actor,
    at: { id: string; version: number },
    input: Input,
  ) => Promise<number>;
  readonly putAway: (tx: Tx, actor: Actor, id: string, archivedAt: Date | null) => Promise<number>;
  /** The one place where a row becomes a view; what the role may not see is null there. */
  readonly toView: (row: Row, actor: Actor) => View;
  /** The input that would give this row, to set beside what somebody else sent. */
  readonly toInput: (row: Row) => Input;
};

/** Sentence for a search: any of these columns contains the text. */
export function containsAny<Column extends string>(columns: readonly Column[], search: string) {
  const contains = { contains: search, mode: 'insensitive' as const };
  return search === '' ? {} : { OR: columns.map((column) => ({ [column]: contains })) };
}

export function archivedIs(archived: boolean): { archivedAt: Prisma.DateTimeNullableFilter | null } {
  return { archivedAt: archived ? { not: null } : null };
}

export function orderOf(ask: Pick<Page, 'descending'>): Prisma.SortOrder {
  return ask.descending ? 'desc' : 'asc';
}

// The types that every sheet screen shares: the job it belongs to, and a sheet as the API reads it.

import type { Conflict } from '@gusset/contracts/errors';
import type { SheetChange, SheetKind } from '@gusset/contracts/sheet';
import type { SheetOutcome } from '@gusset/sheets';
import type { ApiOutputs } from '../data/api-types.ts';

export type OpenedJob = ApiOutputs['job']['byNumber'];

export type IssueMark = {
  readonly id: string;
  readonly revision: string;
  readonly issuedByName: string;
  readonly issuedAt: string;
  readonly checkedByName: string | null;
  readonly checkedAt: string | null;
};

/** What `sheet.<kind>.read` answers, by the kind's own types. */
export type SheetData<Input, Facts, Upstream, Result> = {
  readonly version: number;
  readonly input: Input;
  readonly facts: Facts;
  readonly upstream: Upstream;
  readonly draftUpstream: readonly SheetKind[];
  readonly outcome: SheetOutcome<Result>;
  readonly savedAt: string | null;
  readonly issue: (IssueMark & { readonly input: Input; readonly result: Result }) | null;
  readonly changes: readonly SheetChange[];
};

/** The procedures of one kind of sheet, as `useTRPCClient().sheet.<kind>` gives them. */
export type SheetProcedures<Data, Input> = {
  readonly read: { query(at: { jobId: string }): Promise<Data> };
  readonly save: { mutate(draft: { jobId: string; version: number; input: Input }): Promise<Data> };
  readonly issue: { mutate(at: { jobId: string; version: number }): Promise<Data> };
  readonly check: { mutate(at: { jobId: string; issueId: string }): Promise<Data> };
};

/** Fields of a conflict that a person can name; others keep their key. */
export type FieldWords = Readonly<Record<string, string>>;

export function conflictWords(conflict: Conflict, words: FieldWords) {
  return conflict.differences.map(({ field, yours, theirs }) => ({
    field,
    label: words[field] ?? field,
    mine: valueWords(yours),
    theirs: valueWords(theirs),
  }));
}

/** A value of a draft in one line: what was typed where it was typed, else the value itself. */
function valueWords(value: unknown): string {
  if (value === null || value === undefined || value === '') return 'nothing';
  if (typeof value === 'object' && 'typed' in value && typeof value.typed === 'string') return value.typed;
  if (Array.isArray(value)) return value.length === 0 ? 'nothing' : value.map(valueWords).join(', ');
  return typeof value === 'object' ? JSON.stringify(value) : String(value);
}

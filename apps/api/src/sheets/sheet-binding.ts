// Ties a sheet's pure definition to the data: where its facts come from, and what follows when it is issued.
import type { SheetKind } from '@gusset/contracts/sheet';
import type { Tx } from '@gusset/database';
import { type AnySheetDefinition, anySheet, type SheetDefinition } from '@gusset/sheets';
import type { Actor, Deps } from '../deps.ts';
import type { JobRow } from '../jobs/job.queries.ts';

/** Where a sheet is handled: one job, one person, one transaction. */
export type SheetScope = {
  readonly deps: Deps;
  readonly tx: Tx;
  readonly actor: Actor;
  readonly job: JobRow;
};

/** Where the records of one sheet are read: of sound and box, for one enclosure. */
export type FactScope = SheetScope & { readonly enclosureId: string | null };

/** Results of the sheets it reads; null where one says nothing yet. */
export type UpstreamResults = Readonly<Partial<Record<SheetKind, unknown>>>;

export type SheetBinding<Input, Facts, Upstream, Result> = {
  readonly definition: SheetDefinition<Input, Facts, Upstream, Result>;
  /** Reads the records that the input or a sheet above names, as plain JSON (they are stored with the issue). */
  readonly loadFacts: (scope: FactScope, input: Input, upstream: Upstream) => Promise<Facts>;
  /** What else happens in the transaction that issues it: milestones, tasks, quotes. */
  readonly onIssued: (
    scope: SheetScope,
    issued: { readonly input: Input; readonly result: Result },
  ) => Promise<void>;
};

export type AnySheetBinding = {
  readonly definition: AnySheetDefinition;
  readonly loadFacts: (scope: FactScope, input: unknown, upstream: unknown) => Promise<unknown>;
  readonly onIssued: (
    scope: SheetScope,
    issued: { readonly input: unknown; readonly result: unknown },
  ) => Promise<void>;
};

/** Forgets the types; sound for the reason given at `anySheet`. */
export function anyBinding<Input, Facts, Upstream, Result>(
  binding: SheetBinding<Input, Facts, Upstream, Result>,
): AnySheetBinding {
  return {
    definition: anySheet(binding.definition),
    loadFacts: (scope, input, upstream) => binding.loadFacts(scope, input as Input, upstream as Upstream),
    onIssued: (scope, issued) =>
      binding.onIssued(scope, { input: issued.input as Input, result: issued.result as Result }),
  };
}

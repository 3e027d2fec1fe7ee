// What a sheet of a job is: its own inputs, the records it reads (facts), the results of the sheets it reads
// (upstream), and a pure computation. The browser runs it live in a worker; the API runs it again when the sheet is
// issued, and that result is the one that counts.
import type { BoxSheetResult } from '@gusset/contracts/box';
import type { SheetChange, SheetKind } from '@gusset/contracts/sheet';
import type { SoundResult } from '@gusset/contracts/sound';
import type { RefusalDetail } from '@gusset/units';
import type { z } from 'zod';

/** Something the sheet still needs before it can say anything; `field` is the path in its input. */
export type Missing = { readonly field: string; readonly what: string };

export type SheetOutcome<Result> =
  | { readonly state: 'ready'; readonly result: Result }
  | { readonly state: 'incomplete'; readonly missing: readonly Missing[] }
  | { readonly state: 'refused'; readonly refusals: readonly RefusalDetail[] };

/** A figure that people know the sheet by: what a revision delta compares and lists. */
export type KeyFigure = { readonly key: string; readonly label: string; readonly value: string };

export type SheetDefinition<Input, Facts, Upstream, Result> = {
  readonly kind: SheetKind;
  /** Rises whenever the same input could give another result; part of the fingerprint. */
  readonly engineVersion: number;
  /** Sheets it reads but can be issued without (a box for a car that nobody has measured). */
  readonly optionalReads: readonly SheetKind[];
  /** Accepts every draft that a person can leave behind: what is not entered yet is null or an empty list. */
  readonly inputSchema: z.ZodType<Input>;
  readonly emptyInput: () => Input;
  readonly compute: (input: Input, facts: Facts, upstream: Upstream) => SheetOutcome<Result>;
  /** The result as others know it, in the order in which a person would name it. */
  readonly keyFigures: (result: Result) => readonly KeyFigure[];
  /** The facts in words, so that a changed record can be named: `Quince Q-10 · Vas 48 L`. */
  readonly factFigures: (facts: Facts) => readonly KeyFigure[];
  /**
   * What the sheets that read this one are given, and what their change lists may name, where that is less than the
   * whole: people may read those sheets who may not read this one. Left out = the whole result.
   */
  readonly shared?: {
    readonly result: (result: Result) => unknown;
    readonly keyFigures: (result: Result) => readonly KeyFigure[];
  };
};

/** One of a job's enclosures as the sheets that gather them read it. A sheet that says nothing yet is null. */
export type EnclosureUpstream = {
  readonly id: string;
  /** 1, 2, 3 within the job, never given twice. */
  readonly number: number;
  readonly name: string;
  /** How many are built alike. */
  readonly copies: number;
  readonly sound: SoundResult | null;
  readonly box: BoxSheetResult | null;
};

/** What a sheet of the whole job reads of its boxes. */
export type GatheredUpstream = {
  /** Of the job's first enclosure. */
  readonly sound?: SoundResult | null;
  readonly box?: BoxSheetResult | null;
  /** All that are in use; left out where the job has one enclosure, built once. */
  readonly enclosures?: readonly EnclosureUpstream[];
};

/** The job's enclosures, one of them or several: a job with one is a list of one. */
export function enclosuresOf(upstream: GatheredUpstream): readonly EnclosureUpstream[] {
  const { enclosures, sound = null, box = null } = upstream;
  return enclosures ?? [{ id: '', number: 1, name: 'Bass box', copies: 1, sound, box }];
}

/** A definition whose types only it knows: how the job's index and the issuing handle all kinds alike. */
export type AnySheetDefinition = {
  readonly kind: SheetKind;
  readonly engineVersion: number;
  readonly optionalReads: readonly SheetKind[];
  readonly emptyInput: () => unknown;
  /** A kept input as today's schema has it: what it gained since is filled in. One that it refuses stays as it is. */
  readonly readInput: (kept: unknown) => unknown;
  readonly compute: (input: unknown, facts: unknown, upstream: unknown) => SheetOutcome<unknown>;
  readonly keyFigures: (result: unknown) => readonly KeyFigure[];
  readonly factFigures: (facts: unknown) => readonly KeyFigure[];
  readonly shared: {
    readonly result: (result: unknown) => unknown;
    readonly keyFigures: (result: unknown) => readonly KeyFigure[];
  };
};

/**
 * Forgets the types. Sound because input, facts and result of a kind are only ever handed back to the same kind's
 * definition: inputs are parsed by its schema when they are saved, facts and results come from its own functions.
 */
export function anySheet<Input, Facts, Upstream, Result>(
  definition: SheetDefinition<Input, Facts, Upstream, Result>,
): AnySheetDefinition {
  const shared = definition.shared ?? {
    result: (result: Result): unknown => result,
    keyFigures: definition.keyFigures,
  };
  return {
    kind: definition.kind,
    engineVersion: definition.engineVersion,
    optionalReads: definition.optionalReads,
    emptyInput: definition.emptyInput,
    readInput: (kept) => definition.inputSchema.safeParse(kept).data ?? kept,
    compute: (input, facts, upstream) =>
      definition.compute(input as Input, facts as Facts, upstream as Upstream),
    keyFigures: (result) => definition.keyFigures(result as Result),
    factFigures: (facts) => definition.factFigures(facts as Facts),
    shared: {
      result: (result) => shared.result(result as Result),
      keyFigures: (result) => shared.keyFigures(result as Result),
    },
  };
}

export function ready<Result>(result: Result): SheetOutcome<Result> {
  return { state: 'ready', result };
}

export function incomplete(missing: readonly Missing[]): SheetOutcome<never> {
  return { state: 'incomplete', missing };
}

export function refused(refusals: readonly RefusalDetail[]): SheetOutcome<never> {
  return { state: 'refused', refusals };
}

/** What differs between two lists of figures, in the order of the newer one; a figure that went is listed last. */
export function changedFigures(
  source: string,
  before: readonly KeyFigure[],
  after: readonly KeyFigure[],
): readonly SheetChange[] {
  const old = new Map(before.map((figure) => [figure.key, figure]));
  const now = new Set(after.map((figure) => figure.key));
  const changed = after
    .filter((figure) => old.get(figure.key)?.value !== figure.value)
    .map((figure) => ({
      source,
      label: figure.label,
      before: old.get(figure.key)?.value ?? '–',
      after: figure.value,
    }));
  const gone = before
    .filter((figure) => !now.has(figure.key))
    .map((figure) => ({ source, label: figure.label, before: figure.value, after: '–' }));
  return [...changed, ...gone];
}

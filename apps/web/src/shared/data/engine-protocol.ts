// What crosses between the page and the engine worker. Plain data: structured clone carries it.

import type { SheetKind } from '@gusset/contracts/sheet';
import type { SheetOutcome } from '@gusset/sheets';

/** One computation: a sheet's input, the records it reads, the results of the sheets it reads. */
export type EngineRequest = {
  readonly kind: SheetKind;
  readonly input: unknown;
  readonly facts: unknown;
  readonly upstream: unknown;
};

export type EngineQuestion = { readonly id: number; readonly request: EngineRequest };

export type EngineAnswer =
  | { readonly id: number; readonly outcome: SheetOutcome<unknown> }
  /** A fault in an engine, not a refusal: refusals are outcomes. */
  | { readonly id: number; readonly fault: string };

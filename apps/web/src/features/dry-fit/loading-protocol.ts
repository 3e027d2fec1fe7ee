// What crosses between the page and the worker that looks for the way in.
import type { BoxFacts, BoxInput, BoxSheetResult } from '@gusset/contracts/box';
import type { LoadingAnswer, LoadingChoices } from '@gusset/contracts/dry-fit-sheet';
import type { BoxLoadingRemedy, BoxUpstream } from '@gusset/sheets';

export type LoadingAsked = {
  readonly input: BoxInput;
  readonly facts: BoxFacts;
  readonly upstream: BoxUpstream;
  /** What the engine made of `input`. */
  readonly result: BoxSheetResult;
  readonly choices: LoadingChoices;
};

export type LoadingNews =
  /** The verdict; by how much is still being measured. */
  | { readonly kind: 'decided'; readonly answer: LoadingAnswer }
  | { readonly kind: 'answer'; readonly answer: LoadingAnswer }
  | { readonly kind: 'trying'; readonly share: number }
  | { readonly kind: 'remedy'; readonly remedy: BoxLoadingRemedy }
  | { readonly kind: 'refused'; readonly why: string; readonly allowed: string }
  | { readonly kind: 'done' };

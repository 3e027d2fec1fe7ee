// What crosses between the page and the worker that looks for a better layout.
import type { CuttingFacts, CuttingInput } from '@gusset/contracts/cutting-sheet';
import type { BoardScore, CuttingUpstream } from '@gusset/sheets';

export type ImproveQuestion = {
  readonly input: CuttingInput;
  readonly facts: CuttingFacts;
  readonly upstream: CuttingUpstream;
  readonly seconds: number;
};

export type ImproveNews = {
  readonly isDone: boolean;
  readonly share: number;
  /** Seeds tried. */
  readonly tried: number;
  readonly start: readonly BoardScore[];
  readonly best: readonly BoardScore[];
};

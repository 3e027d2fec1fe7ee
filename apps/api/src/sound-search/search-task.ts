// The catalogue search as a thread does it.
import { searchDrivers } from '@gusset/acoustics';
import type { SearchAnswer, SearchBrief, SearchDriver, SearchProgress } from '@gusset/contracts/acoustics';
import type { Refusal } from '@gusset/units';
import type { ComputeTask } from '../compute/compute-task.ts';

/** Draws nothing at random, so it has no use for the seed: the same brief and drivers give the same answer. */
export const driverSearchTask: ComputeTask<
  { readonly brief: SearchBrief; readonly drivers: readonly SearchDriver[] },
  SearchAnswer | Refusal,
  SearchProgress
> = ({ brief, drivers }, { report }) => {
  const search = searchDrivers(brief, drivers);
  for (;;) {
    const step = search.next();
    if (step.done) return step.value;
    report(step.value);
  }
};

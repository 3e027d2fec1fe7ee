import { STANDING_WORDS, STANDINGS } from '@gusset/contracts/job';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import type { FilterChip } from '../../shared/table/data-column.ts';

export type JobRow = ApiOutputs['job']['list']['rows'][number];

/** One chip a standing: what has happened, never what somebody set. */
export const STANDING_CHIPS: readonly FilterChip<JobRow>[] = STANDINGS.map((standing) => ({
  id: standing,
  label: STANDING_WORDS[standing],
  test: (job) => job.standing === standing,
}));

/** Late when the plan now ends after the day that was promised. */
export function isLate(job: Pick<JobRow, 'promisedOn' | 'forecastOn' | 'standing'>): boolean {
  if (job.standing === 'handed-over' || job.promisedOn === null || job.forecastOn === null) return false;
  return job.forecastOn > job.promisedOn;
}

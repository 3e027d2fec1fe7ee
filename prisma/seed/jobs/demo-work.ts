// What became of approved jobs: when they were planned, and how their parts come.
import type { DaysAgo } from './demo-job.ts';

export type DemoWork = {
  /** Planned, promised and ordered on the day after the approval. */
  readonly plannedDaysAgo: DaysAgo;
  /** Open days from the order until ordinary parts are in hand. */
  readonly partsTake: number;
  /** When the customer brings the vehicle, in open days from today; left out = it was there already. */
  readonly comesIn?: number;
  /** Parts that come on another day than the ordinary ones, in open days from today; below 0 = it was due and has not come. */
  readonly slowParts?: readonly { readonly code: string; readonly dueIn: number }[];
};

export const WORK: Readonly<Record<string, DemoWork>> = {
  'show car': { plannedDaysAgo: 61, partsTake: 5 },
  'estate bass': { plannedDaysAgo: 50, partsTake: 4 },
  'behind the seat': { plannedDaysAgo: 3, partsTake: 1, slowParts: [{ code: 'MD-10S', dueIn: -1 }] },
  'hatch ten': { plannedDaysAgo: 1, partsTake: 1, slowParts: [{ code: 'BN-2-80', dueIn: 2 }] },
  'saloon pair': { plannedDaysAgo: 2, partsTake: 3, comesIn: 1 },
  'wedding car': {
    plannedDaysAgo: 1,
    partsTake: 3,
    comesIn: 4,
    slowParts: [{ code: 'MD-15-4', dueIn: 6 }],
  },
};

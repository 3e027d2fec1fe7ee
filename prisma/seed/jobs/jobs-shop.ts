import type { Deps } from '@gusset/api/deps';
import type { DemoCalendar } from '../demo-calendar.ts';
import type { DemoRecords, Ids } from '../make-records.ts';
import type { DemoStaff } from '../set-up-shop.ts';

/** What the steps of the demo's jobs work with. */
export type JobsShop = {
  readonly deps: Deps;
  readonly staff: DemoStaff;
  readonly records: DemoRecords;
  readonly surveys: Ids;
  readonly calendar: DemoCalendar;
};

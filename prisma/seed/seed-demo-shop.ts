// Quarry Road Sound: an invented shop in the middle of an ordinary week. Everything is made through the API, by the
// person who would have done it, and dated back from today.
import type { Deps } from '@gusset/api/deps';
import { demoCalendar } from './demo-calendar.ts';
import { DEMO_PASSWORD, MIRA } from './demo-staff.ts';
import { runJobs } from './jobs/run-jobs.ts';
import { makeRecords } from './make-records.ts';
import { quietDeps } from './quiet-deps.ts';
import { planLeave, setUpShop } from './set-up-shop.ts';
import { measureAgain, takeSurveys } from './surveys/take-surveys.ts';

export type DemoShop = { readonly shopId: string; readonly email: string; readonly password: string };

const ZONE = 'Europe/Berlin';

export async function seedDemoShop(deps: Deps): Promise<DemoShop> {
  const calendar = demoCalendar(deps.clock.now(), ZONE);
  const { deps: quiet, story } = quietDeps(deps);
  const staff = await setUpShop(quiet, calendar);
  await planLeave(staff, calendar);
  const records = await makeRecords(staff, calendar);
  const taking = { staff, models: records.models, calendar, story };
  const surveys = await takeSurveys(taking);
  await runJobs({ deps: quiet, staff, records, surveys, calendar, story });
  await measureAgain(taking, surveys);
  return { shopId: staff.shopId, email: MIRA.email, password: DEMO_PASSWORD };
}

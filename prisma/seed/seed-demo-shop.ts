// Quarry Road Sound: an invented shop in the middle of an ordinary week. Everything is made through the API, by the
// person who would have done it, and dated back from today.
import type { Deps } from '@gusset/api/deps';
import { demoCalendar } from './demo-calendar.ts';
import { DEMO_PASSWORD, MIRA } from './demo-staff.ts';
import { jobsStory } from './jobs/jobs-story.ts';
import { makeRecords } from './make-records.ts';
import { sweepStory } from './measurements/take-sweeps.ts';
import { quietDeps } from './quiet-deps.ts';
import { setUpShop } from './set-up-shop.ts';
import { tellStory } from './story.ts';
import { surveyStory } from './surveys/take-surveys.ts';

export type DemoShop = { readonly shopId: string; readonly email: string; readonly password: string };

const ZONE = 'Europe/Berlin';
/** Open days before today. */
const FOUNDED_DAYS_AGO = 90;

export async function seedDemoShop(deps: Deps): Promise<DemoShop> {
  const calendar = demoCalendar(deps.clock.now(), ZONE);
  const { deps: quiet, story } = quietDeps(deps);
  story.moveTo(calendar.at(-FOUNDED_DAYS_AGO, '08:00'));
  const staff = await setUpShop(quiet, calendar);
  const records = await makeRecords(staff, calendar);
  const measuring = surveyStory({ staff, models: records.models, calendar });
  const { surveys } = measuring;
  const jobs = jobsStory({ deps: quiet, staff, records, surveys, calendar });
  const sweeping = sweepStory({ staff, records, calendar });
  await tellStory(story, [...measuring.steps, ...sweeping, ...jobs]);
  return { shopId: staff.shopId, email: MIRA.email, password: DEMO_PASSWORD };
}

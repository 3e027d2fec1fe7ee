// Measures the demo's vehicles through the API, one letter after the other, as somebody with a tape does.
import { defaultPlusMinus } from '@gusset/cargo';
import type { Dimension, MeasuringMethod } from '@gusset/contracts/cargo';
import { NO_EXTRAS, type Reading } from '@gusset/contracts/survey';
import { surveyForm } from '@gusset/sheets';
import { isRefusal, type LengthUnit, parseAngle } from '@gusset/units';
import type { DemoCalendar } from '../demo-calendar.ts';
import type { Caller } from '../demo-staff.ts';
import { formKey } from '../form-key.ts';
import { type Ids, idsIn } from '../make-records.ts';
import type { StoryClock } from '../quiet-deps.ts';
import type { DemoStaff } from '../set-up-shop.ts';
import { length } from '../typed.ts';
import { HATCH_SURVEYS } from './boots-with-a-hatch.ts';
import { CAB_SURVEYS } from './cabs.ts';
import type { DemoReadings, DemoSurvey } from './demo-survey.ts';
import { SALOON_SURVEYS } from './saloon-boots.ts';

type Taking = {
  readonly staff: DemoStaff;
  readonly models: Ids;
  readonly calendar: DemoCalendar;
  readonly story: StoryClock;
};

/** Answers the id of each survey's first revision by the demo's name for it. */
export async function takeSurveys(taking: Taking): Promise<Ids> {
  const surveys = [...HATCH_SURVEYS, ...SALOON_SURVEYS, ...CAB_SURVEYS];
  const ids = new Map<string, string>();
  for (const survey of surveys) ids.set(survey.name, await take(taking, survey));
  return idsIn('survey', ids);
}

async function take({ staff, models, calendar, story }: Taking, survey: DemoSurvey): Promise<string> {
  const { name, formKind, spaceName, seatState, free = null, extras, notes = '' } = survey;
  const caller = staff[survey.takenBy];
  story.moveTo(calendar.at(-survey.daysAgo, '09:20'));
  const modelId = models.of(survey.model);
  const begun = await caller.survey.create({
    key: formKey(`survey ${name}`),
    survey: { modelId, formKind, spaceName, seatState, free },
  });
  const { id: surveyId } = begun;
  await measure({ caller, surveyId, survey, readings: survey.readings, round: 'first' });
  if (extras !== undefined) {
    const { version } = await caller.survey.read({ surveyId });
    await caller.survey.setExtras({ surveyId, version, extras: { ...NO_EXTRAS, ...extras, free } });
  }
  await describe(caller, surveyId, { notes });
  if (survey.settled) await caller.survey.settle({ surveyId });
  return surveyId;
}

/** After the jobs that rest on the first revision: the letters that came out differently. */
export async function measureAgain({ staff, calendar, story }: Taking, surveys: Ids): Promise<void> {
  for (const survey of HATCH_SURVEYS) {
    if (survey.again === undefined) continue;
    const surveyId = surveys.of(survey.name);
    const caller = staff[survey.takenBy];
    story.moveTo(calendar.at(-survey.again.daysAgo, '13:40'));
    const { readings, notes } = survey.again;
    const newest = await measure({ caller, surveyId, survey, readings, round: 'again' });
    await describe(caller, newest, { notes, takenOn: calendar.day(-survey.again.daysAgo) });
    await caller.survey.settle({ surveyId: newest });
  }
}

type Measuring = {
  readonly caller: Caller;
  readonly surveyId: string;
  readonly survey: DemoSurvey;
  readonly readings: DemoReadings;
  readonly round: string;
};

/** Answers the revision that the readings went to: a settled one is followed by the next. */
async function measure({ caller, surveyId, survey, readings, round }: Measuring): Promise<string> {
  const form = surveyForm(survey.formKind, survey.free ?? null);
  if (isRefusal(form)) throw new Error(`the demo's form ${survey.name}: ${form.refusal.why}`);
  let { id: at, readings: taken } = await caller.survey.read({ surveyId });
  for (const [key, entry] of Object.entries(readings)) {
    const dimension = form.dimensions.find((known) => known.key === key);
    if (dimension === undefined)
      throw new Error(`the demo measures ${key}, which ${form.name} does not have`);
    const { typed, method } = typeof entry === 'string' ? { typed: entry, method: 'tape' as const } : entry;
    const view = await caller.survey.setReading({
      key: formKey(`${round} ${survey.name} ${key}`),
      reading: {
        surveyId: at,
        version: taken.find((reading) => reading.key === key)?.version ?? 0,
        reading: toReading({ dimension, typed, method, unit: survey.unit }),
        takenAt: null,
      },
    });
    ({ id: at, readings: taken } = view);
  }
  return at;
}

function toReading(options: {
  readonly dimension: Dimension;
  readonly typed: string;
  readonly method: MeasuringMethod;
  readonly unit: LengthUnit;
}): Reading {
  const { dimension, typed, method, unit } = options;
  const plusMinus = defaultPlusMinus(dimension, method);
  const value = dimension.unit === 'angle' ? angleOf(typed) : length(typed, unit).mm;
  return { key: dimension.key, value, typed, plusMinus, method };
}

function angleOf(typed: string): number {
  const read = parseAngle(typed);
  if (isRefusal(read)) throw new Error(`the demo types an angle that nobody can read: ${typed}`);
  return read.angleRad;
}

async function describe(
  caller: Caller,
  surveyId: string,
  change: { readonly notes: string; readonly takenOn?: string },
): Promise<void> {
  const { spaceName, seatState, takenOn, notes } = await caller.survey.read({ surveyId });
  const before = { spaceName, seatState, takenOn, notes };
  await caller.survey.describe({ surveyId, before, details: { ...before, ...change } });
}

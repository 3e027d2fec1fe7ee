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
import type { DemoStaff } from '../set-up-shop.ts';
import type { StoryStep } from '../story.ts';
import { length } from '../typed.ts';
import { HATCH_SURVEYS } from './boots-with-a-hatch.ts';
import { CAB_SURVEYS } from './cabs.ts';
import type { DemoReadings, DemoSurvey } from './demo-survey.ts';
import { SALOON_SURVEYS } from './saloon-boots.ts';

type Taking = {
  readonly staff: DemoStaff;
  readonly models: Ids;
  readonly calendar: DemoCalendar;
};

export type SurveyStory = {
  readonly steps: readonly StoryStep[];
  /** First revision of each survey by the demo's name for it, once it was taken. */
  readonly surveys: Ids;
};

export function surveyStory(taking: Taking): SurveyStory {
  const ids = new Map<string, string>();
  const surveys = idsIn('survey', ids);
  const { calendar } = taking;
  const steps = [...HATCH_SURVEYS, ...SALOON_SURVEYS, ...CAB_SURVEYS].flatMap((survey): StoryStep[] => {
    const first: StoryStep = {
      at: calendar.at(-survey.daysAgo, '09:20'),
      async tell() {
        ids.set(survey.name, await take(taking, survey));
      },
    };
    const { again } = survey;
    if (again === undefined) return [first];
    const second: StoryStep = {
      at: calendar.at(-again.daysAgo, '13:40'),
      tell: () => measureAgain(taking, survey, { ...again, surveyId: surveys.of(survey.name) }),
    };
    return [first, second];
  });
  return { steps, surveys };
}

async function take({ staff, models }: Taking, survey: DemoSurvey): Promise<string> {
  const { name, formKind, spaceName, seatState, free = null, extras, notes = '' } = survey;
  const caller = staff[survey.takenBy];
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

/** The letters that came out differently on another day: they make the next revision. */
async function measureAgain(
  { staff, calendar }: Taking,
  survey: DemoSurvey,
  again: NonNullable<DemoSurvey['again']> & { readonly surveyId: string },
): Promise<void> {
  const caller = staff[survey.takenBy];
  const { surveyId, readings, notes } = again;
  const newest = await measure({ caller, surveyId, survey, readings, round: 'again' });
  await describe(caller, newest, { notes, takenOn: calendar.day(-again.daysAgo) });
  await caller.survey.settle({ surveyId: newest });
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

import { randomUUID } from 'node:crypto';
import type { Reading } from '@gusset/contracts/survey';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { shopErrorOf, startTestApi, type TestApi, type TestPerson } from './support/harness.ts';

let api: TestApi;
let owner: TestPerson;
let technician: TestPerson;

beforeAll(async () => {
  api = await startTestApi();
  owner = await api.owner();
  technician = await api.member(owner, 'technician');
});
afterAll(() => api.close());

async function modelOf(person: TestPerson): Promise<string> {
  const { id } = await api.deps.doors.inShop(person.shopId, (tx) =>
    tx.vehicleModel.create({
      data: {
        shopId: person.shopId,
        make: 'Halden',
        model: 'Brisk',
        yearFrom: 2021,
        yearTo: 2024,
        body: 'hatch',
      },
      select: { id: true },
    }),
  );
  return id;
}

async function hatchSurvey(person: TestPerson, spaceName = '') {
  const modelId = await modelOf(person);
  return person.api.survey.create.mutate({
    key: randomUUID(),
    survey: { modelId, formKind: 'hatch-estate', spaceName, seatState: 'seats up' },
  });
}

function reading(key: string, value: number, plusMinus = 0): Reading {
  return { key, value, typed: String(value), plusMinus, method: 'tape' };
}

/** A rectangle on paper: 800 deep, 500 high, open at its whole rear, 1000 wide, way in 950. */
const RECTANGLE = [
  reading('floorDepth', 800),
  reading('seatHeight', 500),
  reading('opening', 500),
  reading('roofDepth', 800),
  reading('sillHeight', 0),
  reading('seatLean', 0),
  reading('openingWidth', 950),
  reading('archWidth', 1000),
];

function take(person: TestPerson, surveyId: string, taken: Reading, version = 0, key: string = randomUUID()) {
  return person.api.survey.setReading.mutate({ key, reading: { surveyId, version, reading: taken } });
}

async function measured(person: TestPerson) {
  const survey = await hatchSurvey(person);
  for (const each of RECTANGLE) await take(person, survey.id, each);
  return person.api.survey.read.query({ surveyId: survey.id });
}

describe('two people measuring', () => {
  it('merge when they take different letters', async () => {
    const { id } = await hatchSurvey(owner);
    await Promise.all([
      take(owner, id, reading('floorDepth', 812, 4.5)),
      take(technician, id, reading('seatHeight', 498.5, 4.5)),
    ]);
    const survey = await owner.api.survey.read.query({ surveyId: id });
    expect(survey.readings.map(({ key, takenBy }) => [key, takenBy])).toEqual([
      ['floorDepth', 'Mira Ilves'],
      ['seatHeight', 'technician person'],
    ]);
    expect(survey.takenBy.split(', ').sort()).toEqual(['Mira Ilves', 'technician person']);
  });

  it('are asked when they take the same letter, and the first reading stands', async () => {
    const { id } = await hatchSurvey(owner);
    await take(owner, id, reading('opening', 597));
    const refused = await shopErrorOf(take(technician, id, reading('opening', 603)));
    expect(refused).toMatchObject({
      code: 'CHANGED_MEANWHILE',
      conflict: {
        currentVersion: 1,
        savedBy: 'Mira Ilves',
        differences: [
          { field: 'opening', yours: { value: 603 }, theirs: { value: 597, takenBy: 'Mira Ilves' } },
        ],
      },
    });
    const resolved = await take(technician, id, reading('opening', 603), 1);
    expect(resolved.readings).toMatchObject([{ value: 603, version: 2, takenBy: 'technician person' }]);
  });

  it('are not asked when both read the same', async () => {
    const { id } = await hatchSurvey(owner);
    await take(owner, id, reading('opening', 597));
    const same = await take(technician, id, reading('opening', 597));
    expect(same.readings).toMatchObject([{ takenBy: 'Mira Ilves', version: 1 }]);
  });
});

describe('a reading sent again from a phone', () => {
  it('takes effect once', async () => {
    const { id } = await hatchSurvey(owner);
    const key = randomUUID();
    const sends = Array.from({ length: 8 }, () => take(owner, id, reading('opening', 597), 0, key));
    const answers = await Promise.all(sends);
    expect(new Set(answers.map(({ readings }) => readings[0]?.version))).toEqual(new Set([1]));
  });

  it('keeps when it was measured, not when it arrived', async () => {
    const { id } = await hatchSurvey(owner);
    const takenAt = '2026-01-15T09:30:00.000Z';
    const survey = await owner.api.survey.setReading.mutate({
      key: randomUUID(),
      reading: { surveyId: id, version: 0, reading: reading('opening', 597), takenAt },
    });
    expect(survey.readings[0]?.takenAt).toBe(takenAt);
    expect(survey.takenOn).toBe('2026-01-15');
  });

  it('is refused at its field where it cannot be', async () => {
    const { id } = await hatchSurvey(owner);
    const refused = await shopErrorOf(take(owner, id, reading('opening', 5)));
    expect(refused).toMatchObject({ code: 'REFUSED_BY_ENGINE', fields: [{ path: 'reading.value' }] });
    const unknown = await shopErrorOf(take(owner, id, reading('mastHeight', 500)));
    expect(unknown).toMatchObject({ code: 'NOT_ACCEPTED', fields: [{ path: 'reading.key' }] });
  });
});

describe('settling', () => {
  it('names the letters that are still missing', async () => {
    const { id } = await hatchSurvey(owner);
    const refused = await shopErrorOf(owner.api.survey.settle.mutate({ surveyId: id }));
    expect(refused.code).toBe('SHEET_INCOMPLETE');
    expect(refused.fields.map(({ path }) => path)).toEqual(RECTANGLE.map(({ key }) => key));
  });

  it('closes the revision: measuring on makes the next one with the values copied', async () => {
    const first = await measured(owner);
    const settled = await owner.api.survey.settle.mutate({ surveyId: first.id });
    expect(settled.settledAt).not.toBeNull();
    const next = await take(technician, first.id, reading('seatHeight', 492), 1);
    expect(next.id).not.toBe(first.id);
    expect(next).toMatchObject({ revision: 2, settledAt: null, takenCount: RECTANGLE.length });
    const before = await owner.api.survey.read.query({ surveyId: first.id });
    expect(before.readings.find(({ key }) => key === 'seatHeight')?.value).toBe(500);
    // A second late reading for the settled revision joins the same next one.
    const joined = await take(owner, first.id, reading('opening', 496), 1);
    expect(joined.id).toBe(next.id);
  });

  it('makes one next revision when two people measure on at once', async () => {
    const first = await measured(owner);
    await owner.api.survey.settle.mutate({ surveyId: first.id });
    const [a, b] = await Promise.all([
      take(owner, first.id, reading('seatHeight', 492), 1),
      take(technician, first.id, reading('opening', 495), 1),
    ]);
    expect(a.id).toBe(b.id);
    const { revisions } = await owner.api.survey.read.query({ surveyId: a.id });
    expect(revisions.map(({ revision }) => revision)).toEqual([2, 1]);
  });
});

describe('a space of a model', () => {
  it('has one survey; a second needs a name of its own', async () => {
    const { modelId } = await hatchSurvey(owner);
    const again = (spaceName: string) =>
      owner.api.survey.create.mutate({
        key: randomUUID(),
        survey: { modelId, formKind: 'hatch-estate', spaceName },
      });
    expect(await shopErrorOf(again(''))).toMatchObject({
      code: 'NAME_TAKEN',
      fields: [{ path: 'spaceName' }],
    });
    expect((await again('floor out')).spaceName).toBe('floor out');
    const { surveys } = await owner.api.survey.ofModel.query({ modelId });
    expect(surveys.map(({ spaceName }) => spaceName)).toEqual(['', 'floor out']);
  });

  it('goes away and comes back with all its revisions', async () => {
    const { id, modelId } = await hatchSurvey(owner);
    await owner.api.survey.archive.mutate({ surveyId: id, archived: true });
    expect((await owner.api.survey.ofModel.query({ modelId })).surveys).toEqual([]);
    expect((await shopErrorOf(take(owner, id, reading('opening', 597)))).code).toBe('NOT_ACCEPTED');
    await owner.api.survey.archive.mutate({ surveyId: id, archived: false });
    expect((await owner.api.survey.ofModel.query({ modelId })).surveys).toHaveLength(1);
  });

  it('of another shop is not there', async () => {
    const other = await api.owner('Harbour Lane Audio');
    const survey = await hatchSurvey(other);
    expect((await shopErrorOf(owner.api.survey.read.query({ surveyId: survey.id }))).code).toBe('NOT_FOUND');
    expect((await shopErrorOf(take(owner, survey.id, reading('opening', 597)))).code).toBe('NOT_FOUND');
    const untouched = await other.api.survey.read.query({ surveyId: survey.id });
    expect(untouched.readings).toEqual([]);
  });

  it('is not measured by the office', async () => {
    const office = await api.member(owner, 'office');
    const { id } = await hatchSurvey(owner);
    expect((await shopErrorOf(take(office, id, reading('opening', 597)))).code).toBe('NOT_ALLOWED');
  });
});

describe('what stands in the space', () => {
  it('is saved over the version that was seen', async () => {
    const { id, version, extras } = await hatchSurvey(owner);
    const at = (mm: number) => ({ mm, typed: String(mm), unit: 'mm' as const });
    const corners = [
      { x: at(0), y: at(0) },
      { x: at(90), y: at(0) },
      { x: at(90), y: at(120) },
    ];
    const arm = {
      id: 'arm',
      name: 'Hinge arm',
      corners,
      left: at(-440),
      right: at(-400),
      plusMinusMm: 4,
      appliesTo: 'fit',
      moves: true,
    } as const;
    const saved = await owner.api.survey.setExtras.mutate({
      surveyId: id,
      version,
      extras: { ...extras, obstructions: [arm] },
    });
    expect(saved.extras.obstructions).toEqual([arm]);
    const refused = await shopErrorOf(
      technician.api.survey.setExtras.mutate({ surveyId: id, version, extras: { ...extras, keepFree: [] } }),
    );
    expect(refused.conflict).toMatchObject({
      savedBy: 'Mira Ilves',
      differences: [{ field: 'obstructions' }],
    });
  });

  it('keeps readings at their station when another comes between', async () => {
    const modelId = await modelOf(owner);
    const at = (mm: number) => ({ mm, typed: String(mm), unit: 'mm' as const });
    const free = (...mm: number[]) => ({ by: 'stations' as const, stations: mm.map(at) });
    const survey = await owner.api.survey.create.mutate({
      key: randomUUID(),
      survey: { modelId, formKind: 'free-section', free: free(0, 400) },
    });
    const taken = await take(owner, survey.id, reading('up-1', 380, 2));
    const changed = await owner.api.survey.setExtras.mutate({
      surveyId: survey.id,
      version: taken.version,
      extras: { ...taken.extras, free: free(0, 200, 400) },
    });
    expect(changed.readings).toMatchObject([{ key: 'up-2', value: 380 }]);
  });
});

describe('sheet 02', () => {
  async function jobWith(surveyId: string) {
    const customer = await api.deps.doors.inShop(owner.shopId, (tx) =>
      tx.customer.create({ data: { shopId: owner.shopId, name: 'R. Okafor' }, select: { id: true } }),
    );
    const job = await owner.api.job.open.mutate({
      key: randomUUID(),
      job: { title: 'Bass box behind the seat', customerId: customer.id },
    });
    const saved = await owner.api.sheet.survey.save.mutate({
      jobId: job.id,
      version: 0,
      input: { surveyId, stateId: null, notes: '' },
    });
    return { job, saved };
  }

  it('settles the survey when it is issued and notes that the job is measured', async () => {
    const survey = await measured(owner);
    const { job, saved } = await jobWith(survey.id);
    expect(saved.outcome).toMatchObject({
      state: 'ready',
      result: { cavity: { opening: { heightMm: 500 } } },
    });
    const issued = await owner.api.sheet.survey.issue.mutate({ jobId: job.id, version: saved.version });
    expect(issued.issue?.revision).toBe('A');
    expect(issued.changes).toEqual([]);
    expect((await owner.api.survey.read.query({ surveyId: survey.id })).settledAt).not.toBeNull();
    const { job: after } = await owner.api.job.byNumber.query({ number: job.number });
    expect(after.standing).toBe('surveyed');
  });

  it('raises the delta with what differs once a newer revision is settled, and not before', async () => {
    const survey = await measured(owner);
    const { job, saved } = await jobWith(survey.id);
    await owner.api.sheet.survey.issue.mutate({ jobId: job.id, version: saved.version });
    const next = await take(technician, survey.id, reading('seatHeight', 492), 1);
    const changes = async () => (await owner.api.sheet.survey.read.query({ jobId: job.id })).changes;
    expect(await changes()).toEqual([]);
    await technician.api.survey.settle.mutate({ surveyId: next.id });
    expect(await changes()).toMatchObject([
      { label: 'Survey', before: 'revision 1', after: 'revision 2' },
      { label: 'B · Height at the seat back', before: '500 ±0 mm', after: '492 ±0 mm' },
    ]);
  });

  it('carries what reads otherwise in this car into the revisions that follow, and tells the sheets below', async () => {
    const survey = await measured(owner);
    const { job, saved } = await jobWith(survey.id);
    const { version } = await owner.api.sheet.survey.issue.mutate({ jobId: job.id, version: saved.version });
    const boxOf = () => owner.api.sheet.box.read.query({ jobId: job.id });
    const before = await boxOf();
    expect(before.upstream.survey?.cavity.polygon).toContainEqual({ xMm: 0, yMm: 500 });

    // This car's roof lining hangs lower than the model's.
    const next = await take(technician, survey.id, reading('floorDepth', 796), 1);
    await technician.api.survey.settle.mutate({ surveyId: next.id });
    const moved = await owner.api.sheet.survey.save.mutate({
      jobId: job.id,
      version,
      input: { surveyId: next.id, stateId: null, notes: '', deltas: [reading('seatHeight', 488)] },
    });
    expect(moved.outcome).toMatchObject({
      state: 'ready',
      result: { revision: 2, deltas: [{ key: 'seatHeight', model: 500, car: 488 }] },
    });
    const issued = await owner.api.sheet.survey.issue.mutate({ jobId: job.id, version: moved.version });
    expect(issued.issue?.revision).toBe('B');
    expect((await boxOf()).upstream.survey?.cavity.polygon).toEqual(
      expect.arrayContaining([
        { xMm: 796, yMm: 0 },
        { xMm: 0, yMm: 488 },
      ]),
    );
    // The model keeps its own reading: the next job starts from it.
    const model = await owner.api.survey.read.query({ surveyId: next.id });
    expect(model.readings.find(({ key }) => key === 'seatHeight')).toMatchObject({ value: 500 });
  });

  it('is not issued from a half measured space', async () => {
    const survey = await hatchSurvey(owner);
    const { job, saved } = await jobWith(survey.id);
    const refused = await shopErrorOf(
      owner.api.sheet.survey.issue.mutate({ jobId: job.id, version: saved.version }),
    );
    expect(refused.code).toBe('SHEET_INCOMPLETE');
    expect(refused.fields[0]).toMatchObject({ path: 'floorDepth' });
  });
});

describe('the blank measuring sheet', () => {
  it('prints as a PDF for people of the shop only', async () => {
    const { id } = await hatchSurvey(owner);
    const get = (person: TestPerson) =>
      api.app.inject({
        method: 'GET',
        url: `/api/papers/survey-sheet/${id}?paper=Letter`,
        headers: { cookie: person.cookies },
      });
    const paper = await get(technician);
    expect(paper.headers['content-type']).toBe('application/pdf');
    expect(paper.rawPayload.subarray(0, 5).toString('latin1')).toBe('%PDF-');
    expect((await get(await api.owner('Harbour Lane Audio'))).statusCode).toBe(404);
  });
});

describe('the description of a survey', () => {
  it('renames every revision of the space and refuses a name that another space has', async () => {
    const first = await measured(owner);
    await owner.api.survey.settle.mutate({ surveyId: first.id });
    const next = await take(owner, first.id, reading('opening', 496), 1);
    const before = { spaceName: '', seatState: 'seats up', takenOn: next.takenOn, notes: '' };
    const details = { ...before, spaceName: 'boot', notes: 'trim on' };
    const named = await owner.api.survey.describe.mutate({ surveyId: next.id, before, details });
    expect(named).toMatchObject({ spaceName: 'boot', notes: 'trim on' });
    expect((await owner.api.survey.read.query({ surveyId: first.id })).spaceName).toBe('boot');
    const stale = owner.api.survey.describe.mutate({
      surveyId: next.id,
      before,
      details: { ...before, notes: 'x' },
    });
    expect((await shopErrorOf(stale)).code).toBe('CHANGED_MEANWHILE');
  });
});

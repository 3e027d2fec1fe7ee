import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { shopErrorOf, startTestApi, type TestApi, type TestPerson } from './support/harness.ts';

let api: TestApi;
let owner: TestPerson;

beforeAll(async () => {
  api = await startTestApi();
  owner = await api.owner();
});
afterAll(() => api.close());

async function customerOf(person: TestPerson): Promise<string> {
  const { id } = await api.deps.doors.inShop(person.shopId, (tx) =>
    tx.customer.create({ data: { shopId: person.shopId, name: 'R. Okafor' }, select: { id: true } }),
  );
  return id;
}

async function openJob(person: TestPerson, title = 'Bass box behind the seat') {
  return person.api.job.open.mutate({
    key: randomUUID(),
    job: { title, customerId: await customerOf(person) },
  });
}

describe('opening a job', () => {
  it('numbers jobs one after the other', async () => {
    const first = await openJob(owner);
    const second = await openJob(owner);
    expect(second.number).toBe(first.number + 1);
    expect(first.standing).toBe('enquiry');
  });

  it('takes effect once for fifty parallel sends of one key', async () => {
    const key = randomUUID();
    const customerId = await customerOf(owner);
    const sends = Array.from({ length: 50 }, () =>
      owner.api.job.open.mutate({ key, job: { title: 'Once', customerId } }),
    );
    const jobs = await Promise.all(sends);
    expect(new Set(jobs.map((job) => job.id)).size).toBe(1);
  });

  it('refuses the same key with other contents', async () => {
    const key = randomUUID();
    const customerId = await customerOf(owner);
    await owner.api.job.open.mutate({ key, job: { title: 'A', customerId } });
    const refused = await shopErrorOf(owner.api.job.open.mutate({ key, job: { title: 'B', customerId } }));
    expect(refused.code).toBe('SAME_KEY_OTHER_REQUEST');
  });

  it('refuses a customer of another shop at the field', async () => {
    const other = await api.owner('Harbour Lane Audio');
    const customerId = await customerOf(other);
    const refused = await shopErrorOf(
      owner.api.job.open.mutate({ key: randomUUID(), job: { title: 'X', customerId } }),
    );
    expect(refused).toMatchObject({ code: 'NOT_ACCEPTED', fields: [{ path: 'customerId' }] });
  });
});

describe('a sheet of a job', () => {
  it('is empty, then a draft, then issued, then a draft again when it is changed', async () => {
    const job = await openJob(owner);
    const mark = async () =>
      (await owner.api.job.byNumber.query({ number: job.number })).sheets.find(({ kind }) => kind === 'brief')
        ?.mark;
    expect(await mark()).toBe('empty');
    const { input } = await owner.api.sheet.brief.read.query({ jobId: job.id });
    const saved = await owner.api.sheet.brief.save.mutate({
      jobId: job.id,
      version: 0,
      input: { ...input, wish: 'Deep, for long trips', aim: 'deep' },
    });
    expect(await mark()).toBe('draft');
    const issued = await owner.api.sheet.brief.issue.mutate({ jobId: job.id, version: saved.version });
    expect(issued.issue?.revision).toBe('A');
    expect(await mark()).toBe('issued');
    await owner.api.sheet.brief.save.mutate({
      jobId: job.id,
      version: saved.version,
      input: { ...saved.input, aim: 'loud' },
    });
    expect(await mark()).toBe('draft');
  });

  it('gives no new revision when nothing changed', async () => {
    const job = await openJob(owner);
    const { input } = await owner.api.sheet.brief.read.query({ jobId: job.id });
    const saved = await owner.api.sheet.brief.save.mutate({
      jobId: job.id,
      version: 0,
      input: { ...input, wish: 'Loud', aim: 'loud' },
    });
    await owner.api.sheet.brief.issue.mutate({ jobId: job.id, version: saved.version });
    const again = await owner.api.sheet.brief.issue.mutate({ jobId: job.id, version: saved.version });
    expect(again.issue?.revision).toBe('A');
  });

  it('tells the second of two editors both values and who saved', async () => {
    const estimator = await api.member(owner, 'estimator');
    const job = await openJob(owner);
    const { input } = await owner.api.sheet.brief.read.query({ jobId: job.id });
    await owner.api.sheet.brief.save.mutate({
      jobId: job.id,
      version: 0,
      input: { ...input, wish: 'first', place: 'boot' },
    });
    const refused = await shopErrorOf(
      estimator.api.sheet.brief.save.mutate({
        jobId: job.id,
        version: 0,
        input: { ...input, wish: 'second', place: 'boot' },
      }),
    );
    expect(refused.code).toBe('CHANGED_MEANWHILE');
    expect(refused.conflict).toMatchObject({
      savedBy: 'Mira Ilves',
      differences: [{ field: 'wish', yours: 'second', theirs: 'first' }],
    });
  });

  it('names what is missing when it is issued too early', async () => {
    const job = await openJob(owner);
    const { input } = await owner.api.sheet.brief.read.query({ jobId: job.id });
    const saved = await owner.api.sheet.brief.save.mutate({
      jobId: job.id,
      version: 0,
      input: { ...input, wish: 'Something' },
    });
    const refused = await shopErrorOf(
      owner.api.sheet.brief.issue.mutate({ jobId: job.id, version: saved.version }),
    );
    expect(refused).toMatchObject({ code: 'SHEET_INCOMPLETE', fields: [{ path: 'aim' }] });
  });

  it('of another shop is not there', async () => {
    const other = await api.owner('Harbour Lane Audio');
    const job = await openJob(other);
    expect((await shopErrorOf(owner.api.sheet.brief.read.query({ jobId: job.id }))).code).toBe('NOT_FOUND');
  });
});

describe('sign-in', () => {
  it('is needed for everything in a shop', async () => {
    expect((await shopErrorOf(api.client('').shop.current.query())).code).toBe('SIGN_IN_FIRST');
  });

  it('gives a person without a shop a way on', async () => {
    const person = await api.signUp('New Person');
    expect((await shopErrorOf(api.client(person.cookies).job.list.query({}))).code).toBe('NOT_ALLOWED');
    expect(await api.client(person.cookies).shop.mine.query()).toEqual([]);
  });
});

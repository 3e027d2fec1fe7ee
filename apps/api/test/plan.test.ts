// The shop's plan across jobs: what one job's part or one person's leave does to another job's promise.
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { jobWith, partFor, personWith } from './support/bay-jobs.ts';
import { shopErrorOf, startTestApi, type TestApi, type TestPerson } from './support/harness.ts';

let api: TestApi;
/** Tuesday, 8:00 in Berlin. */
const at = { now: new Date('2026-11-24T07:00:00Z') };

beforeAll(async () => {
  api = await startTestApi({ clock: { now: () => at.now } });
});
afterAll(() => api.close());

/** One electrician for both jobs. The first in the queue waits for a part; the second waits for the electrician. */
async function twoJobs(shopName: string) {
  const owner = await api.owner(shopName);
  const electrician = await personWith(api, owner, 'Sato', ['wire']);
  const first = await jobWith(api, owner, {
    number: 101,
    rank: 0,
    tasks: [{ key: 'mount', title: 'Mount amplifier', skill: 'wire', minutes: 480 }],
  });
  const part = await partFor(api, owner, {
    jobId: first.id,
    taskId: first.taskId('mount'),
    expectedOn: '2026-11-24',
  });
  const second = await jobWith(api, owner, {
    number: 102,
    rank: 1,
    tasks: [
      { key: 'cable', title: 'Run power cable', skill: 'wire', minutes: 480, earliestOn: '2026-11-25' },
    ],
  });
  return { owner, electrician, first, second, part };
}

const promiseOf = async (owner: TestPerson, jobId: string) =>
  (await owner.api.plan.current.query()).plan.jobs.find((job) => job.jobId === jobId)?.promiseOn;

describe('the shop’s plan', () => {
  it('names person and task of the other job when leave moves both promises', async () => {
    const { owner, electrician, second } = await twoJobs('Leave');
    const before = await promiseOf(owner, second.id);
    const asked = await owner.api.plan.whatIf.query({
      kind: 'leave',
      personId: electrician.id,
      fromOn: '2026-11-24',
      toOn: '2026-11-27',
    });
    const move = asked.moved.find(({ jobId }) => jobId === second.id);
    expect(move?.movedDays).toBeGreaterThan(0);
    expect(move?.because).toMatchObject({
      code: 'person-away',
      personName: 'Sato',
      heldTitle: 'Mount amplifier',
    });
    expect(await promiseOf(owner, second.id)).toBe(before);

    const leave = await owner.api.leave.add.mutate({
      key: randomUUID(),
      leave: { personId: electrician.id, fromOn: '2026-11-24', toOn: '2026-11-27', note: '' },
    });
    const { moved, because } = await owner.api.plan.current.query();
    expect(because).toContain('Sato is away');
    expect(moved.map(({ jobId }) => jobId)).toContain(second.id);
    await owner.api.leave.remove.mutate({ id: leave.id });
    expect(await promiseOf(owner, second.id)).toBe(before);
  });

  it('moves the other job when a part of the first comes two days later and turns are kept', async () => {
    const { owner, first, second, part } = await twoJobs('Part');
    const asked = await owner.api.plan.whatIf.query({
      kind: 'part',
      jobId: first.id,
      lineKey: part.key,
      expectedOn: '2026-11-26',
    });
    const own = asked.moved.find(({ jobId }) => jobId === first.id);
    expect(own?.because).toMatchObject({ code: 'part-due', heldTitle: 'Mount amplifier' });
    const other = asked.moved.find(({ jobId }) => jobId === second.id);
    expect(other?.movedDays).toBeGreaterThan(0);
    // Its electrician stands at the first job's task, which the part holds: that is where it begins.
    expect(other?.because).toMatchObject({
      code: 'part-due',
      heldTaskId: first.taskId('mount'),
      heldTitle: 'Mount amplifier',
      description: 'Amplifier',
    });

    const [delivery] = await owner.api.delivery.ofJob.query({ jobId: first.id });
    await owner.api.delivery.set.mutate({
      jobId: first.id,
      lineKey: part.key,
      version: delivery?.version ?? 0,
      expectedOn: '2026-11-26',
      received: false,
    });
    const { moved, because } = await owner.api.plan.current.query();
    expect(because).toBe('Amplifier: another date');
    expect(moved.map(({ jobId }) => jobId)).toContain(first.id);
  });

  it('promises a date once, and shows the second of two both values', async () => {
    const { owner, first } = await twoJobs('Promise');
    const job = (await owner.api.plan.current.query()).jobs.find(({ id }) => id === first.id);
    const promise = { jobId: first.id, version: job?.version ?? 0 };
    const view = await owner.api.plan.promise.mutate({ ...promise, promisedOn: '2026-11-24' });
    expect(view.plan.jobs.find(({ jobId }) => jobId === first.id)).toMatchObject({
      promisedOn: '2026-11-24',
    });
    const refused = await shopErrorOf(
      owner.api.plan.promise.mutate({ ...promise, promisedOn: '2026-12-01' }),
    );
    expect(refused).toMatchObject({
      code: 'CHANGED_MEANWHILE',
      conflict: { differences: [{ field: 'promisedOn', yours: '2026-12-01', theirs: '2026-11-24' }] },
    });
  });

  it('leaves a pin aside once the person no longer does such work, and says so', async () => {
    const { owner, electrician, first } = await twoJobs('Unlearned');
    const other = await personWith(api, owner, 'Bello', ['wire']);
    await api.deps.doors.inShop(owner.shopId, async (tx) => {
      await tx.jobTask.updateMany({ where: { jobId: first.id }, data: { pinnedPersonId: electrician.id } });
    });
    expect((await owner.api.plan.current.query()).lapsedPins).toEqual([]);
    await api.deps.doors.inShop(owner.shopId, async (tx) => {
      await tx.person.updateMany({ where: { id: electrician.id }, data: { skills: ['fab'] } });
    });
    const { plan, lapsedPins } = await owner.api.plan.current.query();
    expect(plan.tasks.find(({ jobId }) => jobId === first.id)?.personId).toBe(other.id);
    expect(lapsedPins).toMatchObject([{ title: 'Mount amplifier', personName: 'Sato', skill: 'wire' }]);
  });

  it('plans on without somebody who has left', async () => {
    const { owner, electrician, first } = await twoJobs('Left');
    const other = await personWith(api, owner, 'Bello', ['wire']);
    await api.deps.doors.inShop(owner.shopId, async (tx) => {
      await tx.jobTask.updateMany({ where: { jobId: first.id }, data: { pinnedPersonId: electrician.id } });
      await tx.person.updateMany({ where: { id: electrician.id }, data: { archivedAt: at.now } });
    });
    const { plan } = await owner.api.plan.current.query();
    expect(plan.tasks.find(({ jobId }) => jobId === first.id)?.personId).toBe(other.id);
  });
});

import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { jobWith } from './support/bay-jobs.ts';
import { shopErrorOf, startTestApi, type TestApi, type TestPerson } from './support/harness.ts';

let api: TestApi;
let owner: TestPerson;
let technician: TestPerson;
const at = { now: new Date('2026-11-24T07:00:00Z') };
let number = 200;

beforeAll(async () => {
  api = await startTestApi({ clock: { now: () => at.now } });
  owner = await api.owner();
  technician = await api.member(owner, 'technician');
});
afterAll(() => api.close());

async function gluedBox() {
  at.now = new Date('2026-11-24T07:00:00Z');
  number += 1;
  const job = await jobWith(api, owner, {
    number,
    rank: 0,
    tasks: [
      { key: 'glue', title: 'Glue panels', minutes: 60, bayKind: null },
      { key: 'sand', title: 'Sand', minutes: 60, after: [{ key: 'glue', waitMinutes: 240 }] },
    ],
  });
  const versionOf = async (key: string) =>
    (await owner.api.plan.current.query()).tasks.find(({ id }) => id === job.taskId(key))?.version ?? 0;
  const on = async (key: string) => ({ taskId: job.taskId(key), version: await versionOf(key) });
  const standing = async () =>
    (
      await api.deps.doors.inShop(owner.shopId, (tx) =>
        tx.job.findFirstOrThrow({ where: { id: job.id }, select: { standing: true } }),
      )
    ).standing;
  return { job, on, standing };
}

describe('reporting on a task', () => {
  it('goes from the bay to the customer, and back when it was pressed by mistake', async () => {
    const { job, on, standing } = await gluedBox();
    await technician.api.task.start.mutate({ ...(await on('glue')), evenThough: null });
    expect(await standing()).toBe('in-bay');
    at.now = new Date('2026-11-24T08:30:00Z');
    await technician.api.task.finish.mutate({ ...(await on('glue')), workedMinutes: null });
    const worked = (await owner.api.plan.current.query()).tasks.find(
      ({ workedMinutes }) => workedMinutes === 90,
    );
    expect(worked?.finishedAt).toBe('2026-11-24T08:30:00.000Z');
    at.now = new Date('2026-11-24T13:00:00Z');
    await technician.api.task.start.mutate({ ...(await on('sand')), evenThough: null });
    const last = await on('sand');
    await technician.api.task.finish.mutate({ ...last, workedMinutes: 45 });
    expect(await standing()).toBe('handed-over');
    const view = await owner.api.plan.current.query();
    expect(view.jobs.find(({ id }) => id === job.id)?.isHandedOver).toBe(true);
    expect(view.plan.tasks.filter(({ jobId }) => jobId === job.id).map(({ state }) => state)).toEqual([
      'done',
      'done',
    ]);
    await technician.api.task.reopen.mutate({ ...last, version: last.version + 1 });
    expect(await standing()).toBe('in-bay');
  });

  it('leaves the lanes the day after it was handed over', async () => {
    const { job, on } = await gluedBox();
    await technician.api.task.start.mutate({ ...(await on('glue')), evenThough: null });
    await technician.api.task.finish.mutate({ ...(await on('glue')), workedMinutes: 60 });
    await technician.api.task.start.mutate({ ...(await on('sand')), evenThough: 'Fast glue was used' });
    await technician.api.task.finish.mutate({ ...(await on('sand')), workedMinutes: 30 });
    const isShown = async () => (await owner.api.plan.current.query()).jobs.some(({ id }) => id === job.id);
    at.now = new Date('2026-11-24T22:59:00Z'); // 23:59 at the shop
    expect(await isShown()).toBe(true);
    at.now = new Date('2026-11-24T23:00:00Z');
    expect(await isShown()).toBe(false);
  });

  it('counts a running task in shop hours, not through the night', async () => {
    const { job, on } = await gluedBox();
    at.now = new Date('2026-11-24T15:00:00Z'); // 16:00 at the shop, an hour before it closes
    await technician.api.task.start.mutate({ ...(await on('glue')), evenThough: null });
    at.now = new Date('2026-11-25T07:30:00Z');
    const { tasks } = await owner.api.plan.current.query();
    expect(tasks.find(({ id }) => id === job.taskId('glue'))?.workedMinutes).toBe(90);
  });

  it('names what it waits for, until a reason to begin is given', async () => {
    const { on } = await gluedBox();
    const early = await shopErrorOf(
      technician.api.task.start.mutate({ ...(await on('sand')), evenThough: null }),
    );
    expect(early).toMatchObject({ code: 'TASK_NOT_READY', message: 'Glue panels is not finished yet.' });
    await technician.api.task.start.mutate({ ...(await on('glue')), evenThough: null });
    at.now = new Date('2026-11-24T08:00:00Z');
    await technician.api.task.finish.mutate({ ...(await on('glue')), workedMinutes: null });
    const wet = await shopErrorOf(
      technician.api.task.start.mutate({ ...(await on('sand')), evenThough: null }),
    );
    expect(wet.message).toContain('Glue panels sets until');
    await technician.api.task.start.mutate({ ...(await on('sand')), evenThough: 'Fast glue was used' });
  });

  it('takes the first of two reports', async () => {
    const { on } = await gluedBox();
    const act = { ...(await on('glue')), evenThough: null };
    await technician.api.task.start.mutate(act);
    const second = await shopErrorOf(owner.api.task.start.mutate(act));
    expect(second.code).toBe('TASK_NOT_READY');
    const { taskId, version } = act;
    const stale = await shopErrorOf(owner.api.task.finish.mutate({ taskId, version, workedMinutes: 5 }));
    expect(stale.code).toBe('CHANGED_MEANWHILE');
  });

  it('is open to technicians, the promise is not', async () => {
    const { job } = await gluedBox();
    const refused = await shopErrorOf(
      technician.api.plan.promise.mutate({ jobId: job.id, version: 1, promisedOn: '2026-12-01' }),
    );
    expect(refused.code).toBe('NOT_ALLOWED');
  });

  it('says nothing of tasks of another shop', async () => {
    const { on } = await gluedBox();
    const stranger = await api.owner('Harbour Lane Audio');
    const refused = await shopErrorOf(
      stranger.api.task.start.mutate({ ...(await on('glue')), evenThough: null }),
    );
    expect(refused.code).toBe('NOT_FOUND');
  });
});

// After the approval: the tasks are planned, the customer is promised a day, parts are ordered and come in.
import { formKey } from '../form-key.ts';
import type { DemoWork } from './demo-work.ts';
import type { JobsShop } from './jobs-shop.ts';

type At = { readonly jobId: string; readonly jobName: string; readonly number: number };

export async function planAndPromise(
  { staff, calendar }: JobsShop,
  { jobId, number }: At,
  { comesIn }: DemoWork,
): Promise<void> {
  const { plan: sheet } = staff.daniel.sheet;
  const { input, version } = await sheet.read({ jobId });
  const earliestOn = comesIn === undefined ? null : calendar.day(comesIn);
  const pins = earliestOn === null ? [] : [{ taskKey: 'intake', personId: null, bayId: null, earliestOn }];
  const saved = await sheet.save({ jobId, version, input: { ...input, pins } });
  await sheet.issue({ jobId, version: saved.version });
  const { plan } = await staff.ines.plan.current();
  const promisedOn = plan.jobs.find((job) => job.jobId === jobId)?.promiseOn ?? null;
  const { job } = await staff.ines.job.byNumber({ number });
  await staff.ines.plan.promise({ jobId, version: job.version, promisedOn });
}

/** Everything on its ordinary day but the slow parts, which get a day of their own. */
export async function orderParts(shop: JobsShop, at: At, work: DemoWork): Promise<void> {
  const { staff, calendar } = shop;
  for (const delivery of await staff.ines.delivery.ofJob({ jobId: at.jobId })) {
    if (delivery.returnDueOn !== null) continue;
    const slow = slowPartOf(shop, at, work, delivery.lineKey);
    const dueIn = slow?.dueIn ?? work.partsTake - work.plannedDaysAgo;
    const { lineKey, version } = delivery;
    const expectedOn = calendar.day(dueIn);
    await staff.ines.delivery.set({ jobId: at.jobId, lineKey, version, expectedOn, received: false });
  }
}

export async function receiveParts(shop: JobsShop, at: At, work: DemoWork): Promise<void> {
  const { tomas } = shop.staff;
  for (const delivery of await tomas.delivery.ofJob({ jobId: at.jobId })) {
    if (slowPartOf(shop, at, work, delivery.lineKey) !== undefined) continue;
    const { lineKey, version, expectedOn } = delivery;
    await tomas.delivery.set({ jobId: at.jobId, lineKey, version, expectedOn, received: true });
  }
}

function slowPartOf({ records }: JobsShop, { jobName }: At, { slowParts = [] }: DemoWork, lineKey: string) {
  return slowParts.find(({ code }) => {
    const partId = records.parts.of(code);
    return lineKey === `hand:${formKey(`${jobName} ${code}`)}` || lineKey.endsWith(`:${partId}`);
  });
}

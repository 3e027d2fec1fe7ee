import { randomUUID } from 'node:crypto';
import type { PartsInput } from '@gusset/contracts/parts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { shopErrorOf, startTestApi, type TestApi, type TestPerson } from './support/harness.ts';

let api: TestApi;
let owner: TestPerson;
let technician: TestPerson;
const NOW = new Date('2026-11-24T09:00:00Z');

beforeAll(async () => {
  api = await startTestApi({ clock: { now: () => NOW } });
  owner = await api.owner();
  technician = await api.member(owner, 'technician');
});
afterAll(() => api.close());

/** A job with one fuse holder to buy from a supplier that needs four days. */
async function jobWithFuseHolder() {
  const customer = await owner.api.customer.create.mutate({
    key: randomUUID(),
    input: { name: 'Adaeze Okafor', phone: '', email: '', address: '', notes: '' },
  });
  const supplier = await owner.api.supplier.create.mutate({
    key: randomUUID(),
    input: {
      name: 'Ferrule & Daughter',
      kind: 'supplier',
      contact: '',
      email: '',
      phone: '',
      leadDays: 4,
      terms: '',
    },
  });
  const part = await owner.api.part.hardware.create.mutate({
    key: randomUUID(),
    input: {
      kind: 'hardware',
      maker: '',
      name: 'Fuse holder 80 A',
      code: '',
      unit: 'each',
      supplierId: supplier.id,
      buyPriceMinor: 1_400,
      sellPriceMinor: 2_400,
      stockQuantity: 0,
      leadDays: null,
      notes: '',
      figures: { use: 'fuse', size: '80 A', packQuantity: 1, conductor: null, areaMm2: null },
    },
  });
  const job = await owner.api.job.open.mutate({
    key: randomUUID(),
    job: { title: 'Rewire the amplifier', customerId: customer.id },
  });
  const { input } = await owner.api.sheet.parts.read.query({ jobId: job.id });
  const line: PartsInput['handLines'][number] = {
    key: 'hand:fuse',
    partId: part.id,
    description: '',
    kind: 'part',
    group: 'power',
    quantity: 2,
    unit: 'each',
    source: 'buy',
    supplierId: null,
    returnDueOn: null,
    note: '',
  };
  const saved = await owner.api.sheet.parts.save.mutate({
    jobId: job.id,
    version: 0,
    input: { ...input, handLines: [line] },
  });
  const issued = await owner.api.sheet.parts.issue.mutate({ jobId: job.id, version: saved.version });
  return { job, issued };
}

describe('the parts of a job', () => {
  it('are called as the catalogue calls them, and hold no prices', async () => {
    const { issued } = await jobWithFuseHolder();
    expect(issued.issue?.result.lines).toMatchObject([
      { description: 'Fuse holder 80 A', quantity: 2, source: 'buy' },
    ]);
    expect(JSON.stringify(issued)).not.toContain('PriceMinor');
  });

  it('are expected after the supplier’s days once the sheet is issued', async () => {
    const { job } = await jobWithFuseHolder();
    const deliveries = await technician.api.delivery.ofJob.query({ jobId: job.id });
    expect(deliveries).toMatchObject([{ lineKey: 'hand:fuse', expectedOn: '2026-11-28', receivedAt: null }]);
  });

  it('are reported by whoever takes them in, once', async () => {
    const { job } = await jobWithFuseHolder();
    const at = { jobId: job.id, lineKey: 'hand:fuse' };
    const got = await technician.api.delivery.set.mutate({
      ...at,
      version: 1,
      expectedOn: '2026-11-28',
      received: true,
    });
    expect(got.receivedAt).toBe(NOW.toISOString());
    const late = owner.api.delivery.set.mutate({
      ...at,
      version: 1,
      expectedOn: '2026-12-01',
      received: false,
    });
    const refused = await shopErrorOf(late);
    expect(refused.code).toBe('CHANGED_MEANWHILE');
    expect(refused.conflict?.differences).toEqual([
      { field: 'expectedOn', yours: '2026-12-01', theirs: '2026-11-28' },
      { field: 'received', yours: false, theirs: true },
    ]);
  });

  it('of another shop are not there', async () => {
    const { job } = await jobWithFuseHolder();
    const other = await api.owner('Harbour Lane Audio');
    expect(await other.api.delivery.ofJob.query({ jobId: job.id })).toEqual([]);
    const refused = other.api.delivery.set.mutate({
      jobId: job.id,
      lineKey: 'hand:fuse',
      version: 1,
      expectedOn: null,
      received: true,
    });
    expect((await shopErrorOf(refused)).code).toBe('NOT_FOUND');
  });
});

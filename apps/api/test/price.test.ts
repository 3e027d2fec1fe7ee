import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { shopErrorOf, startTestApi, type TestApi, type TestPerson } from './support/harness.ts';
import { pricedJob } from './support/priced-job.ts';

let api: TestApi;
let owner: TestPerson;

beforeAll(async () => {
  api = await startTestApi();
  owner = await api.owner();
});
afterAll(() => api.close());

/** A part on the parts sheet of the job, from the catalogue. */
async function withCataloguePart(jobId: string) {
  const part = await owner.api.part.hardware.create.mutate({
    key: randomUUID(),
    input: {
      kind: 'hardware',
      name: 'Terminal cup',
      buyPriceMinor: 1_000,
      sellPriceMinor: 0,
      figures: { use: 'terminal' },
    },
  });
  const parts = await owner.api.sheet.parts.read.query({ jobId });
  const listed = await owner.api.sheet.parts.save.mutate({
    jobId,
    version: parts.version,
    input: {
      ...parts.input,
      handLines: [
        ...parts.input.handLines,
        {
          key: 'hand:terminal',
          partId: part.id,
          description: 'Terminal cup',
          kind: 'part',
          group: 'hardware',
          quantity: 2,
          unit: 'each',
          source: 'buy',
          supplierId: null,
          returnDueOn: null,
          note: '',
        },
      ],
    },
  });
  await owner.api.sheet.parts.issue.mutate({ jobId, version: listed.version });
  return part;
}

describe('the price sheet', () => {
  it('prices a part of sheet 07 by its cost and the shop’s markup, and says what moved since the issue', async () => {
    const job = await pricedJob(api, owner);
    const at = { jobId: job.id };
    await withCataloguePart(job.id);
    const before = await owner.api.sheet.price.read.query(at);
    expect(before.changes).toContainEqual(
      expect.objectContaining({ source: '07 Parts', label: 'Terminal cup', before: '–' }),
    );
    const issued = await owner.api.sheet.price.issue.mutate({ ...at, version: before.version });
    const line = issued.issue?.result.quote.lines.find(({ key }) => key === 'hand:terminal');
    expect(line).toMatchObject({ listMinor: 2_500, costMinor: 2_000 }); // 2 x 10.00 x 1.25
    expect(issued.issue?.revision).toBe('B');
    const opened = await owner.api.job.byNumber.query({ number: job.number });
    expect(opened.job).toMatchObject({ totalMinor: 27_720, standing: 'priced' }); // 206.00 + 25.00, 20 % tax
  });

  it('names the part whose price changed after the issue, and keeps the issued figures', async () => {
    const job = await pricedJob(api, owner);
    const at = { jobId: job.id };
    const part = await withCataloguePart(job.id);
    const draft = await owner.api.sheet.price.read.query(at);
    await owner.api.sheet.price.issue.mutate({ ...at, version: draft.version });
    await api.deps.doors.inShop(owner.shopId, (tx) =>
      tx.part.update({
        where: { shopId_id: { shopId: owner.shopId, id: part.id } },
        data: { buyPriceMinor: 1_400 },
        select: { id: true },
      }),
    );
    const after = await owner.api.sheet.price.read.query(at);
    expect(after.changes).toEqual([
      { source: 'Records', label: 'Terminal cup · cost', before: '10.00 EUR', after: '14.00 EUR' },
    ]);
    expect(after.issue?.result.quote.totals.grandMinor).toBe(27_720);
  });

  it('takes the mean cost of those who can do the work', async () => {
    const { shopId } = owner;
    await api.deps.doors.inShop(shopId, (tx) =>
      tx.person.createMany({
        data: [
          { shopId, name: 'A', skills: ['fab'], hourlyCostMinor: 3_000 },
          { shopId, name: 'B', skills: ['fab'], hourlyCostMinor: 4_001 },
          { shopId, name: 'C', skills: ['tune'], hourlyCostMinor: 9_000 },
        ],
      }),
    );
    const job = await pricedJob(api, owner);
    const { facts } = await owner.api.sheet.price.read.query({ jobId: job.id });
    expect(facts.rates.hourlyCostBySkillMinor).toEqual({ fab: 3_501, tune: 9_000 });
  });

  it('is issued after the parts are, also when there are none', async () => {
    const customer = await owner.api.customer.create.mutate({
      key: randomUUID(),
      input: { name: 'L. Brandt' },
    });
    const job = await owner.api.job.open.mutate({
      key: randomUUID(),
      job: { title: 'Wiring', customerId: customer.id },
    });
    const { input } = await owner.api.sheet.price.read.query({ jobId: job.id });
    const saved = await owner.api.sheet.price.save.mutate({
      jobId: job.id,
      version: 0,
      input: { ...input, tasks: [], extraLines: [fee] },
    });
    const refused = await shopErrorOf(
      owner.api.sheet.price.issue.mutate({ jobId: job.id, version: saved.version }),
    );
    expect(refused.code).toBe('UPSTREAM_NOT_ISSUED');
    const { version } = await owner.api.sheet.parts.read.query({ jobId: job.id });
    await owner.api.sheet.parts.issue.mutate({ jobId: job.id, version });
    const issued = await owner.api.sheet.price.issue.mutate({ jobId: job.id, version: saved.version });
    expect(issued).toMatchObject({ upstream: { parts: { lines: [] } }, issue: { revision: 'A' } });
  });
});

const fee = {
  key: 'fee',
  kind: 'other' as const,
  description: 'Fee',
  quantity: 1,
  unitCostMinor: 0,
  unitPriceMinor: 5_000,
};

describe('a technician', () => {
  it('reads the plan with its tasks and without a trace of money, changes upstream included', async () => {
    const technician = await api.member(owner, 'technician');
    const job = await pricedJob(api, owner);
    const at = { jobId: job.id };
    const plan = await owner.api.sheet.plan.read.query(at);
    const drawn = await owner.api.sheet.plan.save.mutate({ ...at, version: plan.version, input: plan.input });
    expect(drawn.outcome.state).toBe('ready');
    await owner.api.sheet.plan.issue.mutate({ ...at, version: drawn.version });
    const price = await owner.api.sheet.price.read.query(at);
    const saved = await owner.api.sheet.price.save.mutate({
      ...at,
      version: price.version,
      input: { ...price.input, tasks: (price.input.tasks ?? []).map((task) => ({ ...task, minutes: 180 })) },
    });
    await owner.api.sheet.price.issue.mutate({ ...at, version: saved.version });
    const seen = await technician.api.sheet.plan.read.query(at);
    expect(seen.changes).toContainEqual({ source: '08 Price', label: 'Labour', before: '2 h', after: '3 h' });
    const text = JSON.stringify(seen);
    expect(text).toContain('Build the box');
    expect(text).not.toMatch(/Minor|EUR|Total|Deposit/);
  });
});

// A job whose price sheet is issued: two hours of work, a delivery, and a sponsor's amplifier.
import { randomUUID } from 'node:crypto';
import type { PriceInput } from '@gusset/contracts/price';
import type { TestApi, TestPerson } from './harness.ts';

export async function pricedJob(api: TestApi, person: TestPerson, changes: Partial<PriceInput> = {}) {
  const { shopId } = person;
  const customer = await api.deps.doors.inShop(shopId, (tx) =>
    tx.customer.create({ data: { shopId, name: 'R. Okafor' }, select: { id: true } }),
  );
  const job = await person.api.job.open.mutate({
    key: randomUUID(),
    job: { title: 'Bass box behind the seat', customerId: customer.id },
  });
  // A sponsor's part costs nothing, so the sums below are of the work alone.
  const parts = await person.api.sheet.parts.read.query({ jobId: job.id });
  const listed = await person.api.sheet.parts.save.mutate({
    jobId: job.id,
    version: 0,
    input: {
      ...parts.input,
      handLines: [
        {
          key: 'hand:amplifier',
          partId: null,
          description: 'Amplifier',
          kind: 'part',
          group: 'amplifier',
          quantity: 1,
          unit: 'each',
          source: 'sponsor',
          supplierId: null,
          returnDueOn: null,
          note: '',
        },
      ],
    },
  });
  await person.api.sheet.parts.issue.mutate({ jobId: job.id, version: listed.version });
  const { input } = await person.api.sheet.price.read.query({ jobId: job.id });
  const saved = await person.api.sheet.price.save.mutate({
    jobId: job.id,
    version: 0,
    input: {
      ...input,
      scope: 'A closed box behind the rear seat.',
      tasks: [
        {
          key: 'build',
          title: 'Build the box',
          skill: 'fab',
          minutes: 120,
          prerequisites: [],
          bayKind: 'bench',
          vehicleOnSite: false,
          breakable: true,
          needsParts: [],
          phase: 'wood',
        },
      ],
      extraLines: [
        {
          key: 'delivery',
          kind: 'other',
          description: 'Delivery',
          quantity: 1,
          unitCostMinor: 2_000,
          unitPriceMinor: 5_000,
        },
      ],
      ...changes,
    },
  });
  await person.api.sheet.price.issue.mutate({ jobId: job.id, version: saved.version });
  return job;
}

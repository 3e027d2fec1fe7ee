// Opening, finding and listing jobs.

import { may } from '@gusset/contracts/access';
import type { Id } from '@gusset/contracts/common';
import { type JobListInput, type OpenJobInput, type Standing, standingSchema } from '@gusset/contracts/job';
import { record } from '../data/audit.ts';
import { nextNumber } from '../data/counter.ts';
import { fromShopDate, toShopDate } from '../data/dates.ts';
import { once } from '../data/idempotency.ts';
import { conflictError } from '../data/versioned.ts';
import type { Actor, Deps } from '../deps.ts';
import { notAccepted, notFound } from '../errors.ts';
import { sheetIndexOf } from '../sheets/sheet-index.ts';
import { changeJobRow, findJob, findJobByNumber, type JobRow, listJobs } from './job.queries.ts';

/** Job numbers start here: four digits look like a job number from the first day. */
const FIRST_JOB_NUMBER = 2401;

export type JobView = {
  readonly id: string;
  readonly number: number;
  readonly title: string;
  readonly standing: Standing;
  readonly wishedOn: string | null;
  readonly promisedOn: string | null;
  readonly forecastOn: string | null;
  /** Null for those who see no money, and where nothing is priced. */
  readonly totalMinor: number | null;
  readonly changedAt: string;
  readonly archived: boolean;
  readonly version: number;
  readonly customer: { readonly id: string; readonly name: string };
  readonly vehicle: {
    readonly id: string;
    readonly modelId: string;
    readonly name: string;
    readonly plate: string;
    readonly powertrain: string;
  } | null;
};

export function openJob({ doors }: Deps, actor: Actor, key: string, input: OpenJobInput): Promise<JobView> {
  return doors.inShop(actor.shopId, (tx) =>
    once(tx, actor, key, input, async () => {
      const customer = await tx.customer.findFirst({
        where: { shopId: actor.shopId, id: input.customerId, archivedAt: null },
        select: { id: true },
      });
      if (customer === null) throw notAccepted('customerId', 'Choose a customer of this shop.');
      if (input.vehicleId !== null) {
        const vehicle = await tx.vehicle.findFirst({
          where: {
            shopId: actor.shopId,
            id: input.vehicleId,
            customerId: input.customerId,
            archivedAt: null,
          },
          select: { id: true },
        });
        if (vehicle === null) throw notAccepted('vehicleId', 'Choose one of this customer’s vehicles.');
      }
      const number = await nextNumber(tx, actor.shopId, 'job', FIRST_JOB_NUMBER);
      const { id } = await tx.job.create({
        data: {
          shopId: actor.shopId,
          number,
          title: input.title,
          customerId: input.customerId,
          vehicleId: input.vehicleId,
          wishedOn: fromShopDate(input.wishedOn),
        },
        select: { id: true },
      });
      await record(tx, actor, {
        act: 'job.opened',
        subject: 'job',
        subjectId: id,
        after: { number, ...input },
      });
      return toJobView(await jobOrNotFound(findJob(tx, actor, id)), actor);
    }),
  );
}

export async function jobList({ doors }: Deps, actor: Actor, input: JobListInput) {
  const { rows, total } = await doors.inShop(actor.shopId, (tx) => listJobs(tx, actor, input));
  return { rows: rows.map((row) => toJobView(row, actor)), total };
}

/** A job with its sheet index. */
export function jobByNumber(deps: Deps, actor: Actor, number: number) {
  return deps.doors.inShop(actor.shopId, async (tx) => {
    const job = await jobOrNotFound(findJobByNumber(tx, actor, number));
    return { job: toJobView(job, actor), sheets: await sheetIndexOf({ deps, tx, actor, job }) };
  });
}

export type ChangeJobInput = {
  readonly jobId: Id;
  readonly version: number;
  readonly title: string;
  readonly vehicleId: Id | null;
  readonly wishedOn: string | null;
};

export function changeJob({ doors }: Deps, actor: Actor, input: ChangeJobInput): Promise<JobView> {
  return doors.inShop(actor.shopId, async (tx) => {
    const before = await jobOrNotFound(findJob(tx, actor, input.jobId));
    if (input.vehicleId !== null) {
      const vehicle = await tx.vehicle.findFirst({
        where: { shopId: actor.shopId, id: input.vehicleId, customerId: before.customer.id },
        select: { id: true },
      });
      if (vehicle === null) throw notAccepted('vehicleId', 'Choose one of this customer’s vehicles.');
    }
    const data = { title: input.title, vehicleId: input.vehicleId, wishedOn: fromShopDate(input.wishedOn) };
    if (!(await changeJobRow(tx, actor, input.jobId, input.version, data))) {
      throw await conflictError(tx, actor, {
        subject: 'job',
        subjectId: input.jobId,
        currentVersion: before.version,
        yours: { title: input.title, vehicleId: input.vehicleId, wishedOn: input.wishedOn },
        theirs: {
          title: before.title,
          vehicleId: before.vehicle?.id ?? null,
          wishedOn: toShopDate(before.wishedOn),
        },
      });
    }
    const after = await jobOrNotFound(findJob(tx, actor, input.jobId));
    await record(tx, actor, { act: 'job.changed', subject: 'job', subjectId: input.jobId, before, after });
    return toJobView(after, actor);
  });
}

/** Put away, or taken back. */
export function archiveJob(
  { doors, clock }: Deps,
  actor: Actor,
  input: { readonly jobId: Id; readonly archived: boolean },
): Promise<JobView> {
  return doors.inShop(actor.shopId, async (tx) => {
    const before = await jobOrNotFound(findJob(tx, actor, input.jobId));
    await changeJobRow(tx, actor, input.jobId, before.version, {
      archivedAt: input.archived ? clock.now() : null,
    });
    const act = input.archived ? 'job.archived' : 'job.restored';
    await record(tx, actor, { act, subject: 'job', subjectId: input.jobId });
    return toJobView(await jobOrNotFound(findJob(tx, actor, input.jobId)), actor);
  });
}

async function jobOrNotFound(looking: Promise<JobRow | null>): Promise<JobRow> {
  const job = await looking;
  if (job === null) throw notFound('job');
  return job;
}

/** The one place where a row becomes a job. */
export function toJobView(row: JobRow, actor: Pick<Actor, 'role'>): JobView {
  const { vehicle } = row;
  return {
    id: row.id,
    number: row.number,
    title: row.title,
    standing: standingSchema.catch('enquiry').parse(row.standing),
    wishedOn: toShopDate(row.wishedOn),
    promisedOn: toShopDate(row.promisedOn),
    forecastOn: toShopDate(row.forecastOn),
    totalMinor: may(actor.role, 'money.read') ? row.totalMinor : null,
    changedAt: row.updatedAt.toISOString(),
    archived: row.archivedAt !== null,
    version: row.version,
    customer: row.customer,
    vehicle:
      vehicle === null
        ? null
        : {
            id: vehicle.id,
            modelId: vehicle.modelId,
            name: [vehicle.model.make, vehicle.model.model, vehicle.model.body, vehicle.year]
              .filter(Boolean)
              .join(' '),
            plate: vehicle.plate,
            powertrain: vehicle.model.powertrain,
          },
  };
}

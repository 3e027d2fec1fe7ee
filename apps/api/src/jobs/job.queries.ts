// The only place that knows how jobs are stored.
import type { JobListInput } from '@gusset/contracts/job';
import type { Prisma, Tx } from '@gusset/database';
import type { Actor } from '../deps.ts';

/** Every query starts from here, though row-level security stands behind it. */
export function jobsVisibleTo(actor: Pick<Actor, 'shopId'>) {
  return { shopId: actor.shopId } satisfies Prisma.JobWhereInput;
}

const customerName = { select: { id: true, name: true } } as const;
const vehicleName = {
  select: {
    id: true,
    plate: true,
    year: true,
    modelId: true,
    model: { select: { make: true, model: true, body: true, powertrain: true } },
  },
} as const;

export const jobRowView = {
  id: true,
  number: true,
  title: true,
  standing: true,
  wishedOn: true,
  promisedOn: true,
  forecastOn: true,
  totalMinor: true,
  updatedAt: true,
  archivedAt: true,
  version: true,
  customer: customerName,
  vehicle: vehicleName,
} satisfies Prisma.JobSelect;
export type JobRow = Prisma.JobGetPayload<{ select: typeof jobRowView }>;

const SORT: Record<JobListInput['sort'], (order: Prisma.SortOrder) => Prisma.JobOrderByWithRelationInput[]> =
  {
    number: (order) => [{ number: order }],
    customer: (order) => [{ customer: { name: order } }],
    standing: (order) => [{ standing: order }],
    promised: (order) => [{ promisedOn: { sort: order, nulls: 'last' } }],
    changed: (order) => [{ updatedAt: order }],
  };

export async function listJobs(
  tx: Tx,
  actor: Actor,
  input: JobListInput,
): Promise<{ rows: JobRow[]; total: number }> {
  const where: Prisma.JobWhereInput = {
    ...jobsVisibleTo(actor),
    archivedAt: input.archived ? { not: null } : null,
    ...(input.standing.length > 0 ? { standing: { in: input.standing } } : {}),
    ...(input.customerId === null ? {} : { customerId: input.customerId }),
    ...(input.vehicleId === null ? {} : { vehicleId: input.vehicleId }),
    ...(input.search === '' ? {} : { OR: searchTerms(input.search) }),
  };
  const order = input.descending ? 'desc' : 'asc';
  const rows = await tx.job.findMany({
    where,
    select: jobRowView,
    orderBy: [...SORT[input.sort](order), { id: order }],
    take: input.limit,
    skip: input.offset,
  });
  const total = await tx.job.count({ where });
  return { rows, total };
}

function searchTerms(search: string): Prisma.JobWhereInput[] {
  const contains = { contains: search, mode: 'insensitive' as const };
  const number = /^\d{1,9}$/.test(search) ? [{ number: Number(search) }] : [];
  return [...number, { title: contains }, { customer: { name: contains } }, { vehicle: { plate: contains } }];
}

export function findJob(tx: Tx, actor: Pick<Actor, 'shopId'>, jobId: string) {
  return tx.job.findFirst({ where: { ...jobsVisibleTo(actor), id: jobId }, select: jobRowView });
}

export function findJobByNumber(tx: Tx, actor: Pick<Actor, 'shopId'>, number: number) {
  return tx.job.findFirst({ where: { ...jobsVisibleTo(actor), number }, select: jobRowView });
}

export async function changeJobRow(
  tx: Tx,
  actor: Actor,
  jobId: string,
  version: number,
  data: Prisma.JobUncheckedUpdateManyInput,
): Promise<boolean> {
  const { count } = await tx.job.updateMany({
    where: { ...jobsVisibleTo(actor), id: jobId, version },
    data: { ...data, version: { increment: 1 } },
  });
  return count === 1;
}

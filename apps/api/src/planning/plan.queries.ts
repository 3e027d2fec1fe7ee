import type { PartGroup } from '@gusset/contracts/planning';
import type { Prisma, Tx } from '@gusset/database';
import { asRequiredJson } from '../data/json.ts';
import type { Actor } from '../deps.ts';

const taskView = {
  id: true,
  jobId: true,
  key: true,
  title: true,
  skill: true,
  bayKind: true,
  minutes: true,
  breakable: true,
  vehicleOnSite: true,
  prerequisites: true,
  needsPartLines: true,
  pinnedPersonId: true,
  pinnedBayId: true,
  earliestOn: true,
  startedAt: true,
  startedBy: true,
  finishedAt: true,
  workedMinutes: true,
  version: true,
} satisfies Prisma.JobTaskSelect;
export type OpenTaskRow = Prisma.JobTaskGetPayload<{ select: typeof taskView }>;

const jobView = {
  id: true,
  number: true,
  title: true,
  planRank: true,
  promisedOn: true,
  forecastOn: true,
  approvedAt: true,
  wishedOn: true,
  standing: true,
  handedOverAt: true,
  version: true,
  customer: { select: { name: true } },
  vehicle: { select: { plate: true, model: { select: { make: true, model: true } } } },
  tasks: { select: taskView, orderBy: [{ sort: 'asc' }, { id: 'asc' }] },
  deliveries: {
    select: { lineKey: true, description: true, expectedOn: true, receivedAt: true, returnDueOn: true },
    orderBy: { lineKey: 'asc' },
  },
} satisfies Prisma.JobSelect;
type JobRowOfPlan = Prisma.JobGetPayload<{ select: typeof jobView }>;
export type OpenJobRow = JobRowOfPlan & { readonly groupOfLine: ReadonlyMap<string, PartGroup> };

const personView = {
  id: true,
  name: true,
  skills: true,
  leaves: { select: { fromOn: true, toOn: true, note: true }, orderBy: { fromOn: 'asc' } },
} satisfies Prisma.PersonSelect;
const bayView = { id: true, name: true, kinds: true } satisfies Prisma.BaySelect;

export type PlanningRows = {
  readonly people: readonly Prisma.PersonGetPayload<{ select: typeof personView }>[];
  readonly bays: readonly Prisma.BayGetPayload<{ select: typeof bayView }>[];
  readonly jobs: readonly OpenJobRow[];
};

/**
 * Everybody and everything that the forward plan reads, in the order of the jobs' numbers: jobs with tasks still to do,
 * and those handed over since `dayStart`, which stay in the lanes as done until the day ends.
 */
export async function planningRows(
  tx: Tx,
  { shopId }: Pick<Actor, 'shopId'>,
  dayStart: Date,
): Promise<PlanningRows> {
  const people = await tx.person.findMany({
    where: { shopId, archivedAt: null },
    select: personView,
    orderBy: [{ sort: 'asc' }, { name: 'asc' }, { id: 'asc' }],
    take: 200,
  });
  const bays = await tx.bay.findMany({
    where: { shopId, archivedAt: null },
    select: bayView,
    orderBy: [{ sort: 'asc' }, { id: 'asc' }],
    take: 100,
  });
  const jobs = await tx.job.findMany({
    where: {
      shopId,
      archivedAt: null,
      standing: { not: 'declined' },
      OR: [
        { handedOverAt: null, tasks: { some: { finishedAt: null } } },
        { handedOverAt: { gte: dayStart }, tasks: { some: {} } },
      ],
    },
    select: jobView,
    orderBy: [{ number: 'asc' }],
    take: 400,
  });
  const groups = await groupsOfLines(
    tx,
    shopId,
    jobs.map((job) => job.id),
  );
  return {
    people,
    bays,
    jobs: jobs.map((job) => ({ ...job, groupOfLine: groups.get(job.id) ?? new Map() })),
  };
}

/** One job as the plan reads it, whether or not it has tasks yet. */
export async function planningJob(
  tx: Tx,
  { shopId }: Pick<Actor, 'shopId'>,
  jobId: string,
): Promise<OpenJobRow | null> {
  const job = await tx.job.findFirst({ where: { shopId, id: jobId }, select: jobView });
  if (job === null) return null;
  const groups = await groupsOfLines(tx, shopId, [jobId]);
  return { ...job, groupOfLine: groups.get(jobId) ?? new Map() };
}

/** Which group of parts each line of the issued parts sheets belongs to. */
async function groupsOfLines(tx: Tx, shopId: string, jobIds: readonly string[]) {
  const issues = await tx.sheetIssue.findMany({
    where: { shopId, kind: 'parts', jobId: { in: [...jobIds] } },
    select: { jobId: true, result: true },
    distinct: ['jobId'],
    orderBy: [{ jobId: 'asc' }, { revision: 'desc' }],
    take: 400,
  });
  return new Map(issues.map((issue) => [issue.jobId, linesOf(issue.result)]));
}

function linesOf(result: Prisma.JsonValue): Map<string, PartGroup> {
  // Written by the parts sheet's own definition when it was issued.
  const { lines } = result as { lines: { key: string; group: PartGroup }[] };
  return new Map(lines.map((line) => [line.key, line.group]));
}

export function lastPlanRun(tx: Tx, { shopId }: Pick<Actor, 'shopId'>) {
  return tx.planRun.findFirst({
    where: { shopId },
    select: { id: true, fingerprint: true, plan: true, because: true, computedAt: true },
    orderBy: { computedAt: 'desc' },
  });
}

const KEPT_RUNS = 20;

export async function keepPlanRun(
  tx: Tx,
  { shopId }: Pick<Actor, 'shopId'>,
  run: {
    readonly fingerprint: string;
    readonly plan: unknown;
    readonly because: string;
    readonly computedAt: Date;
  },
): Promise<void> {
  await tx.planRun.create({
    data: {
      shopId,
      fingerprint: run.fingerprint,
      input: {},
      plan: asRequiredJson(run.plan),
      because: run.because.slice(0, 200),
      computedAt: run.computedAt,
    },
    select: { id: true },
  });
  const old = await tx.planRun.findMany({
    where: { shopId },
    select: { id: true },
    orderBy: { computedAt: 'desc' },
    skip: KEPT_RUNS,
    take: 100,
  });
  await tx.planRun.deleteMany({ where: { shopId, id: { in: old.map(({ id }) => id) } } });
}

export async function noteForecasts(
  tx: Tx,
  { shopId }: Pick<Actor, 'shopId'>,
  forecasts: readonly { readonly jobId: string; readonly on: Date | null }[],
): Promise<void> {
  for (const { jobId, on } of forecasts) {
    await tx.job.updateMany({
      where: { shopId, id: jobId, NOT: { forecastOn: on } },
      data: { forecastOn: on },
    });
    if (on !== null)
      await tx.job.updateMany({ where: { shopId, id: jobId, forecastOn: null }, data: { forecastOn: on } });
  }
}

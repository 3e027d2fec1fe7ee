import type { Prisma, Tx } from '@gusset/database';
import type { Actor } from '../deps.ts';

type Shop = Pick<Actor, 'shopId'>;

const view = {
  id: true,
  number: true,
  partId: true,
  lengthMm: true,
  widthMm: true,
  thicknessMm: true,
  place: true,
  usedInId: true,
  thrownAwayAt: true,
  version: true,
  part: { select: { maker: true, name: true } },
  cutIn: { select: { job: { select: { number: true } } } },
} satisfies Prisma.OffcutSelect;
export type OffcutRow = Prisma.OffcutGetPayload<{ select: typeof view }>;

const MOST_RACKED = 400;

/** In the rack now, the largest first; of these boards alone where any are named. */
export function findRacked(tx: Tx, { shopId }: Shop, partIds: readonly string[]): Promise<OffcutRow[]> {
  return tx.offcut.findMany({
    where: {
      shopId,
      usedInId: null,
      thrownAwayAt: null,
      ...(partIds.length === 0 ? {} : { partId: { in: [...partIds] } }),
    },
    select: view,
    orderBy: [{ partId: 'asc' }, { lengthMm: 'desc' }, { number: 'asc' }],
    take: MOST_RACKED,
  });
}

export function findOffcuts(tx: Tx, { shopId }: Shop, ids: readonly string[]): Promise<OffcutRow[]> {
  return tx.offcut.findMany({ where: { shopId, id: { in: [...ids] } }, select: view, take: MOST_RACKED });
}

export function putOffcut(
  tx: Tx,
  { shopId }: Shop,
  offcut: Omit<Prisma.OffcutUncheckedCreateInput, 'shopId'>,
): Promise<OffcutRow> {
  return tx.offcut.create({ data: { ...offcut, shopId }, select: view });
}

/** Number of rows changed: 0 where somebody used it or threw it away meanwhile. */
export async function throwAway(
  tx: Tx,
  { shopId }: Shop,
  { id, version, at }: { readonly id: string; readonly version: number; readonly at: Date },
): Promise<number> {
  const { count } = await tx.offcut.updateMany({
    where: { shopId, id, version, usedInId: null, thrownAwayAt: null },
    data: { thrownAwayAt: at, version: { increment: 1 } },
  });
  return count;
}

const reportView = {
  id: true,
  jobId: true,
  issueId: true,
  taken: true,
  reportedByName: true,
  reportedAt: true,
  left: { select: view, orderBy: { number: 'asc' } },
  used: { select: { id: true, number: true }, orderBy: { number: 'asc' } },
} satisfies Prisma.CutReportSelect;
export type CutReportRow = Prisma.CutReportGetPayload<{ select: typeof reportView }>;

/** Reports that stand, the newest first. */
export function findReports(tx: Tx, { shopId }: Shop, jobId: string): Promise<CutReportRow[]> {
  return tx.cutReport.findMany({
    where: { shopId, jobId, undoneAt: null },
    select: reportView,
    orderBy: { reportedAt: 'desc' },
    take: 40,
  });
}

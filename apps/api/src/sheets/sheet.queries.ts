import type { SheetKind } from '@gusset/contracts/sheet';
import type { Prisma, Tx } from '@gusset/database';
import { asRequiredJson } from '../data/json.ts';
import type { Actor } from '../deps.ts';

export const issueView = {
  id: true,
  kind: true,
  revision: true,
  input: true,
  facts: true,
  upstream: true,
  result: true,
  fingerprint: true,
  issuedBy: true,
  issuedByName: true,
  issuedAt: true,
  checkedByName: true,
  checkedAt: true,
} satisfies Prisma.SheetIssueSelect;
export type IssueRow = Prisma.SheetIssueGetPayload<{ select: typeof issueView }>;

type OfJob = { readonly shopId: string; readonly jobId: string };

export function findSheet(tx: Tx, where: OfJob & { readonly kind: SheetKind }) {
  return tx.sheet.findUnique({
    where: { shopId_jobId_kind: where },
    select: { id: true, input: true, version: true, updatedAt: true, editedBy: true },
  });
}

export function findSheets(tx: Tx, where: OfJob) {
  return tx.sheet.findMany({ where, select: { kind: true, input: true, updatedAt: true }, take: 20 });
}

/** The newest issue of each kind. */
export async function latestIssues(tx: Tx, where: OfJob): Promise<ReadonlyMap<string, IssueRow>> {
  const rows = await tx.sheetIssue.findMany({
    where,
    select: issueView,
    distinct: ['kind'],
    orderBy: [{ kind: 'asc' }, { revision: 'desc' }],
    take: 20,
  });
  return new Map(rows.map((row) => [row.kind, row]));
}

export function findIssue(tx: Tx, actor: Pick<Actor, 'shopId'>, issueId: string) {
  return tx.sheetIssue.findFirst({
    where: { shopId: actor.shopId, id: issueId },
    select: { ...issueView, jobId: true },
  });
}

export function findIssues(tx: Tx, actor: Pick<Actor, 'shopId'>, issueIds: readonly string[]) {
  return tx.sheetIssue.findMany({
    where: { shopId: actor.shopId, id: { in: [...issueIds] } },
    select: issueView,
    take: 50,
  });
}

/** Saves a draft over the version that was seen; false when it has moved on. Version 0 = not begun. */
export async function saveSheet(
  tx: Tx,
  actor: Actor,
  sheet: {
    readonly jobId: string;
    readonly kind: SheetKind;
    readonly version: number;
    readonly input: unknown;
  },
): Promise<boolean> {
  const input = asRequiredJson(sheet.input);
  if (sheet.version === 0) {
    const { count } = await tx.sheet.createMany({
      data: [{ shopId: actor.shopId, jobId: sheet.jobId, kind: sheet.kind, input, editedBy: actor.userId }],
      skipDuplicates: true,
    });
    return count === 1;
  }
  const { count } = await tx.sheet.updateMany({
    where: { shopId: actor.shopId, jobId: sheet.jobId, kind: sheet.kind, version: sheet.version },
    data: { input, editedBy: actor.userId, version: { increment: 1 } },
  });
  return count === 1;
}

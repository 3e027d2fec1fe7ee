import type { SheetKind } from '@gusset/contracts/sheet';
import type { Prisma, Tx } from '@gusset/database';
import { asRequiredJson } from '../data/json.ts';
import type { Actor } from '../deps.ts';
import { enclosuresInUse } from '../enclosures/enclosure.queries.ts';

export const issueView = {
  id: true,
  kind: true,
  enclosureId: true,
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

/** Which sheet of a job: of sound and box there is one for each enclosure, of the others one (null). */
export type SheetSpot = { readonly kind: SheetKind; readonly enclosureId: string | null };

export function findSheet(tx: Tx, where: OfJob & SheetSpot) {
  return tx.sheet.findFirst({
    where,
    select: { id: true, input: true, version: true, updatedAt: true, editedBy: true },
  });
}

export function findSheets(tx: Tx, where: OfJob) {
  return tx.sheet.findMany({
    where,
    select: { kind: true, enclosureId: true, input: true, updatedAt: true },
    take: 150,
  });
}

/** `box` for the job's first or only one, `box <enclosure>` for each. */
export function issueKey(kind: string, enclosureId: string | null): string {
  return enclosureId === null ? kind : `${kind} ${enclosureId}`;
}

/** The newest issue of each sheet; those of the first enclosure also by their kind alone. */
export async function latestIssues(tx: Tx, where: OfJob): Promise<ReadonlyMap<string, IssueRow>> {
  const rows = await tx.sheetIssue.findMany({
    where,
    select: issueView,
    distinct: ['kind', 'enclosureId'],
    orderBy: [{ kind: 'asc' }, { enclosureId: 'asc' }, { revision: 'desc' }],
    take: 150,
  });
  const [first] = await enclosuresInUse(tx, where);
  const ofFirst = rows.filter((row) => row.enclosureId !== null && row.enclosureId === first?.id);
  return new Map([
    ...rows.map((row) => [issueKey(row.kind, row.enclosureId), row] as const),
    ...ofFirst.map((row) => [row.kind, row] as const),
  ]);
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
    readonly enclosureId: string | null;
    readonly version: number;
    readonly input: unknown;
  },
): Promise<boolean> {
  const input = asRequiredJson(sheet.input);
  const { jobId, kind, enclosureId } = sheet;
  const spot = { shopId: actor.shopId, jobId, kind, enclosureId };
  if (sheet.version === 0) {
    const { count } = await tx.sheet.createMany({
      data: [{ ...spot, input, editedBy: actor.userId }],
      skipDuplicates: true,
    });
    return count === 1;
  }
  const { count } = await tx.sheet.updateMany({
    where: { ...spot, version: sheet.version },
    data: { input, editedBy: actor.userId, version: { increment: 1 } },
  });
  return count === 1;
}

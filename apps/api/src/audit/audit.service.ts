// The record of what happened, read back: who, when, what, and the values before and after.
import type { Prisma } from '@gusset/database';
import type { Actor, Deps } from '../deps.ts';

const view = {
  seq: true,
  at: true,
  actorName: true,
  act: true,
  subject: true,
  subjectId: true,
  before: true,
  after: true,
} satisfies Prisma.AuditEntrySelect;

export type AuditAsk = {
  readonly limit: number;
  /** Entries before this number; null = from the newest. */
  readonly beforeSeq: number | null;
  readonly subject: string | null;
  readonly subjectId: string | null;
  /** Part of a name or of an act. */
  readonly search: string;
};

export type AuditView = {
  readonly seq: number;
  readonly at: string;
  readonly actorName: string;
  readonly act: string;
  readonly subject: string;
  readonly subjectId: string;
  readonly before: unknown;
  readonly after: unknown;
};

/** Newest first; `nextBeforeSeq` leads on, null at the first entry. */
export function auditList(
  { doors }: Deps,
  actor: Actor,
  ask: AuditAsk,
): Promise<{ rows: AuditView[]; nextBeforeSeq: number | null }> {
  const contains = { contains: ask.search, mode: 'insensitive' as const };
  return doors.inShop(actor.shopId, async (tx) => {
    const rows = await tx.auditEntry.findMany({
      where: {
        shopId: actor.shopId,
        ...(ask.beforeSeq === null ? {} : { seq: { lt: ask.beforeSeq } }),
        ...(ask.subject === null ? {} : { subject: ask.subject }),
        ...(ask.subjectId === null ? {} : { subjectId: ask.subjectId }),
        ...(ask.search === '' ? {} : { OR: [{ actorName: contains }, { act: contains }] }),
      },
      select: view,
      orderBy: { seq: 'desc' },
      take: ask.limit + 1,
    });
    const shown = rows.slice(0, ask.limit);
    const last = shown.at(-1);
    return {
      rows: shown.map((row) => ({ ...row, at: row.at.toISOString() })),
      nextBeforeSeq: rows.length > ask.limit && last !== undefined ? last.seq : null,
    };
  });
}

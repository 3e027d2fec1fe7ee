// Two people edit the same thing: the second save is refused and told both values, who saved and when.
import type { Conflict } from '@gusset/contracts/errors';
import type { Tx } from '@gusset/database';
import { canonicalJson } from '@gusset/sheets';
import type { Actor } from '../deps.ts';
import { ShopError } from '../errors.ts';

/** Builds the conflict from what was sent and what stands now; fields that agree are left out. */
export async function conflictError(
  tx: Tx,
  actor: Pick<Actor, 'shopId'>,
  options: {
    readonly subject: string;
    readonly subjectId: string;
    readonly currentVersion: number;
    readonly yours: Readonly<Record<string, unknown>>;
    readonly theirs: Readonly<Record<string, unknown>>;
  },
): Promise<ShopError> {
  const last = await tx.auditEntry.findFirst({
    where: { shopId: actor.shopId, subject: options.subject, subjectId: options.subjectId },
    orderBy: { seq: 'desc' },
    select: { actorName: true, at: true },
  });
  const conflict: Conflict = {
    currentVersion: options.currentVersion,
    savedBy: last?.actorName ?? null,
    savedAt: last?.at.toISOString() ?? null,
    differences: Object.keys(options.yours)
      .filter(
        (field) =>
          canonicalJson(options.yours[field] ?? null) !== canonicalJson(options.theirs[field] ?? null),
      )
      .map((field) => ({
        field,
        yours: options.yours[field] ?? null,
        theirs: options.theirs[field] ?? null,
      })),
  };
  const who = conflict.savedBy === null ? 'Someone else' : conflict.savedBy;
  return new ShopError('CHANGED_MEANWHILE', `${who} saved this in between. Choose which values to keep.`, {
    conflict,
  });
}

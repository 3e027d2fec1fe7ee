import { ROLES } from '@gusset/contracts/access';
import type { Prisma, Tx } from '@gusset/database';
import { z } from 'zod';
import type { Actor } from '../deps.ts';

const view = {
  id: true,
  shopId: true,
  detail: true,
  expiresAt: true,
  revokedAt: true,
  usedCount: true,
  createdAt: true,
} satisfies Prisma.AccessTokenSelect;
export type InvitationRow = Prisma.AccessTokenGetPayload<{ select: typeof view }>;

/** What the invitation's secret stands for, besides its row. */
export const invitationDetailSchema = z.strictObject({
  name: z.string(),
  email: z.string(),
  role: z.enum(ROLES),
  /** The person on the shop's list who is meant; null = one is made when it is accepted. */
  personId: z.uuid().nullable(),
  invitedBy: z.string(),
});
export type InvitationDetail = z.infer<typeof invitationDetailSchema>;

export function detailOf(row: InvitationRow): InvitationDetail {
  return invitationDetailSchema.parse(row.detail);
}

/** Neither used, revoked nor run out at this time. */
function open(now: Date) {
  return { usedCount: 0, revokedAt: null, expiresAt: { gt: now } } satisfies Prisma.AccessTokenWhereInput;
}

export function openInvitations(tx: Tx, { shopId }: Pick<Actor, 'shopId'>, now: Date) {
  return tx.accessToken.findMany({
    where: { shopId, purpose: 'invite', ...open(now) },
    select: view,
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
    take: 200,
  });
}

/** Through the door of whoever presents the secret: the row of that secret, if it still opens something. */
export function presentedInvitation(tx: Tx, tokenHash: string, now: Date): Promise<InvitationRow | null> {
  return tx.accessToken.findFirst({ where: { tokenHash, purpose: 'invite', ...open(now) }, select: view });
}

/** One statement, so that of two who present the same secret only one is let in. */
export async function useUp(tx: Tx, { shopId, id }: InvitationRow, now: Date): Promise<boolean> {
  const { count } = await tx.accessToken.updateMany({
    where: { shopId, id, purpose: 'invite', ...open(now) },
    data: { usedCount: 1, lastUsedAt: now },
  });
  return count === 1;
}

export async function revoke(tx: Tx, { shopId }: Actor, id: string, now: Date): Promise<boolean> {
  const { count } = await tx.accessToken.updateMany({
    where: { shopId, id, purpose: 'invite', ...open(now) },
    data: { revokedAt: now },
  });
  return count === 1;
}

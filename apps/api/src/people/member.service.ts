// Who may sign in to the shop, and as what. The last owner can neither leave nor become something else.
import type { Role } from '@gusset/contracts/access';
import type { Prisma, Tx } from '@gusset/database';
import { record } from '../data/audit.ts';
import type { Actor, Deps } from '../deps.ts';
import { notFound, ShopError } from '../errors.ts';
import { toRole } from '../shops/actor.ts';

const view = {
  id: true,
  userId: true,
  role: true,
  personId: true,
  createdAt: true,
  user: { select: { name: true, email: true } },
} satisfies Prisma.MembershipSelect;
type MemberRow = Prisma.MembershipGetPayload<{ select: typeof view }>;

export type MemberView = {
  readonly membershipId: string;
  readonly name: string;
  readonly email: string;
  readonly role: Role;
  readonly personId: string | null;
  readonly since: string;
  readonly isMe: boolean;
};

export function members({ doors }: Deps, actor: Actor): Promise<MemberView[]> {
  return doors.inShop(actor.shopId, async (tx) => {
    const rows = await tx.membership.findMany({
      where: { shopId: actor.shopId, endedAt: null },
      select: view,
      orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
      take: 500,
    });
    return rows.map((row) => toView(row, actor));
  });
}

export function changeRole(
  { doors }: Deps,
  actor: Actor,
  { membershipId, role }: { readonly membershipId: string; readonly role: Role },
): Promise<MemberView> {
  return doors.inShop(actor.shopId, async (tx) => {
    const before = await memberOrNotFound(tx, actor, membershipId);
    if (role !== 'owner') await requireAnotherOwner(tx, actor, before);
    const after = await tx.membership.update({
      where: { shopId_id: { shopId: actor.shopId, id: membershipId } },
      data: { role, version: { increment: 1 } },
      select: view,
    });
    await record(tx, actor, {
      act: 'member.role-changed',
      subject: 'member',
      subjectId: membershipId,
      before: { name: before.user.name, role: before.role },
      after: { name: before.user.name, role },
    });
    return toView(after, actor);
  });
}

/** Their next request is refused; what they did stays under their name. */
export function removeMember({ doors, clock }: Deps, actor: Actor, membershipId: string): Promise<void> {
  return doors.inShop(actor.shopId, async (tx) => {
    const member = await memberOrNotFound(tx, actor, membershipId);
    await requireAnotherOwner(tx, actor, member);
    await tx.membership.update({
      where: { shopId_id: { shopId: actor.shopId, id: membershipId } },
      data: { endedAt: clock.now(), version: { increment: 1 } },
    });
    await record(tx, actor, {
      act: 'member.removed',
      subject: 'member',
      subjectId: membershipId,
      before: { name: member.user.name, role: member.role },
    });
  });
}

/** Locks the owners' rows first, so that two owners cannot remove each other at the same time. */
async function requireAnotherOwner(tx: Tx, actor: Actor, member: MemberRow): Promise<void> {
  const owners = await tx.$queryRaw<{ id: string }[]>`
    SELECT id FROM membership
    WHERE shop_id = ${actor.shopId}::uuid AND role = 'owner' AND ended_at IS NULL
    ORDER BY id FOR UPDATE`;
  if (owners.some(({ id }) => id === member.id) && owners.length === 1) {
    throw new ShopError(
      'LAST_OWNER',
      `${member.user.name} is the only owner. Make somebody else an owner first.`,
    );
  }
}

async function memberOrNotFound(tx: Tx, { shopId }: Actor, id: string): Promise<MemberRow> {
  const member = await tx.membership.findFirst({ where: { shopId, id, endedAt: null }, select: view });
  if (member === null) throw notFound('member');
  return member;
}

function toView(row: MemberRow, actor: Actor): MemberView {
  return {
    membershipId: row.id,
    name: row.user.name,
    email: row.user.email,
    role: toRole(row.role),
    personId: row.personId,
    since: row.createdAt.toISOString(),
    isMe: row.userId === actor.userId,
  };
}

// Days on which somebody is away: the plan counts on nobody who is not there.
import { may } from '@gusset/contracts/access';
import type { LeaveInput } from '@gusset/contracts/records';
import type { Prisma, Tx } from '@gusset/database';
import { record } from '../data/audit.ts';
import { fromShopDate, toShopDate } from '../data/dates.ts';
import { once } from '../data/idempotency.ts';
import type { Actor, Deps } from '../deps.ts';
import { notAccepted, notFound } from '../errors.ts';
import { forwardPlan } from '../planning/forward-plan.ts';

const view = {
  id: true,
  personId: true,
  fromOn: true,
  toOn: true,
  note: true,
  person: { select: { name: true } },
} satisfies Prisma.PersonLeaveSelect;
type LeaveRow = Prisma.PersonLeaveGetPayload<{ select: typeof view }>;

export type LeaveView = {
  readonly id: string;
  readonly personId: string;
  readonly personName: string;
  readonly fromOn: string;
  readonly toOn: string;
  /** Why is the business of those who keep the leave list; null for everybody else. */
  readonly note: string | null;
};

export type LeaveAsk = { readonly personId: string | null; readonly endsFrom: string | null };

export function leaves({ doors }: Deps, actor: Actor, ask: LeaveAsk): Promise<LeaveView[]> {
  return doors.inShop(actor.shopId, async (tx) => {
    const endsFrom = fromShopDate(ask.endsFrom);
    const rows = await tx.personLeave.findMany({
      where: {
        shopId: actor.shopId,
        ...(ask.personId === null ? {} : { personId: ask.personId }),
        ...(endsFrom === null ? {} : { toOn: { gte: endsFrom } }),
      },
      select: view,
      orderBy: [{ fromOn: 'asc' }, { id: 'asc' }],
      take: 1_000,
    });
    return rows.map((row) => toView(row, actor));
  });
}

export function addLeave(deps: Deps, actor: Actor, key: string, input: LeaveInput): Promise<LeaveView> {
  return deps.doors.inShop(actor.shopId, (tx) =>
    once(tx, actor, key, { act: 'leave', input }, async () => {
      const person = await tx.person.findFirst({
        where: { shopId: actor.shopId, id: input.personId, archivedAt: null },
        select: { id: true },
      });
      if (person === null) throw notAccepted('personId', 'Choose somebody who works here.');
      const { fromOn, toOn } = input;
      const { id } = await tx.personLeave.create({
        data: {
          shopId: actor.shopId,
          personId: input.personId,
          fromOn: dayOf(fromOn),
          toOn: dayOf(toOn),
          note: input.note,
        },
        select: { id: true },
      });
      await record(tx, actor, { act: 'leave.added', subject: 'leave', subjectId: id, after: input });
      const leave = await leaveOrNotFound(tx, actor, id);
      await forwardPlan(deps, tx, actor, `${leave.person.name} is away from ${fromOn} to ${toOn}`);
      return toView(leave, actor);
    }),
  );
}

/** Answers what was removed, so that it can be added again. */
export function removeLeave(deps: Deps, actor: Actor, id: string): Promise<LeaveView> {
  return deps.doors.inShop(actor.shopId, async (tx) => {
    const leave = toView(await leaveOrNotFound(tx, actor, id), actor);
    await tx.personLeave.deleteMany({ where: { shopId: actor.shopId, id } });
    await record(tx, actor, { act: 'leave.removed', subject: 'leave', subjectId: id, before: leave });
    await forwardPlan(deps, tx, actor, `${leave.personName} is there from ${leave.fromOn} after all`);
    return leave;
  });
}

async function leaveOrNotFound(tx: Tx, { shopId }: Actor, id: string): Promise<LeaveRow> {
  const leave = await tx.personLeave.findFirst({ where: { shopId, id }, select: view });
  if (leave === null) throw notFound('leave');
  return leave;
}

function dayOf(day: string): Date {
  return new Date(`${day}T00:00:00Z`);
}

function toView(row: LeaveRow, actor: Actor): LeaveView {
  return {
    id: row.id,
    personId: row.personId,
    personName: row.person.name,
    fromOn: toShopDate(row.fromOn) ?? '',
    toOn: toShopDate(row.toOn) ?? '',
    note: may(actor.role, 'leave.edit') ? row.note : null,
  };
}

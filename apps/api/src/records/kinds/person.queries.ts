import { may } from '@gusset/contracts/access';
import { type PersonInput, personInputSchema } from '@gusset/contracts/records';
import { SKILLS } from '@gusset/contracts/shop';
import type { Prisma } from '@gusset/database';
import { archivedIs, containsAny, orderOf, type RecordKind } from '../record-kind.ts';

const view = {
  id: true,
  name: true,
  email: true,
  phone: true,
  skills: true,
  hourlyCostMinor: true,
  version: true,
  archivedAt: true,
  updatedAt: true,
  memberships: { select: { id: true, role: true, endedAt: true }, take: 3 },
} satisfies Prisma.PersonSelect;
type Row = Prisma.PersonGetPayload<{ select: typeof view }>;

export type PersonView = Omit<PersonInput, 'hourlyCostMinor'> & {
  readonly id: string;
  readonly version: number;
  readonly archived: boolean;
  /** Null for those who see no money. */
  readonly hourlyCostMinor: number | null;
  /** Role of the sign-in that belongs to this person; null = has none. */
  readonly role: string | null;
};

function toInput(row: Row): PersonInput {
  return {
    name: row.name,
    email: row.email ?? '',
    phone: row.phone ?? '',
    skills: SKILLS.filter((skill) => row.skills.includes(skill)),
    hourlyCostMinor: row.hourlyCostMinor,
  };
}

export const personKind: RecordKind<PersonInput, Row, PersonView> = {
  subject: 'person',
  read: 'people.read',
  edit: 'people.manage',
  inputSchema: personInputSchema,
  sorts: ['name', 'changed'],
  async list(tx, { shopId }, ask) {
    const where = {
      shopId,
      ...archivedIs(ask.archived),
      ...containsAny(['name', 'email'], ask.search),
    } satisfies Prisma.PersonWhereInput;
    const order = orderOf(ask);
    const by = ask.sort === 'changed' ? { updatedAt: order } : { name: order };
    const rows = await tx.person.findMany({
      where,
      select: view,
      orderBy: [by, { id: order }],
      take: ask.limit,
      skip: ask.offset,
    });
    return { rows, total: await tx.person.count({ where }) };
  },
  find: (tx, { shopId }, id) => tx.person.findFirst({ where: { shopId, id }, select: view }),
  insert: (tx, { shopId }, input) => tx.person.create({ data: { shopId, ...input }, select: { id: true } }),
  async change(tx, { shopId }, { id, version }, input) {
    const { count } = await tx.person.updateMany({
      where: { shopId, id, version },
      data: { ...input, version: { increment: 1 } },
    });
    return count;
  },
  async putAway(tx, { shopId }, id, archivedAt) {
    const { count } = await tx.person.updateMany({
      where: { shopId, id },
      data: { archivedAt, version: { increment: 1 } },
    });
    return count;
  },
  toView: (row, actor) => ({
    ...toInput(row),
    id: row.id,
    version: row.version,
    archived: row.archivedAt !== null,
    hourlyCostMinor: may(actor.role, 'money.read') ? row.hourlyCostMinor : null,
    role: row.memberships.find((membership) => membership.endedAt === null)?.role ?? null,
  }),
  toInput,
};

import { type CustomerInput, customerInputSchema } from '@gusset/contracts/records';
import type { Prisma } from '@gusset/database';
import { archivedIs, containsAny, orderOf, type RecordKind } from '../record-kind.ts';

const view = {
  id: true,
  name: true,
  phone: true,
  email: true,
  address: true,
  notes: true,
  version: true,
  archivedAt: true,
  updatedAt: true,
  _count: { select: { vehicles: true, jobs: true } },
} satisfies Prisma.CustomerSelect;
type Row = Prisma.CustomerGetPayload<{ select: typeof view }>;

export type CustomerView = CustomerInput & {
  readonly id: string;
  readonly version: number;
  readonly archived: boolean;
  readonly vehicleCount: number;
  readonly jobCount: number;
};

function toInput(row: Row): CustomerInput {
  return { name: row.name, phone: row.phone, email: row.email, address: row.address, notes: row.notes };
}

export const customerKind: RecordKind<CustomerInput, Row, CustomerView> = {
  subject: 'customer',
  read: 'customer.read',
  edit: 'customer.edit',
  inputSchema: customerInputSchema,
  sorts: ['name', 'changed'],
  async list(tx, { shopId }, ask) {
    const where = {
      shopId,
      ...archivedIs(ask.archived),
      ...containsAny(['name', 'phone', 'email'], ask.search),
    } satisfies Prisma.CustomerWhereInput;
    const order = orderOf(ask);
    const rows = await tx.customer.findMany({
      where,
      select: view,
      orderBy: [ask.sort === 'changed' ? { updatedAt: order } : { name: order }, { id: order }],
      take: ask.limit,
      skip: ask.offset,
    });
    return { rows, total: await tx.customer.count({ where }) };
  },
  find: (tx, { shopId }, id) => tx.customer.findFirst({ where: { shopId, id }, select: view }),
  insert: (tx, { shopId }, input) => tx.customer.create({ data: { shopId, ...input }, select: { id: true } }),
  async change(tx, { shopId }, { id, version }, input) {
    const { count } = await tx.customer.updateMany({
      where: { shopId, id, version },
      data: { ...input, version: { increment: 1 } },
    });
    return count;
  },
  async putAway(tx, { shopId }, id, archivedAt) {
    const { count } = await tx.customer.updateMany({
      where: { shopId, id },
      data: { archivedAt, version: { increment: 1 } },
    });
    return count;
  },
  toView: (row) => ({
    ...toInput(row),
    id: row.id,
    version: row.version,
    archived: row.archivedAt !== null,
    vehicleCount: row._count.vehicles,
    jobCount: row._count.jobs,
  }),
  toInput,
};

import { type SupplierInput, supplierInputSchema } from '@gusset/contracts/records';
import type { Prisma } from '@gusset/database';
import { archivedIs, containsAny, orderOf, type RecordKind } from '../record-kind.ts';

const view = {
  id: true,
  name: true,
  kind: true,
  contact: true,
  email: true,
  phone: true,
  leadDays: true,
  terms: true,
  version: true,
  archivedAt: true,
  updatedAt: true,
  _count: { select: { parts: true } },
} satisfies Prisma.SupplierSelect;
type Row = Prisma.SupplierGetPayload<{ select: typeof view }>;

export type SupplierView = SupplierInput & {
  readonly id: string;
  readonly version: number;
  readonly archived: boolean;
  readonly partCount: number;
};

function toInput(row: Row): SupplierInput {
  const { name, contact, email, phone, leadDays, terms } = row;
  return {
    name,
    kind: row.kind === 'sponsor' ? 'sponsor' : 'supplier',
    contact,
    email,
    phone,
    leadDays,
    terms,
  };
}

export const supplierKind: RecordKind<SupplierInput, Row, SupplierView> = {
  subject: 'supplier',
  read: 'supplier.read',
  edit: 'supplier.edit',
  inputSchema: supplierInputSchema,
  sorts: ['name', 'kind', 'changed'],
  async list(tx, { shopId }, ask) {
    const where = {
      shopId,
      ...archivedIs(ask.archived),
      ...containsAny(['name', 'contact', 'email'], ask.search),
    } satisfies Prisma.SupplierWhereInput;
    const order = orderOf(ask);
    const by =
      ask.sort === 'changed' ? { updatedAt: order } : ask.sort === 'kind' ? { kind: order } : { name: order };
    const rows = await tx.supplier.findMany({
      where,
      select: view,
      orderBy: [by, { id: order }],
      take: ask.limit,
      skip: ask.offset,
    });
    return { rows, total: await tx.supplier.count({ where }) };
  },
  find: (tx, { shopId }, id) => tx.supplier.findFirst({ where: { shopId, id }, select: view }),
  insert: (tx, { shopId }, input) => tx.supplier.create({ data: { shopId, ...input }, select: { id: true } }),
  async change(tx, { shopId }, { id, version }, input) {
    const { count } = await tx.supplier.updateMany({
      where: { shopId, id, version },
      data: { ...input, version: { increment: 1 } },
    });
    return count;
  },
  async putAway(tx, { shopId }, id, archivedAt) {
    const { count } = await tx.supplier.updateMany({
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
    partCount: row._count.parts,
  }),
  toInput,
};

import { type BayInput, bayInputSchema } from '@gusset/contracts/records';
import { BAY_KINDS } from '@gusset/contracts/shop';
import type { Prisma } from '@gusset/database';
import { archivedIs, containsAny, orderOf, type RecordKind } from '../record-kind.ts';

const view = {
  id: true,
  name: true,
  kinds: true,
  sort: true,
  version: true,
  archivedAt: true,
  updatedAt: true,
} satisfies Prisma.BaySelect;
type Row = Prisma.BayGetPayload<{ select: typeof view }>;

export type BayView = BayInput & {
  readonly id: string;
  readonly version: number;
  readonly archived: boolean;
};

function toInput(row: Row): BayInput {
  return { name: row.name, kinds: BAY_KINDS.filter((kind) => row.kinds.includes(kind)) };
}

export const bayKind: RecordKind<BayInput, Row, BayView> = {
  subject: 'bay',
  read: 'shop.read',
  edit: 'bay.edit',
  inputSchema: bayInputSchema,
  sorts: ['place', 'name'],
  async list(tx, { shopId }, ask) {
    const where = {
      shopId,
      ...archivedIs(ask.archived),
      ...containsAny(['name'], ask.search),
    } satisfies Prisma.BayWhereInput;
    const order = orderOf(ask);
    const by = ask.sort === 'name' ? { name: order } : { sort: order };
    const rows = await tx.bay.findMany({
      where,
      select: view,
      orderBy: [by, { id: order }],
      take: ask.limit,
      skip: ask.offset,
    });
    return { rows, total: await tx.bay.count({ where }) };
  },
  find: (tx, { shopId }, id) => tx.bay.findFirst({ where: { shopId, id }, select: view }),
  async insert(tx, { shopId }, input) {
    const last = await tx.bay.aggregate({ where: { shopId }, _max: { sort: true } });
    return tx.bay.create({
      data: { shopId, ...input, sort: (last._max.sort ?? 0) + 1 },
      select: { id: true },
    });
  },
  async change(tx, { shopId }, { id, version }, input) {
    const { count } = await tx.bay.updateMany({
      where: { shopId, id, version },
      data: { ...input, version: { increment: 1 } },
    });
    return count;
  },
  async putAway(tx, { shopId }, id, archivedAt) {
    const { count } = await tx.bay.updateMany({
      where: { shopId, id },
      data: { archivedAt, version: { increment: 1 } },
    });
    return count;
  },
  toView: (row) => ({ ...toInput(row), id: row.id, version: row.version, archived: row.archivedAt !== null }),
  toInput,
};

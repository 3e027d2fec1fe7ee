import { may } from '@gusset/contracts/access';
import { type PartInput, type PartKind, partInputSchema } from '@gusset/contracts/records';
import type { Prisma, Tx } from '@gusset/database';
import { asRequiredJson } from '../../data/json.ts';
import type { Actor } from '../../deps.ts';
import { archivedIs, type ListAsk, orderOf, type RecordKind } from '../record-kind.ts';

const view = {
  id: true,
  kind: true,
  maker: true,
  name: true,
  code: true,
  unit: true,
  supplierId: true,
  buyPriceMinor: true,
  sellPriceMinor: true,
  stockQuantity: true,
  leadDays: true,
  figures: true,
  notes: true,
  version: true,
  archivedAt: true,
  updatedAt: true,
  supplier: { select: { name: true, kind: true } },
} satisfies Prisma.PartSelect;
export type PartRow = Prisma.PartGetPayload<{ select: typeof view }>;

type OfKind<K extends PartKind> = Extract<PartInput, { kind: K }>;
export type PartView<K extends PartKind = PartKind> = Omit<OfKind<K>, 'buyPriceMinor' | 'sellPriceMinor'> & {
  readonly id: string;
  readonly version: number;
  readonly archived: boolean;
  /** Null for those who see no money. */
  readonly buyPriceMinor: number | null;
  readonly sellPriceMinor: number | null;
  readonly supplierName: string | null;
};

/** A stored part through its contract: figures that an older version stored are completed with defaults. */
export function toPartInput(row: PartRow): PartInput {
  return partInputSchema.parse({
    kind: row.kind,
    maker: row.maker,
    name: row.name,
    code: row.code,
    unit: row.unit,
    supplierId: row.supplierId,
    buyPriceMinor: row.buyPriceMinor,
    sellPriceMinor: row.sellPriceMinor,
    stockQuantity: row.stockQuantity,
    leadDays: row.leadDays,
    figures: row.figures,
    notes: row.notes,
  });
}

export function findPart(tx: Tx, { shopId }: Pick<Actor, 'shopId'>, id: string): Promise<PartRow | null> {
  return tx.part.findFirst({ where: { shopId, id }, select: view });
}

export function findParts(
  tx: Tx,
  { shopId }: Pick<Actor, 'shopId'>,
  ids: readonly string[],
): Promise<PartRow[]> {
  return tx.part.findMany({
    where: { shopId, id: { in: [...ids] } },
    select: view,
    orderBy: { id: 'asc' },
    take: 500,
  });
}

/** Hardware and supplies by what they are for, by name. */
export function findPartsByUse(
  tx: Tx,
  { shopId }: Pick<Actor, 'shopId'>,
  uses: readonly string[],
): Promise<PartRow[]> {
  return tx.part.findMany({
    where: {
      shopId,
      archivedAt: null,
      kind: { in: ['hardware', 'supply'] },
      OR: uses.map((use) => ({ figures: { path: ['use'], equals: use } })),
    },
    select: view,
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
    take: 200,
  });
}

/** One kind of part as a record kind of its own: its list, its figures, its form. */
export function partKind<K extends PartKind>(
  kind: K,
  inputSchema: RecordKind<OfKind<K>, PartRow, PartView<K>>['inputSchema'],
) {
  const isOfKind = (input: PartInput): input is OfKind<K> => input.kind === kind;
  const toInput = (row: PartRow): OfKind<K> => {
    const input = toPartInput(row);
    if (!isOfKind(input)) throw new Error(`part ${row.id} is a ${input.kind}, not a ${kind}`);
    return input;
  };
  const where = ({ shopId }: Pick<Actor, 'shopId'>, id: string) => ({ shopId, id, kind });
  const dataOf = ({ figures, ...common }: OfKind<K>) => ({ ...common, figures: asRequiredJson(figures) });
  const recordKind: RecordKind<OfKind<K>, PartRow, PartView<K>> = {
    subject: `part.${kind}`,
    read: 'catalogue.read',
    edit: 'catalogue.edit',
    inputSchema,
    sorts: ['name', 'maker', 'stock', 'changed'],
    list: (tx, actor, ask) => listParts(tx, actor, kind, ask),
    find: (tx, actor, id) => tx.part.findFirst({ where: where(actor, id), select: view }),
    insert: (tx, { shopId }, input) =>
      tx.part.create({ data: { shopId, ...dataOf(input) }, select: { id: true } }),
    async change(tx, actor, { id, version }, input) {
      const { count } = await tx.part.updateMany({
        where: { ...where(actor, id), version },
        data: { ...dataOf(input), version: { increment: 1 } },
      });
      return count;
    },
    async putAway(tx, actor, id, archivedAt) {
      const { count } = await tx.part.updateMany({
        where: where(actor, id),
        data: { archivedAt, version: { increment: 1 } },
      });
      return count;
    },
    toView(row, actor) {
      const seesMoney = may(actor.role, 'money.read');
      return {
        ...toInput(row),
        id: row.id,
        version: row.version,
        archived: row.archivedAt !== null,
        buyPriceMinor: seesMoney ? row.buyPriceMinor : null,
        sellPriceMinor: seesMoney ? row.sellPriceMinor : null,
        supplierName: row.supplier?.name ?? null,
      };
    },
    toInput,
  };
  return recordKind;
}

async function listParts(tx: Tx, { shopId }: Actor, kind: PartKind, ask: ListAsk) {
  const contains = { contains: ask.search, mode: 'insensitive' as const };
  const where = {
    shopId,
    kind,
    ...archivedIs(ask.archived),
    ...(ask.search === '' ? {} : { OR: [{ name: contains }, { maker: contains }, { code: contains }] }),
  } satisfies Prisma.PartWhereInput;
  const order = orderOf(ask);
  const rows = await tx.part.findMany({
    where,
    select: view,
    orderBy: [...partOrder(ask.sort, order), { id: order }],
    take: ask.limit,
    skip: ask.offset,
  });
  return { rows, total: await tx.part.count({ where }) };
}

function partOrder(sort: string, order: Prisma.SortOrder): Prisma.PartOrderByWithRelationInput[] {
  if (sort === 'maker') return [{ maker: order }, { name: order }];
  if (sort === 'stock') return [{ stockQuantity: order }];
  return sort === 'changed' ? [{ updatedAt: order }] : [{ name: order }, { maker: order }];
}

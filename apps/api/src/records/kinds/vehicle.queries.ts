import { type VehicleInput, vehicleInputSchema } from '@gusset/contracts/records';
import type { Prisma } from '@gusset/database';
import type { Actor, Deps } from '../../deps.ts';
import { archivedIs, orderOf, type RecordKind } from '../record-kind.ts';

const view = {
  id: true,
  customerId: true,
  modelId: true,
  plate: true,
  year: true,
  colour: true,
  notes: true,
  version: true,
  archivedAt: true,
  updatedAt: true,
  customer: { select: { name: true } },
  model: { select: { make: true, model: true, body: true, powertrain: true } },
} satisfies Prisma.VehicleSelect;
type Row = Prisma.VehicleGetPayload<{ select: typeof view }>;

export type VehicleView = VehicleInput & {
  readonly id: string;
  readonly version: number;
  readonly archived: boolean;
  readonly customerName: string;
  /** Make, model, body and year in one line. */
  readonly name: string;
  readonly powertrain: string;
};

function toInput(row: Row): VehicleInput {
  const { customerId, modelId, plate, year, colour, notes } = row;
  return { customerId, modelId, plate, year, colour, notes };
}

function searched(search: string): Prisma.VehicleWhereInput {
  if (search === '') return {};
  const contains = { contains: search, mode: 'insensitive' as const };
  return {
    OR: [
      { plate: contains },
      { customer: { name: contains } },
      { model: { make: contains } },
      { model: { model: contains } },
    ],
  };
}

export const vehicleKind: RecordKind<VehicleInput, Row, VehicleView> = {
  subject: 'vehicle',
  read: 'vehicle.read',
  edit: 'vehicle.edit',
  inputSchema: vehicleInputSchema,
  sorts: ['plate', 'customer', 'changed'],
  async list(tx, { shopId }, ask) {
    const where = {
      shopId,
      ...archivedIs(ask.archived),
      ...searched(ask.search),
    } satisfies Prisma.VehicleWhereInput;
    const order = orderOf(ask);
    const by =
      ask.sort === 'changed'
        ? { updatedAt: order }
        : ask.sort === 'customer'
          ? { customer: { name: order } }
          : { plate: order };
    const rows = await tx.vehicle.findMany({
      where,
      select: view,
      orderBy: [by, { id: order }],
      take: ask.limit,
      skip: ask.offset,
    });
    return { rows, total: await tx.vehicle.count({ where }) };
  },
  find: (tx, { shopId }, id) => tx.vehicle.findFirst({ where: { shopId, id }, select: view }),
  insert: (tx, { shopId }, input) => tx.vehicle.create({ data: { shopId, ...input }, select: { id: true } }),
  async change(tx, { shopId }, { id, version }, input) {
    const { count } = await tx.vehicle.updateMany({
      where: { shopId, id, version },
      data: { ...input, version: { increment: 1 } },
    });
    return count;
  },
  async putAway(tx, { shopId }, id, archivedAt) {
    const { count } = await tx.vehicle.updateMany({
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
    customerName: row.customer.name,
    name: [row.model.make, row.model.model, row.model.body, row.year].filter(Boolean).join(' '),
    powertrain: row.model.powertrain,
  }),
  toInput,
};

/** Vehicles of one customer, of one model or of both, by plate. */
export function vehiclesBelonging(
  { doors }: Deps,
  actor: Actor,
  { customerId, modelId }: { readonly customerId: string | null; readonly modelId: string | null },
): Promise<VehicleView[]> {
  const { shopId } = actor;
  return doors.inShop(shopId, async (tx) => {
    const rows = await tx.vehicle.findMany({
      where: {
        shopId,
        archivedAt: null,
        ...(customerId === null ? {} : { customerId }),
        ...(modelId === null ? {} : { modelId }),
      },
      select: view,
      orderBy: [{ plate: 'asc' }, { id: 'asc' }],
      take: 200,
    });
    return rows.map((row) => vehicleKind.toView(row, actor));
  });
}

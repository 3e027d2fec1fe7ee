import { BODY_STYLES, type VehicleModelInput, vehicleModelInputSchema } from '@gusset/contracts/records';
import type { Prisma } from '@gusset/database';
import { archivedIs, containsAny, orderOf, type RecordKind } from '../record-kind.ts';

const view = {
  id: true,
  make: true,
  model: true,
  yearFrom: true,
  yearTo: true,
  body: true,
  powertrain: true,
  payloadKg: true,
  longestCabinM: true,
  notes: true,
  version: true,
  archivedAt: true,
  updatedAt: true,
  _count: { select: { vehicles: true, surveys: true } },
} satisfies Prisma.VehicleModelSelect;
type Row = Prisma.VehicleModelGetPayload<{ select: typeof view }>;

export type VehicleModelView = VehicleModelInput & {
  readonly id: string;
  readonly version: number;
  readonly archived: boolean;
  readonly vehicleCount: number;
  readonly surveyCount: number;
};

const POWERTRAINS = ['combustion', 'hybrid', 'electric', 'unknown'] as const;

function toInput(row: Row): VehicleModelInput {
  return {
    make: row.make,
    model: row.model,
    yearFrom: row.yearFrom,
    yearTo: row.yearTo,
    body: BODY_STYLES.find((body) => body === row.body) ?? 'hatch',
    powertrain: POWERTRAINS.find((powertrain) => powertrain === row.powertrain) ?? 'unknown',
    payloadKg: row.payloadKg,
    longestCabinM: row.longestCabinM,
    notes: row.notes,
  };
}

export const vehicleModelKind: RecordKind<VehicleModelInput, Row, VehicleModelView> = {
  subject: 'vehicle model',
  read: 'vehicle.read',
  edit: 'vehicle.edit',
  inputSchema: vehicleModelInputSchema,
  sorts: ['name', 'changed'],
  async list(tx, { shopId }, ask) {
    const where = {
      shopId,
      ...archivedIs(ask.archived),
      ...containsAny(['make', 'model'], ask.search),
    } satisfies Prisma.VehicleModelWhereInput;
    const order = orderOf(ask);
    const rows = await tx.vehicleModel.findMany({
      where,
      select: view,
      orderBy: [
        ...(ask.sort === 'changed' ? [{ updatedAt: order }] : [{ make: order }, { model: order }]),
        { id: order },
      ],
      take: ask.limit,
      skip: ask.offset,
    });
    return { rows, total: await tx.vehicleModel.count({ where }) };
  },
  find: (tx, { shopId }, id) => tx.vehicleModel.findFirst({ where: { shopId, id }, select: view }),
  insert: (tx, { shopId }, input) =>
    tx.vehicleModel.create({ data: { shopId, ...input }, select: { id: true } }),
  async change(tx, { shopId }, { id, version }, input) {
    const { count } = await tx.vehicleModel.updateMany({
      where: { shopId, id, version },
      data: { ...input, version: { increment: 1 } },
    });
    return count;
  },
  async putAway(tx, { shopId }, id, archivedAt) {
    const { count } = await tx.vehicleModel.updateMany({
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
    surveyCount: row._count.surveys,
  }),
  toInput,
};

import { vehicleKind } from '../../kinds/vehicle.queries.ts';
import { figure, text } from '../csv-cell.ts';
import { column } from '../csv-column.ts';
import type { CsvOf } from '../csv-kind.ts';
import { named } from '../name-book.ts';

export const vehicleCsv: CsvOf<typeof vehicleKind> = {
  kind: vehicleKind,
  fileName: 'vehicles',
  columns: ({ customers, models }) => [
    column('Customer', 'customerId', named(customers), true),
    column('Vehicle model', 'modelId', named(models), true),
    column('Plate', 'plate', text),
    column('Year', 'year', figure('')),
    column('Colour', 'colour', text),
    column('Notes', 'notes', text),
  ],
  fixed: {},
  nameOf: ({ plate, customerId, modelId }) => (plate === '' ? `${customerId} ${modelId}` : plate),
  insertMany: (tx, { shopId }, rows) =>
    tx.vehicle.createMany({ data: rows.map(({ id, input }) => ({ shopId, id, ...input })) }),
  async archiveMany(tx, { shopId }, ids, archivedAt) {
    const { count } = await tx.vehicle.updateMany({
      where: { shopId, id: { in: [...ids] }, archivedAt: null },
      data: { archivedAt, version: { increment: 1 } },
    });
    return count;
  },
};

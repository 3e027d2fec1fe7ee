import { BODY_STYLES } from '@gusset/contracts/records';
import { vehicleModelKind } from '../../kinds/vehicle-model.queries.ts';
import { choice, figure, kilograms, lengthInMetres, text } from '../csv-cell.ts';
import { column } from '../csv-column.ts';
import type { CsvOf } from '../csv-kind.ts';

export const vehicleModelCsv: CsvOf<typeof vehicleModelKind> = {
  kind: vehicleModelKind,
  fileName: 'vehicle-models',
  columns: () => [
    column('Make', 'make', text, true),
    column('Model', 'model', text, true),
    column('Body', 'body', choice(BODY_STYLES), true),
    column('First year', 'yearFrom', figure('')),
    column('Last year', 'yearTo', figure('')),
    column('Powertrain', 'powertrain', choice(['combustion', 'hybrid', 'electric', 'unknown'])),
    column('Placard payload', 'payloadKg', kilograms),
    column('Longest inside length', 'longestCabinM', lengthInMetres),
    column('Notes', 'notes', text),
  ],
  fixed: {},
  nameOf: ({ make, model, body, yearFrom }) =>
    [make, model, body, yearFrom].filter((part) => part !== null).join(' '),
  insertMany: (tx, { shopId }, rows) =>
    tx.vehicleModel.createMany({ data: rows.map(({ id, input }) => ({ shopId, id, ...input })) }),
  async archiveMany(tx, { shopId }, ids, archivedAt) {
    const { count } = await tx.vehicleModel.updateMany({
      where: { shopId, id: { in: [...ids] }, archivedAt: null },
      data: { archivedAt, version: { increment: 1 } },
    });
    return count;
  },
};

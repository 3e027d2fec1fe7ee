import { customerKind } from '../../kinds/customer.queries.ts';
import { text } from '../csv-cell.ts';
import { column } from '../csv-column.ts';
import type { CsvOf } from '../csv-kind.ts';

export const customerCsv: CsvOf<typeof customerKind> = {
  kind: customerKind,
  fileName: 'customers',
  columns: () => [
    column('Name', 'name', text, true),
    column('Phone', 'phone', text),
    column('E-mail', 'email', text),
    column('Address', 'address', text),
    column('Notes', 'notes', text),
  ],
  fixed: {},
  nameOf: ({ name }) => name,
  insertMany: (tx, { shopId }, rows) =>
    tx.customer.createMany({ data: rows.map(({ id, input }) => ({ shopId, id, ...input })) }),
  async archiveMany(tx, { shopId }, ids, archivedAt) {
    const { count } = await tx.customer.updateMany({
      where: { shopId, id: { in: [...ids] }, archivedAt: null },
      data: { archivedAt, version: { increment: 1 } },
    });
    return count;
  },
};

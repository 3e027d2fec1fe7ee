import { supplierKind } from '../../kinds/supplier.queries.ts';
import { choice, figure, text } from '../csv-cell.ts';
import { column } from '../csv-column.ts';
import type { CsvOf } from '../csv-kind.ts';

export const supplierCsv: CsvOf<typeof supplierKind> = {
  kind: supplierKind,
  fileName: 'suppliers',
  columns: () => [
    column('Name', 'name', text, true),
    column('Kind', 'kind', choice(['supplier', 'sponsor'])),
    column('Contact', 'contact', text),
    column('E-mail', 'email', text),
    column('Phone', 'phone', text),
    column('Lead time', 'leadDays', figure('days')),
    column('Terms', 'terms', text),
  ],
  fixed: {},
  nameOf: ({ name }) => name,
  insertMany: (tx, { shopId }, rows) =>
    tx.supplier.createMany({ data: rows.map(({ id, input }) => ({ shopId, id, ...input })) }),
  async archiveMany(tx, { shopId }, ids, archivedAt) {
    const { count } = await tx.supplier.updateMany({
      where: { shopId, id: { in: [...ids] }, archivedAt: null },
      data: { archivedAt, version: { increment: 1 } },
    });
    return count;
  },
};

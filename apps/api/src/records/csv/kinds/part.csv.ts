import { type PartInput, type PartKind, partInputSchemas } from '@gusset/contracts/records';
import { asRequiredJson } from '../../../data/json.ts';
import { type PartRow, type PartView, partKind } from '../../kinds/part.queries.ts';
import type { RecordKind } from '../../record-kind.ts';
import { amount, choice, figure, text } from '../csv-cell.ts';
import { column } from '../csv-column.ts';
import type { CsvKind } from '../csv-kind.ts';
import { named } from '../name-book.ts';
import { PART_FIGURE_COLUMNS } from './part-figure-columns.ts';

type OfKind<K extends PartKind> = Extract<PartInput, { kind: K }>;

const UNITS = partInputSchemas.supply.shape.unit.unwrap().options;

/** One kind of part as a list: what every part has, and the kind's own figures. */
export function partCsv<K extends PartKind>(
  kind: K,
  inputSchema: RecordKind<OfKind<K>, PartRow, PartView<K>>['inputSchema'],
): CsvKind<OfKind<K>, PartRow, PartView<K>> {
  return {
    kind: partKind(kind, inputSchema),
    fileName: `parts-${kind}`,
    columns: ({ currency, suppliers }) => [
      column('Maker', 'maker', text),
      column('Name', 'name', text, true),
      column('Order code', 'code', text),
      column('Counted in', 'unit', choice(UNITS)),
      column('Supplier', 'supplierId', named(suppliers)),
      column('Buy price', 'buyPriceMinor', amount(currency)),
      column('Sell price', 'sellPriceMinor', amount(currency)),
      column('In stock', 'stockQuantity', figure('')),
      column('Lead time', 'leadDays', figure('days')),
      ...PART_FIGURE_COLUMNS[kind],
      column('Notes', 'notes', text),
    ],
    fixed: { kind },
    nameOf: ({ maker, name, code }) => [maker, name, code].filter((part) => part !== '').join(' '),
    insertMany: (tx, { shopId }, rows) =>
      tx.part.createMany({
        data: rows.map(({ id, input: { figures, ...common } }) => ({
          shopId,
          id,
          ...common,
          figures: asRequiredJson(figures),
        })),
      }),
    async archiveMany(tx, { shopId }, ids, archivedAt) {
      const { count } = await tx.part.updateMany({
        where: { shopId, kind, id: { in: [...ids] }, archivedAt: null },
        data: { archivedAt, version: { increment: 1 } },
      });
      return count;
    },
  };
}

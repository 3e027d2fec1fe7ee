'use client';

import { useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { paths } from '../../shared/paths.ts';
import { RecordList } from '../../shared/record/record-list.tsx';
import type { DataColumn, FilterChip } from '../../shared/table/data-column.ts';

type SupplierRow = ApiOutputs['supplier']['list']['rows'][number];

const NOUN = { one: 'supplier', many: 'suppliers' } as const;

const COLUMNS: readonly DataColumn<SupplierRow>[] = [
  {
    id: 'name',
    header: 'Name',
    cell: (row) => row.name,
    sortBy: (row) => row.name,
    width: '2fr',
    onCard: 'title',
  },
  {
    id: 'kind',
    header: 'Kind',
    cell: (row) => (row.kind === 'sponsor' ? 'Sponsor' : 'Supplier'),
    sortBy: (row) => row.kind,
    onCard: 'line',
  },
  {
    id: 'contact',
    header: 'Contact',
    cell: (row) => [row.contact, row.phone].filter(Boolean).join(' · '),
    sortBy: (row) => row.contact || null,
    width: '1.6fr',
    onCard: 'line',
  },
  {
    id: 'lead',
    header: 'Lead time',
    cell: (row) => `${row.leadDays} ${row.leadDays === 1 ? 'day' : 'days'}`,
    sortBy: (row) => row.leadDays,
    isFigures: true,
    width: '120px',
    onCard: 'side',
  },
  {
    id: 'parts',
    header: 'Parts',
    cell: (row) => row.partCount,
    sortBy: (row) => row.partCount,
    isFigures: true,
    width: '90px',
    onCard: 'left-out',
  },
];

const CHIPS: readonly FilterChip<SupplierRow>[] = [
  { id: 'sponsor', label: 'Sponsors', test: ({ kind }) => kind === 'sponsor' },
];

export type SupplierListScreenProps = { readonly above: React.ReactNode };

/** Who sends the parts, and how long that takes. */
export function SupplierListScreen({ above }: SupplierListScreenProps) {
  const client = useTRPCClient();
  return (
    <RecordList<SupplierRow>
      title="Suppliers"
      noun={NOUN}
      listName="supplier"
      procedures={client.supplier}
      edit="supplier.edit"
      columns={COLUMNS}
      chips={CHIPS}
      rowName={({ name }) => name}
      hrefOf={({ id }) => paths.supplier(id)}
      wordsOf={({ name, contact, email, phone }) => `${name} ${contact} ${email} ${phone}`}
      initialSort={{ columnId: 'name', isDescending: false }}
      newHref={paths.newSupplier()}
      newWords="New supplier"
      emptyText="A supplier’s lead time tells the plan when its parts can be here."
      above={above}
    />
  );
}

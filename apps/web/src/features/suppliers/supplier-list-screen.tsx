'use client';

import { useState } from 'react';
import { useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { paths } from '../../shared/paths.ts';
import { ListFileMenu } from '../../shared/record/list-file.tsx';
import { RecordList } from '../../shared/record/record-list.tsx';
import { useMay } from '../../shared/shell/person.tsx';
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
  const mayEdit = useMay('supplier.edit');
  const mayExport = useMay('list.export');
  const [archived, setArchived] = useState(false);
  return (
    <RecordList<SupplierRow>
      title="Suppliers"
      label="Suppliers"
      noun={NOUN}
      listName="supplier"
      page={(ask) => client.supplier.list.query(ask)}
      archived={archived}
      onArchived={setArchived}
      columns={COLUMNS}
      chips={CHIPS}
      rowId={({ id }) => id}
      rowName={({ name }) => name}
      hrefOf={({ id }) => paths.supplier(id)}
      wordsOf={({ name, contact, email, phone }) => `${name} ${contact} ${email} ${phone}`}
      initialSort={{ columnId: 'name', isDescending: false }}
      newHref={mayEdit ? paths.newSupplier() : null}
      newWords="New supplier"
      emptyText="A supplier’s lead time tells the plan when its parts can be here."
      above={above}
      acts={
        <ListFileMenu
          noun={NOUN}
          listName="supplier"
          mayImport={mayEdit}
          mayExport={mayExport}
          file={{
            preview: (text) => client.supplier.importPreview.mutate({ text }),
            take: (key, text) => client.supplier.import.mutate({ key, text }),
            undo: (importId) => client.supplier.importUndo.mutate({ importId }),
            give: () => client.supplier.export.query(),
          }}
        />
      }
    />
  );
}

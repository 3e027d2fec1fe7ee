'use client';

import { useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { paths } from '../../shared/paths.ts';
import { RecordList } from '../../shared/record/record-list.tsx';
import type { DataColumn, FilterChip } from '../../shared/table/data-column.ts';

type CustomerRow = ApiOutputs['customer']['list']['rows'][number];

const NOUN = { one: 'customer', many: 'customers' } as const;

const COLUMNS: readonly DataColumn<CustomerRow>[] = [
  {
    id: 'name',
    header: 'Name',
    cell: (row) => row.name,
    sortBy: (row) => row.name,
    width: '2fr',
    onCard: 'title',
  },
  {
    id: 'phone',
    header: 'Phone',
    cell: (row) => row.phone,
    sortBy: (row) => row.phone || null,
    onCard: 'side',
  },
  {
    id: 'email',
    header: 'E-mail',
    cell: (row) => row.email,
    sortBy: (row) => row.email || null,
    width: '1.6fr',
    onCard: 'left-out',
  },
  {
    id: 'vehicles',
    header: 'Vehicles',
    cell: (row) => row.vehicleCount,
    sortBy: (row) => row.vehicleCount,
    isFigures: true,
    width: '110px',
    onCard: 'left-out',
  },
  {
    id: 'jobs',
    header: 'Jobs',
    cell: (row) => row.jobCount,
    sortBy: (row) => row.jobCount,
    isFigures: true,
    width: '90px',
    onCard: 'left-out',
  },
];

const CHIPS: readonly FilterChip<CustomerRow>[] = [
  { id: 'jobs', label: 'With a job', test: ({ jobCount }) => jobCount > 0 },
  { id: 'no-way', label: 'No phone, no e-mail', test: ({ phone, email }) => phone === '' && email === '' },
];

/** Everybody the shop has worked for or spoken to. */
export function CustomerListScreen() {
  const client = useTRPCClient();
  return (
    <RecordList<CustomerRow>
      title="Customers"
      noun={NOUN}
      listName="customer"
      procedures={client.customer}
      edit="customer.edit"
      columns={COLUMNS}
      chips={CHIPS}
      rowName={({ name }) => name}
      hrefOf={({ id }) => paths.customer(id)}
      wordsOf={({ name, phone, email, address }) => `${name} ${phone} ${email} ${address}`}
      initialSort={{ columnId: 'name', isDescending: false }}
      newHref={paths.newCustomer()}
      newWords="New customer"
      emptyText="A customer has vehicles and jobs. Add one, or take a list in from a spreadsheet."
    />
  );
}

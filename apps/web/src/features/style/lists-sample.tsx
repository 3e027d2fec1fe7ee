'use client';

import { useMemo, useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { Select } from '../../shared/controls/select.tsx';
import { PageHeader } from '../../shared/shell/page-header.tsx';
import type { DataColumn, FilterChip, ListState } from '../../shared/table/data-column.ts';
import { DataTable } from '../../shared/table/data-table.tsx';
import styles from './lists-sample.module.css';
import { type SampleJob, sampleJobs } from './sample-shop.ts';

const COLUMNS: readonly DataColumn<SampleJob>[] = [
  {
    id: 'number',
    header: 'Job',
    cell: (job) => job.number,
    sortBy: (job) => job.number,
    width: '92px',
    isFigures: true,
    onCard: 'side',
  },
  {
    id: 'vehicle',
    header: 'Vehicle',
    cell: (job) => job.vehicle,
    sortBy: (job) => job.vehicle,
    width: '2fr',
    onCard: 'title',
  },
  {
    id: 'customer',
    header: 'Customer',
    cell: (job) => job.customer,
    sortBy: (job) => job.customer,
    width: '1.4fr',
    onCard: 'line',
  },
  {
    id: 'sheet',
    header: 'At sheet',
    cell: (job) => job.sheet,
    sortBy: (job) => job.sheet,
    onCard: 'left-out',
  },
  {
    id: 'promised',
    header: 'Promised',
    cell: (job) => (job.isLate ? <span className={styles.late}>{job.promised}, late</span> : job.promised),
    sortBy: (job) => job.promisedDay,
    isFigures: true,
    width: '1.2fr',
    onCard: 'line',
  },
  {
    id: 'price',
    header: 'Price',
    cell: (job) => (job.pounds === null ? 'not quoted' : `£${job.pounds.toLocaleString('en-GB')}.00`),
    sortBy: (job) => job.pounds,
    isFigures: true,
    onCard: 'left-out',
  },
];

const CHIPS: readonly FilterChip<SampleJob>[] = [
  { id: 'late', label: 'Late', test: (job) => job.isLate },
  { id: 'held', label: 'Held by a part', test: (job) => job.isHeld },
  { id: 'unquoted', label: 'Not quoted', test: (job) => job.pounds === null },
];

const STATES = ['full', 'many', 'empty', 'loading', 'error', 'forbidden', 'old'] as const;
type StateName = (typeof STATES)[number];

const NO_JOBS: readonly SampleJob[] = [];

export function ListsSample() {
  const [name, setName] = useState<StateName>('full');
  const rows = useMemo(() => sampleJobs(name === 'many' ? 10_000 : 24), [name]);
  const states: Readonly<Record<StateName, ListState<SampleJob>>> = {
    full: { kind: 'ready', rows, asOf: null },
    many: { kind: 'ready', rows, asOf: null },
    old: { kind: 'ready', rows, asOf: 'today 11:20' },
    empty: { kind: 'ready', rows: NO_JOBS, asOf: null },
    loading: { kind: 'loading' },
    forbidden: { kind: 'forbidden', message: 'Only the owner and the office see prices. Ask A. Bello.' },
    error: {
      kind: 'error',
      message: 'The jobs did not come. Nothing is lost; the server gave no answer.',
      referenceId: '7f3a-19c2',
      onRetry: () => setName('full'),
    },
  };
  return (
    <>
      <PageHeader
        kicker="Style page"
        title="Jobs"
        acts={
          <>
            <Select
              label="State shown"
              value={name}
              onChange={setName}
              options={STATES.map((id) => ({ id, label: id }))}
            />
            <Button look="primary">New job</Button>
          </>
        }
      />
      <DataTable
        label="Jobs"
        noun={{ one: 'job', many: 'jobs' }}
        state={states[name]}
        columns={COLUMNS}
        chips={CHIPS}
        rowId={(job) => String(job.number)}
        rowName={(job) => `Job ${job.number}, ${job.vehicle}, ${job.customer}`}
        hrefOf={() => '/style'}
        wordsOf={(job) => `${job.number} ${job.vehicle} ${job.customer} ${job.sheet}`}
        initialSort={{ columnId: 'number', isDescending: true }}
        empty={{
          title: 'No jobs yet',
          text: 'A job is a set of sheets, from the brief to the plan. It starts with a vehicle and a wish.',
          act: <Button look="primary">New job</Button>,
        }}
      />
    </>
  );
}

'use client';

import { STANDING_WORDS } from '@gusset/contracts/job';
import { formatMoney, formatShopDate } from '@gusset/units';
import { useQuery } from '@tanstack/react-query';
import { LinkButton } from '../../shared/controls/link-button.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import { listState } from '../../shared/data/list-state.ts';
import { paths } from '../../shared/paths.ts';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { Page } from '../../shared/shell/page.tsx';
import { PageHeader } from '../../shared/shell/page-header.tsx';
import { useMay } from '../../shared/shell/person.tsx';
import type { DataColumn } from '../../shared/table/data-column.ts';
import { DataTable } from '../../shared/table/data-table.tsx';
import { isLate, type JobRow, STANDING_CHIPS } from './standing-filter.ts';

/** As many as one answer holds; a shop with more finds older ones by searching. */
const SHOWN_JOBS = 200;

/** All jobs of the shop, newest first: where each stands, for whom, on which car, promised when. */
export function JobListScreen() {
  const trpc = useTRPC();
  const { shop } = useDisplay();
  const seesMoney = useMay('money.read');
  const mayOpen = useMay('job.edit');
  const query = useQuery({
    ...trpc.job.list.queryOptions({ limit: SHOWN_JOBS }),
    select: ({ rows }: { rows: readonly JobRow[] }) => rows,
  });
  const timeOf = (atMs: number) =>
    new Intl.DateTimeFormat(shop.locale, { timeStyle: 'short', timeZone: shop.timeZone }).format(atMs);
  const day = (date: string | null) => (date === null ? '' : formatShopDate(date, shop.locale, 'medium'));

  const columns: readonly DataColumn<JobRow>[] = [
    {
      id: 'number',
      header: 'Job',
      cell: (job) => job.number,
      sortBy: (job) => job.number,
      isFigures: true,
      width: '88px',
      onCard: 'side',
    },
    { id: 'title', header: 'Work', cell: (job) => job.title, sortBy: (job) => job.title, onCard: 'title' },
    {
      id: 'customer',
      header: 'Customer',
      cell: (job) => job.customer.name,
      sortBy: (job) => job.customer.name,
      onCard: 'line',
    },
    {
      id: 'vehicle',
      header: 'Vehicle',
      cell: (job) =>
        job.vehicle === null
          ? '–'
          : `${job.vehicle.name}${job.vehicle.plate === '' ? '' : ` · ${job.vehicle.plate}`}`,
      sortBy: (job) => job.vehicle?.name ?? '',
      onCard: 'line',
    },
    {
      id: 'standing',
      header: 'Stands at',
      cell: (job) => STANDING_WORDS[job.standing],
      sortBy: (job) => job.standing,
      width: '150px',
      onCard: 'line',
    },
    {
      id: 'promised',
      header: 'Promised',
      cell: (job) => (isLate(job) ? <Late job={job} day={day} /> : day(job.promisedOn)),
      sortBy: (job) => job.promisedOn,
      isFigures: true,
      width: '150px',
      onCard: 'line',
    },
    ...(seesMoney
      ? [
          {
            id: 'total',
            header: 'Total',
            cell: (job: JobRow) =>
              job.totalMinor === null
                ? ''
                : formatMoney({ minor: job.totalMinor, currency: shop.currency }, shop.locale),
            sortBy: (job: JobRow) => job.totalMinor,
            isFigures: true,
            width: '130px',
            onCard: 'left-out' as const,
          },
        ]
      : []),
  ];
  return (
    <Page>
      <PageHeader
        title="Jobs"
        acts={
          mayOpen ? (
            <LinkButton look="primary" href={paths.newJob()}>
              Open a job
            </LinkButton>
          ) : null
        }
      />
      <DataTable
        label="Jobs"
        noun={{ one: 'job', many: 'jobs' }}
        state={listState(query, timeOf)}
        columns={columns}
        rowId={(job) => job.id}
        rowName={(job) => `Job ${job.number}, ${job.title}`}
        hrefOf={(job) => paths.job(job.number)}
        wordsOf={(job) =>
          [job.number, job.title, job.customer.name, job.vehicle?.name, job.vehicle?.plate]
            .filter(Boolean)
            .join(' ')
        }
        chips={STANDING_CHIPS}
        initialSort={{ columnId: 'number', isDescending: true }}
        empty={{
          title: 'No jobs yet',
          text: 'A job is a set of drawings: brief, survey, sound, box, cutting, parts, price, plan. Open one for the next customer who calls.',
          act: mayOpen ? (
            <LinkButton look="primary" href={paths.newJob()}>
              Open a job
            </LinkButton>
          ) : null,
        }}
      />
    </Page>
  );
}

function Late({ job, day }: { readonly job: JobRow; readonly day: (date: string | null) => string }) {
  return (
    <span className="pencil">
      {day(job.promisedOn)} · late, now {day(job.forecastOn)}
    </span>
  );
}

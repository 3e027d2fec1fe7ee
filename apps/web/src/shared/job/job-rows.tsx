'use client';

import { STANDING_WORDS } from '@gusset/contracts/job';
import { useQuery } from '@tanstack/react-query';
import Link from 'next/link';
import { useTRPC } from '../data/api-client.ts';
import { shownError } from '../data/shop-error.ts';
import { Row, Rows } from '../marks/row.tsx';
import { Skeleton } from '../marks/skeleton.tsx';
import { Verdict } from '../marks/verdict.tsx';
import { paths } from '../paths.ts';

export type JobRowsProps = { readonly of: { readonly customerId: string } | { readonly vehicleId: string } };

/** What was, is and may be built for a customer, or into a car. */
export function JobRows({ of }: JobRowsProps) {
  const trpc = useTRPC();
  const query = useQuery(trpc.job.list.queryOptions({ limit: 50, ...of }));
  if (query.isPending) return <Skeleton lines={2} what="Fetching the jobs" />;
  if (query.isError) return <Verdict tone="fail" words={shownError(query.error).message} />;
  const { rows } = query.data;
  return (
    <Rows title="Jobs">
      {rows.map((job) => (
        <Row
          key={job.id}
          isWords
          label={
            <Link href={paths.job(job.number)}>
              <span className="figures">{job.number}</span> {job.title}
            </Link>
          }
        >
          {STANDING_WORDS[job.standing]}
        </Row>
      ))}
      {rows.length === 0 ? (
        <Row label="None yet" isWords>
          {''}
        </Row>
      ) : null}
    </Rows>
  );
}

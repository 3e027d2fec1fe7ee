'use client';

import { useQuery } from '@tanstack/react-query';
import Link from 'next/link';
import { useTRPC } from '../../shared/data/api-client.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { Skeleton } from '../../shared/marks/skeleton.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { paths } from '../../shared/paths.ts';

/** The cars of this model that the shop knows. */
export function ModelVehicles({ modelId }: { readonly modelId: string }) {
  const trpc = useTRPC();
  const query = useQuery(trpc.vehicle.belonging.queryOptions({ customerId: null, modelId }));
  if (query.isPending) return <Skeleton lines={2} what="Fetching the vehicles" />;
  if (query.isError) return <Verdict tone="fail" words={shownError(query.error).message} />;
  return (
    <Rows title="Vehicles of this model">
      {query.data.map((vehicle) => (
        <Row key={vehicle.id} label={<Link href={paths.vehicle(vehicle.id)}>{vehicle.customerName}</Link>}>
          {vehicle.plate || 'no plate'}
        </Row>
      ))}
      {query.data.length === 0 ? (
        <Row label="None yet" isWords>
          {''}
        </Row>
      ) : null}
    </Rows>
  );
}

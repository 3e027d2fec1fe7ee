'use client';

import { useQuery } from '@tanstack/react-query';
import Link from 'next/link';
import { LinkButton } from '../../shared/controls/link-button.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { Row, Rows } from '../../shared/marks/row.tsx';
import { Skeleton } from '../../shared/marks/skeleton.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { paths } from '../../shared/paths.ts';
import { useMay } from '../../shared/shell/person.tsx';

/** What the customer drives. */
export function CustomerVehicles({ customerId }: { readonly customerId: string }) {
  const trpc = useTRPC();
  const mayEdit = useMay('vehicle.edit');
  const query = useQuery(trpc.vehicle.belonging.queryOptions({ customerId, modelId: null }));
  if (query.isPending) return <Skeleton lines={2} what="Fetching the vehicles" />;
  if (query.isError) return <Verdict tone="fail" words={shownError(query.error).message} />;
  const rows = query.data;
  return (
    <div>
      <Rows title="Vehicles">
        {rows.map((vehicle) => (
          <Row key={vehicle.id} label={<Link href={paths.vehicle(vehicle.id)}>{vehicle.name}</Link>}>
            {vehicle.plate || 'no plate'}
          </Row>
        ))}
        {rows.length === 0 ? (
          <Row label="None yet" isWords>
            {''}
          </Row>
        ) : null}
      </Rows>
      {mayEdit ? (
        <p>
          <LinkButton look="quiet" href={paths.newVehicle(customerId)}>
            Add a vehicle
          </LinkButton>
        </p>
      ) : null}
    </div>
  );
}

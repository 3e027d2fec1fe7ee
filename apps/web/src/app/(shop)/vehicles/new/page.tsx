import { idSchema } from '@gusset/contracts/common';
import type { Metadata } from 'next';
import { VehicleScreen } from '../../../../features/vehicles/vehicle-screen.tsx';

export const metadata: Metadata = { title: 'New vehicle' };

export default async function NewVehiclePage({
  searchParams,
}: {
  searchParams: Promise<{ customer?: string | string[] }>;
}) {
  const customer = idSchema.safeParse((await searchParams).customer);
  return <VehicleScreen vehicle={null} {...(customer.success ? { customerId: customer.data } : {})} />;
}

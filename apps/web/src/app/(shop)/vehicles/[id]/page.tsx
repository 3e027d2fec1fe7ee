import type { Metadata } from 'next';
import { VehicleScreen } from '../../../../features/vehicles/vehicle-screen.tsx';
import { readRecord } from '../../../../shared/record/read-record.ts';

export const metadata: Metadata = { title: 'Vehicle' };

export default async function VehiclePage({ params }: { params: Promise<{ id: string }> }) {
  return <VehicleScreen vehicle={await readRecord(params, (api, id) => api.vehicle.read.query({ id }))} />;
}

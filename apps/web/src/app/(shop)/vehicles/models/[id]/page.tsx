import type { Metadata } from 'next';
import { ModelScreen } from '../../../../../features/vehicles/model-screen.tsx';
import { readRecord } from '../../../../../shared/record/read-record.ts';

export const metadata: Metadata = { title: 'Vehicle model' };

export default async function VehicleModelPage({ params }: { params: Promise<{ id: string }> }) {
  return <ModelScreen model={await readRecord(params, (api, id) => api.vehicleModel.read.query({ id }))} />;
}

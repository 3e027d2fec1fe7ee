import type { Metadata } from 'next';
import { InCarScreen } from '../../../../../../features/measurements/in-car-screen.tsx';
import { readRecord } from '../../../../../../shared/record/read-record.ts';

export const metadata: Metadata = { title: 'In this car' };

type Props = { readonly params: Promise<{ readonly id: string }> };

export default async function InCarPage({ params }: Props) {
  const { model, start, transfers } = await readRecord(params, async (api, id) => ({
    model: await api.vehicleModel.read.query({ id }),
    start: await api.measurement.vehicleModel.list.query({ modelId: id }),
    transfers: await api.measurement.vehicleModel.transfers.query({ modelId: id }),
  }));
  return <InCarScreen model={model} start={start} transfers={transfers} />;
}

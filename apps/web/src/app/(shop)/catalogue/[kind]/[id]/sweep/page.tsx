import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { DriverSweepScreen } from '../../../../../../features/measurements/driver-sweep-screen.tsx';
import { partKindOf } from '../../../../../../shared/catalogue-kinds.ts';
import { readRecord } from '../../../../../../shared/record/read-record.ts';

export const metadata: Metadata = { title: 'From an impedance sweep' };

type Props = { readonly params: Promise<{ readonly kind: string; readonly id: string }> };

export default async function DriverSweepPage({ params }: Props) {
  if (partKindOf((await params).kind) !== 'driver') notFound();
  const { driver, start } = await readRecord(params, async (api, id) => ({
    driver: await api.part.driver.read.query({ id }),
    start: await api.measurement.driver.list.query({ driverId: id }),
  }));
  return <DriverSweepScreen driver={driver} start={start} />;
}

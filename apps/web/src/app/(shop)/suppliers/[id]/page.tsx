import type { Metadata } from 'next';
import { SupplierScreen } from '../../../../features/suppliers/supplier-screen.tsx';
import { readRecord } from '../../../../shared/record/read-record.ts';

export const metadata: Metadata = { title: 'Supplier' };

export default async function SupplierPage({ params }: { params: Promise<{ id: string }> }) {
  return <SupplierScreen supplier={await readRecord(params, (api, id) => api.supplier.read.query({ id }))} />;
}

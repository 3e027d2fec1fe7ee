import type { Metadata } from 'next';
import { CustomerScreen } from '../../../../features/customers/customer-screen.tsx';
import { readRecord } from '../../../../shared/record/read-record.ts';

export const metadata: Metadata = { title: 'Customer' };

export default async function CustomerPage({ params }: { params: Promise<{ id: string }> }) {
  const customer = await readRecord(params, (api, id) => api.customer.read.query({ id }));
  return <CustomerScreen customer={customer} />;
}

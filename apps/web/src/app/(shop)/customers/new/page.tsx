import type { Metadata } from 'next';
import { CustomerScreen } from '../../../../features/customers/customer-screen.tsx';

export const metadata: Metadata = { title: 'New customer' };

export default function NewCustomerPage() {
  return <CustomerScreen customer={null} />;
}

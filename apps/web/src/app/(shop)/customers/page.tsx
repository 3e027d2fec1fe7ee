import type { Metadata } from 'next';
import { CustomerListScreen } from '../../../features/customers/customer-list-screen.tsx';

export const metadata: Metadata = { title: 'Customers' };

export default function CustomersPage() {
  return <CustomerListScreen />;
}

import type { Metadata } from 'next';
import { SupplierScreen } from '../../../../features/suppliers/supplier-screen.tsx';

export const metadata: Metadata = { title: 'New supplier' };

export default function NewSupplierPage() {
  return <SupplierScreen supplier={null} />;
}

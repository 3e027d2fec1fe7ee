import type { Metadata } from 'next';
import { CatalogueSections } from '../../../features/catalogue/catalogue-sections.tsx';
import { SupplierListScreen } from '../../../features/suppliers/supplier-list-screen.tsx';

export const metadata: Metadata = { title: 'Suppliers' };

export default function SuppliersPage() {
  return <SupplierListScreen above={<CatalogueSections here="suppliers" />} />;
}

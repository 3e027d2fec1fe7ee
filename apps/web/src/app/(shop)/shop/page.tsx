import { redirect } from 'next/navigation';
import { paths } from '../../../shared/paths.ts';

export default function ShopPage() {
  redirect(paths.shop());
}

import type { Metadata } from 'next';
import { BaysScreen } from '../../features/bays/bays-screen.tsx';
import { serverApi } from '../../shared/data/server-api.ts';

export const metadata: Metadata = { title: 'Today in the bays' };

export default async function TodayPage() {
  const api = await serverApi();
  return <BaysScreen start={await api.plan.current.query()} />;
}

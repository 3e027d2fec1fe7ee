import type { Metadata } from 'next';
import { CalendarScreen } from '../../../../features/calendar/calendar-screen.tsx';
import { serverApi } from '../../../../shared/data/server-api.ts';

export const metadata: Metadata = { title: 'My calendar' };

export default async function CalendarPage() {
  const api = await serverApi();
  return <CalendarScreen start={await api.calendar.mine.query()} />;
}

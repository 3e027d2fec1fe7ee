import type { Metadata } from 'next';
import { NewJobScreen } from '../../../../features/jobs/new-job-screen.tsx';

export const metadata: Metadata = { title: 'Open a job' };

export default function NewJobPage() {
  return <NewJobScreen />;
}

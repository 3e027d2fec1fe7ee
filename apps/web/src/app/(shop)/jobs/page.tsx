import type { Metadata } from 'next';
import { JobListScreen } from '../../../features/jobs/job-list-screen.tsx';

export const metadata: Metadata = { title: 'Jobs' };

export default function JobsPage() {
  return <JobListScreen />;
}

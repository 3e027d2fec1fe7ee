import { redirect } from 'next/navigation';
import { paths } from '../../../../shared/paths.ts';

export default async function JobPage({ params }: { params: Promise<{ number: string }> }) {
  redirect(paths.job((await params).number, 'brief'));
}

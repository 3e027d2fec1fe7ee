import type { Metadata } from 'next';
import { PartsScreen } from '../../../../../features/parts/parts-screen.tsx';
import { readJob } from '../../../../../shared/job/read-job.ts';

type Params = { params: Promise<{ number: string }> };

export async function generateMetadata({ params }: Params): Promise<Metadata> {
  return { title: `Parts · job ${(await params).number}` };
}

export default async function PartsPage({ params }: Params) {
  const { opened, sheet } = await readJob((await params).number, (api, { job }) =>
    api.sheet.parts.read.query({ jobId: job.id }),
  );
  return <PartsScreen opened={opened} start={sheet} />;
}

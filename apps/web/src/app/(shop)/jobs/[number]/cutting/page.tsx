import type { Metadata } from 'next';
import { CuttingScreen } from '../../../../../features/cutting/cutting-screen.tsx';
import { readJob } from '../../../../../shared/job/read-job.ts';

type Params = { params: Promise<{ number: string }> };

export async function generateMetadata({ params }: Params): Promise<Metadata> {
  return { title: `Cutting · job ${(await params).number}` };
}

export default async function CuttingPage({ params }: Params) {
  const { opened, sheet } = await readJob((await params).number, (api, { job }) =>
    api.sheet.cutting.read.query({ jobId: job.id }),
  );
  return <CuttingScreen opened={opened} start={sheet} />;
}

import type { Metadata } from 'next';
import { BriefScreen } from '../../../../../features/brief/brief-screen.tsx';
import { readJob } from '../../../../../shared/job/read-job.ts';

type Params = { params: Promise<{ number: string }> };

export async function generateMetadata({ params }: Params): Promise<Metadata> {
  return { title: `Brief · job ${(await params).number}` };
}

export default async function BriefPage({ params }: Params) {
  const { opened, sheet } = await readJob((await params).number, (api, { job }) =>
    api.sheet.brief.read.query({ jobId: job.id }),
  );
  return <BriefScreen opened={opened} start={sheet} />;
}

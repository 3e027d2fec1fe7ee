import type { Metadata } from 'next';
import { BuiltBoxScreen } from '../../../../../features/measurements/built-box-screen.tsx';
import { readJob } from '../../../../../shared/job/read-job.ts';

type Params = { params: Promise<{ number: string }> };

export async function generateMetadata({ params }: Params): Promise<Metadata> {
  return { title: `Built box · job ${(await params).number}` };
}

export default async function BuiltBoxPage({ params }: Params) {
  const { opened, sheet } = await readJob((await params).number, (api, { job }) =>
    api.measurement.job.list.query({ jobId: job.id }),
  );
  return <BuiltBoxScreen opened={opened} start={sheet} />;
}

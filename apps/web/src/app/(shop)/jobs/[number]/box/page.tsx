import type { Metadata } from 'next';
import { readJob } from '../../../../../shared/job/read-job.ts';
import { BoxWithWay } from './box-with-way.tsx';

type Params = { params: Promise<{ number: string }> };

export async function generateMetadata({ params }: Params): Promise<Metadata> {
  return { title: `Box · job ${(await params).number}` };
}

export default async function BoxPage({ params }: Params) {
  const { opened, sheet } = await readJob((await params).number, (api, { job }) =>
    api.sheet.box.read.query({ jobId: job.id }),
  );
  return <BoxWithWay opened={opened} start={sheet} />;
}

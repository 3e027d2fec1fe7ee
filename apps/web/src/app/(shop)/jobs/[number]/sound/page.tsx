import type { Metadata } from 'next';
import { SoundScreen } from '../../../../../features/sound/sound-screen.tsx';
import { readJob } from '../../../../../shared/job/read-job.ts';

type Params = { params: Promise<{ number: string }> };

export async function generateMetadata({ params }: Params): Promise<Metadata> {
  return { title: `Sound · job ${(await params).number}` };
}

export default async function SoundPage({ params }: Params) {
  const { opened, sheet } = await readJob((await params).number, (api, { job }) =>
    api.sheet.sound.read.query({ jobId: job.id }),
  );
  return <SoundScreen opened={opened} start={sheet} />;
}

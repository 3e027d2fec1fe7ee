import type { Metadata } from 'next';
import { PlanScreen } from '../../../../../features/plan/plan-screen.tsx';
import { readJob } from '../../../../../shared/job/read-job.ts';

type Params = { params: Promise<{ number: string }> };

export async function generateMetadata({ params }: Params): Promise<Metadata> {
  return { title: `Plan · job ${(await params).number}` };
}

export default async function PlanPage({ params }: Params) {
  const { opened, sheet } = await readJob((await params).number, (api, { job }) =>
    api.sheet.plan.read.query({ jobId: job.id }),
  );
  return <PlanScreen opened={opened} start={sheet} />;
}

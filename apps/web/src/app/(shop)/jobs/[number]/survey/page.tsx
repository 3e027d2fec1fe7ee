import type { Metadata } from 'next';
import { SurveyScreen } from '../../../../../features/survey/survey-screen.tsx';
import { readJob } from '../../../../../shared/job/read-job.ts';

type Params = { params: Promise<{ number: string }> };

export async function generateMetadata({ params }: Params): Promise<Metadata> {
  return { title: `Survey · job ${(await params).number}` };
}

export default async function SurveySheetPage({ params }: Params) {
  const { opened, sheet } = await readJob((await params).number, (api, { job }) =>
    api.sheet.survey.read.query({ jobId: job.id }),
  );
  return <SurveyScreen opened={opened} start={sheet} />;
}

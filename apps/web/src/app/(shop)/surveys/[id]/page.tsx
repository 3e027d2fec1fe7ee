import type { Metadata } from 'next';
import { MeasuringScreen } from '../../../../features/surveys/measuring-screen.tsx';
import { readRecord } from '../../../../shared/record/read-record.ts';

export const metadata: Metadata = { title: 'Measuring' };

type Props = { readonly params: Promise<{ readonly id: string }> };

export default async function SurveyPage({ params }: Props) {
  const survey = await readRecord(params, (api, surveyId) => api.survey.read.query({ surveyId }));
  return <MeasuringScreen key={survey.id} start={survey} />;
}

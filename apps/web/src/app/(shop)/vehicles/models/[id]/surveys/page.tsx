import type { Metadata } from 'next';
import { ModelSurveysScreen } from '../../../../../../features/surveys/model-surveys-screen.tsx';
import { suggestedForm } from '../../../../../../features/surveys/suggested-form.ts';
import { readRecord } from '../../../../../../shared/record/read-record.ts';

export const metadata: Metadata = { title: 'Surveys' };

type Props = { readonly params: Promise<{ readonly id: string }> };

export default async function ModelSurveysPage({ params }: Props) {
  const { start, body } = await readRecord(params, async (api, id) => ({
    start: await api.survey.ofModel.query({ modelId: id, archived: false }),
    body: (await api.vehicleModel.read.query({ id })).body,
  }));
  return <ModelSurveysScreen start={start} suggested={suggestedForm(body)} />;
}

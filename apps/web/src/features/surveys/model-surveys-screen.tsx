'use client';

import { sketchCavity } from '@gusset/cargo';
import { asMeasurement, narrowingSlab, surveyForm, toKeepFreeZone, toObstruction } from '@gusset/sheets';
import { formatShopDate, isRefusal } from '@gusset/units';
import { useQuery } from '@tanstack/react-query';
import { useSearchParams } from 'next/navigation';
import { LinkButton } from '../../shared/controls/link-button.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { EmptyState } from '../../shared/marks/empty-state.tsx';
import { Skeleton } from '../../shared/marks/skeleton.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { paths } from '../../shared/paths.ts';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { Page } from '../../shared/shell/page.tsx';
import { PageHeader } from '../../shared/shell/page-header.tsx';
import { useMay } from '../../shared/shell/person.tsx';
import { SurveyDrawing } from '../../shared/survey/survey-drawing.tsx';
import { CompareSpaces } from './compare-spaces.tsx';
import styles from './model-surveys-screen.module.css';
import { NewSurveyForm, type NewSurveyFormProps } from './new-survey-form.tsx';

type SurveysOfModel = ApiOutputs['survey']['ofModel'];
type SurveyHead = SurveysOfModel['surveys'][number];

export type ModelSurveysScreenProps = {
  readonly start: SurveysOfModel;
  readonly suggested: NewSurveyFormProps['suggested'];
};

/** The measured spaces of a model: each with its section, and a new one to begin. */
export function ModelSurveysScreen({ start, suggested }: ModelSurveysScreenProps) {
  const trpc = useTRPC();
  const mayMeasure = useMay('survey.edit');
  const showsArchived = useSearchParams().get('away') === '1';
  const { model } = start;
  const { data, error } = useQuery({
    ...trpc.survey.ofModel.queryOptions({ modelId: model.id, archived: showsArchived }),
    initialData: showsArchived ? undefined : start,
  });
  const spaces = newestOfEach(data?.surveys ?? []);
  return (
    <Page>
      <PageHeader
        kicker="Surveys of a model"
        title={model.name}
        acts={
          <>
            <LinkButton href={paths.vehicleModel(model.id)}>The model</LinkButton>
            <LinkButton
              href={showsArchived ? paths.modelSurveys(model.id) : `${paths.modelSurveys(model.id)}?away=1`}
            >
              {showsArchived ? 'In use' : 'Put away'}
            </LinkButton>
          </>
        }
      />
      {error === null ? null : <Verdict tone="fail" words={shownError(error).message} />}
      <div className={styles.layout}>
        <section aria-label="Measured spaces">
          {data === undefined && error === null ? <Skeleton lines={6} what="Fetching the surveys" /> : null}
          {data !== undefined && spaces.length === 0 ? (
            <EmptyState title={showsArchived ? 'Nothing put away' : 'Nothing measured yet'}>
              {showsArchived
                ? 'Surveys that were put away are listed here.'
                : 'Measure the space once; every job in a car of this model reads it.'}
            </EmptyState>
          ) : null}
          <ul className={styles.spaces}>
            {spaces.map((survey) => (
              <li key={survey.id}>
                <SpaceCard head={survey} />
              </li>
            ))}
          </ul>
          <CompareSpaces surveys={data?.surveys ?? []} />
        </section>
        {mayMeasure && !model.archived && !showsArchived ? (
          <section className={styles.begin} aria-label="Measure another space">
            <h2>Measure {spaces.length === 0 ? 'a space' : 'another space'}</h2>
            <NewSurveyForm modelId={model.id} suggested={suggested} />
          </section>
        ) : null}
      </div>
    </Page>
  );
}

/** They come newest first within a space. */
function newestOfEach(surveys: readonly SurveyHead[]): readonly SurveyHead[] {
  const seen = new Set<string>();
  return surveys.filter(({ formKind, spaceName }) => {
    const space = `${formKind} ${spaceName}`;
    if (seen.has(space)) return false;
    seen.add(space);
    return true;
  });
}

function SpaceCard({ head }: { readonly head: SurveyHead }) {
  const trpc = useTRPC();
  const { shop } = useDisplay();
  const { data: survey } = useQuery(trpc.survey.read.queryOptions({ surveyId: head.id }));
  const title = head.spaceName === '' ? head.formName : head.spaceName;
  const standing =
    head.missing.length > 0
      ? `${head.missing.length} ${head.missing.length === 1 ? 'letter' : 'letters'} to go: ${head.missing.map(({ letter }) => letter).join(', ')}`
      : head.settledAt === null
        ? 'Complete, not settled'
        : 'Settled';
  const by = [head.takenBy, head.takenOn === null ? '' : formatShopDate(head.takenOn, shop.locale)]
    .filter((part) => part !== '')
    .join(', ');
  return (
    <a className={styles.space} href={paths.survey(head.id)}>
      <span className={styles.sketch} inert>
        {survey === undefined ? null : <SpaceSketch survey={survey} />}
      </span>
      <span className={styles.words}>
        <strong>{title}</strong>
        <span>{[head.seatState, `revision ${head.revision}`].filter((part) => part !== '').join(' · ')}</span>
        <span data-open={head.missing.length > 0}>{standing}</span>
        {by === '' ? null : <span>{by}</span>}
        {head.photoCount === 0 ? null : (
          <span>{head.photoCount === 1 ? '1 photo' : `${head.photoCount} photos`}</span>
        )}
      </span>
    </a>
  );
}

function SpaceSketch({ survey }: { readonly survey: ApiOutputs['survey']['read'] }) {
  const form = surveyForm(survey.formKind, survey.extras.free);
  if (isRefusal(form)) return null;
  const sketch = sketchCavity(
    form,
    survey.readings.map((reading) => asMeasurement(form, reading)),
  );
  const { obstructions, keepFree, narrowings } = survey.extras;
  return (
    <SurveyDrawing
      title={survey.modelName}
      form={form}
      sketch={{ ...sketch, labels: [] }}
      view="section"
      activeKey={null}
      readingText={noText}
      showsAll={false}
      obstructions={obstructions.map(toObstruction)}
      keepFree={keepFree.map(toKeepFreeZone)}
      narrowings={narrowings.map(narrowingSlab)}
      widthPx={240}
      heightPx={170}
      isTight
    />
  );
}

const noText = () => null;

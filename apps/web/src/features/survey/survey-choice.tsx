'use client';

import { formatShopDate } from '@gusset/units';
import { useQuery } from '@tanstack/react-query';
import { Button } from '../../shared/controls/button.tsx';
import { LinkButton } from '../../shared/controls/link-button.tsx';
import { useTRPC } from '../../shared/data/api-client.ts';
import { shownError } from '../../shared/data/shop-error.ts';
import { EmptyState } from '../../shared/marks/empty-state.tsx';
import { Skeleton } from '../../shared/marks/skeleton.tsx';
import { Verdict } from '../../shared/marks/verdict.tsx';
import { paths } from '../../shared/paths.ts';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { revisionTitle } from './revision-title.ts';
import styles from './survey-screen.module.css';

export type SurveyChoiceProps = {
  readonly modelId: string;
  readonly isReadOnly: boolean;
  readonly onChoose: (surveyId: string) => void;
};

/** The measured spaces of the car's model, to pick the one that this job is built into. */
export function SurveyChoice({ modelId, isReadOnly, onChoose }: SurveyChoiceProps) {
  const trpc = useTRPC();
  const { shop } = useDisplay();
  const { data, error } = useQuery(trpc.survey.ofModel.queryOptions({ modelId }));
  if (error !== null) return <Verdict tone="fail" words={shownError(error).message} />;
  if (data === undefined) return <Skeleton lines={5} what="Fetching the surveys" />;
  const measure = <LinkButton href={paths.modelSurveys(modelId)}>Measure a space</LinkButton>;
  if (data.surveys.length === 0) {
    return (
      <EmptyState title={`No ${data.model.name} is measured yet`} act={isReadOnly ? undefined : measure}>
        Measure it once: every later job in a car of this model starts from it.
      </EmptyState>
    );
  }
  return (
    <div className={styles.choice}>
      <h2>Which space is it built into?</h2>
      <ul>
        {data.surveys.map((survey) => (
          <li key={survey.id}>
            <span>
              <strong>{revisionTitle(survey)}</strong>
              <small>
                {[
                  survey.missing.length > 0
                    ? `letters to go: ${survey.missing.map(({ letter }) => letter).join(', ')}`
                    : survey.settledAt === null
                      ? 'complete, not settled'
                      : 'settled',
                  survey.takenBy,
                  survey.takenOn === null ? null : formatShopDate(survey.takenOn, shop.locale),
                ]
                  .filter((part) => part !== null && part !== '')
                  .join(' · ')}
              </small>
            </span>
            {isReadOnly ? null : (
              <Button
                aria-label={`Use this one: ${revisionTitle(survey)}`}
                onPress={() => onChoose(survey.id)}
              >
                Use this one
              </Button>
            )}
          </li>
        ))}
      </ul>
      {isReadOnly ? null : measure}
    </div>
  );
}

'use client';

import type { SectionForm } from '@gusset/contracts/cargo';
import { useQueryClient } from '@tanstack/react-query';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '../../shared/controls/button.tsx';
import { useTRPC, useTRPCClient } from '../../shared/data/api-client.ts';
import { type ShownError, shownError } from '../../shared/data/shop-error.ts';
import { Menu } from '../../shared/overlays/menu.tsx';
import { useMessages } from '../../shared/overlays/messages.tsx';
import { paths } from '../../shared/paths.ts';
import { PageHeader } from '../../shared/shell/page-header.tsx';
import styles from './measuring-screen.module.css';
import type { SurveyAnswer } from './photo-upload.ts';
import { sendWords } from './survey-acts.ts';
import { SurveyDetailsDialog } from './survey-details-dialog.tsx';
import type { SurveyActs } from './use-survey-acts.ts';

export type MeasuringHeaderProps = {
  readonly survey: SurveyAnswer;
  readonly form: SectionForm;
  readonly sending: SurveyActs;
  readonly waiting: number;
  readonly isReadOnly: boolean;
  readonly onFault: (error: ShownError | null) => void;
};

/** Which space of which model, how much is sent, and what can be done with the whole survey. */
export function MeasuringHeader({
  survey,
  form,
  sending,
  waiting,
  isReadOnly,
  onFault,
}: MeasuringHeaderProps) {
  const router = useRouter();
  const say = useMessages();
  const client = useTRPCClient();
  const trpc = useTRPC();
  const queries = useQueryClient();
  const [isDescribing, setIsDescribing] = useState(false);
  const [isBusy, setIsBusy] = useState(false);
  const title = [survey.spaceName === '' ? form.name : survey.spaceName, survey.seatState]
    .filter((words) => words !== '')
    .join(', ');
  const act = async (work: () => Promise<SurveyAnswer>, done: string) => {
    setIsBusy(true);
    onFault(null);
    try {
      const answer = await work();
      queries.setQueryData(trpc.survey.read.queryKey({ surveyId: answer.id }), answer);
      say(done);
    } catch (error) {
      onFault(shownError(error));
    } finally {
      setIsBusy(false);
    }
  };
  const isComplete = survey.missing.length === 0;
  const words = sendWords(waiting, sending.isOnline, sending.isStopped);
  return (
    <>
      <PageHeader
        kicker={`Survey · ${survey.modelName} · rev ${survey.revision}${survey.settledAt === null ? '' : ' · settled'}`}
        title={title}
        state={
          <p className={styles.sendState} role="status" data-waits={words !== null}>
            {words ?? (survey.takenCount === 0 ? '' : 'All sent')}
          </p>
        }
        acts={
          <>
            <Menu
              label="More"
              groups={[
                {
                  acts: [
                    {
                      id: 'sheet',
                      label: 'Blank measuring sheet',
                      detail: 'PDF to write on',
                      onAct: () =>
                        void window.open(`/api/papers/survey-sheet/${survey.id}`, '_blank', 'noopener'),
                    },
                    {
                      id: 'all',
                      label: 'All surveys of this model',
                      href: paths.modelSurveys(survey.modelId),
                    },
                    ...(isReadOnly
                      ? []
                      : [
                          {
                            id: 'describe',
                            label: 'Name, seats, day and notes',
                            onAct: () => setIsDescribing(true),
                          },
                        ]),
                  ],
                },
                ...(survey.revisions.length > 1
                  ? [
                      {
                        title: 'Revisions',
                        acts: survey.revisions.map(({ id, revision, settledAt }) => ({
                          id,
                          label: `Revision ${revision}`,
                          detail: settledAt === null ? 'being measured' : 'settled',
                          onAct: () => router.push(paths.survey(id)),
                        })),
                      },
                    ]
                  : []),
                ...(isReadOnly && !survey.archived
                  ? []
                  : [
                      {
                        acts: [
                          {
                            id: 'archive',
                            label: survey.archived ? 'Bring back' : 'Put away',
                            removes: !survey.archived,
                            onAct: () =>
                              void act(
                                () =>
                                  client.survey.archive.mutate({
                                    surveyId: survey.id,
                                    archived: !survey.archived,
                                  }),
                                survey.archived
                                  ? 'The survey is back.'
                                  : 'Put away. Issued sheets keep what they read.',
                              ),
                          },
                        ],
                      },
                    ]),
              ]}
            />
            {isReadOnly || survey.settledAt !== null ? null : (
              <Button
                look="primary"
                isPending={isBusy}
                isDisabled={!isComplete || waiting > 0}
                onPress={() =>
                  void act(
                    () => client.survey.settle.mutate({ surveyId: survey.id }),
                    `Revision ${survey.revision} is settled. Measuring on makes the next one.`,
                  )
                }
              >
                Settle revision {survey.revision}
              </Button>
            )}
          </>
        }
      />
      <SurveyDetailsDialog
        survey={survey}
        isOpen={isDescribing}
        onClose={() => setIsDescribing(false)}
        onSaved={(answer) => {
          queries.setQueryData(trpc.survey.read.queryKey({ surveyId: answer.id }), answer);
          setIsDescribing(false);
          if (answer.id !== survey.id) router.replace(paths.survey(answer.id));
        }}
      />
    </>
  );
}

'use client';

import { sketchCavity } from '@gusset/cargo';
import type { SurveyFacts, SurveyInput, SurveyResult, SurveySnapshot } from '@gusset/contracts/survey';
import {
  asMeasurement,
  narrowingSlab,
  spaceInState,
  spaceWords,
  surveyForm,
  toKeepFreeZone,
  toObstruction,
} from '@gusset/sheets';
import { isRefusal } from '@gusset/units';
import { useCallback, useMemo } from 'react';
import { useTRPCClient } from '../../shared/data/api-client.ts';
import type { ApiOutputs } from '../../shared/data/api-types.ts';
import type { OpenedJob } from '../../shared/job/job-sheet.ts';
import { JobSheetPage, useTitleCells } from '../../shared/job/job-sheet-page.tsx';
import { useJobSheet } from '../../shared/job/use-job-sheet.ts';
import { EmptyState } from '../../shared/marks/empty-state.tsx';
import { SheetFrame } from '../../shared/sheet/sheet-frame.tsx';
import { useDisplay } from '../../shared/shell/display-provider.tsx';
import { PHONE_WIDTH, useMediaQuery } from '../../shared/shell/use-media-query.ts';
import { figureWords } from '../../shared/survey/reading-words.ts';
import { ReconciledTable } from '../../shared/survey/reconciled-table.tsx';
import { SurveyDrawing } from '../../shared/survey/survey-drawing.tsx';
import { SurveyChoice } from './survey-choice.tsx';
import { SurveyNotes } from './survey-notes.tsx';
import styles from './survey-screen.module.css';
import { useWeighed } from './use-weighed.ts';
import { WallTable } from './wall-table.tsx';

const FIELD_WORDS: Readonly<Record<keyof SurveyInput, string>> = {
  surveyId: 'The survey',
  stateId: 'Seats and floor',
  reconciles: 'Walls stand on the weighed readings',
  deltas: 'This car',
  notes: 'Notes',
};

export type SurveyScreenProps = {
  readonly opened: OpenedJob;
  readonly start: ApiOutputs['sheet']['survey']['read'];
};

const readSurveyInputDraft = async (kept: unknown): Promise<SurveyInput | null> => {
  const { surveyInputSchema } = await import('@gusset/contracts/survey');
  return surveyInputSchema.safeParse(kept).data ?? null;
};

/** Sheet 02: the measured space that this job is built into. */
export function SurveyScreen({ opened, start }: SurveyScreenProps) {
  const { job } = opened;
  const { lengthUnit } = useDisplay();
  const sheet = useJobSheet<SurveyInput, SurveyFacts, null, SurveyResult>({
    kind: 'survey',
    jobId: job.id,
    jobNumber: job.number,
    start,
    procedures: useTRPCClient().sheet.survey,
    readDraft: readSurveyInputDraft,
  });
  const titleBlock = useTitleCells(opened, sheet);
  const { survey } = sheet.data.facts;
  // Another revision of the same space keeps what was taken in this car; another space has other letters.
  const choose = (surveyId: string | null) =>
    sheet.changeNow({
      surveyId,
      stateId: null,
      ...(surveyId === sheet.data.facts.newer?.surveyId ? {} : { deltas: undefined }),
    });
  // What is drawn is what the sheet says now: never an older result under a new choice.
  const result = sheet.outcome.state === 'ready' ? sheet.outcome.result : null;
  return (
    <JobSheetPage opened={opened} sheet={sheet} fieldWords={FIELD_WORDS}>
      <SheetFrame
        viewCaption={
          survey === null
            ? undefined
            : `${spaceWords(survey.modelName, survey.spaceName, 'cargo space')} · ${lengthUnit}`
        }
        titleBlock={titleBlock}
        isStale={sheet.isStale}
        notes={
          survey === null ? undefined : (
            <SurveyNotes job={job} sheet={sheet} survey={survey} onChoose={choose} />
          )
        }
      >
        {survey === null ? (
          <ChooseFirst job={job} isReadOnly={!sheet.mayEdit} onChoose={choose} />
        ) : (
          <>
            <SurveyViews survey={survey} stateId={sheet.input.stateId} deltas={sheet.input.deltas} />
            {result === null ? null : <WallTable result={result} />}
            <Checks survey={survey} input={sheet.input} />
          </>
        )}
      </SheetFrame>
    </JobSheetPage>
  );
}

/** The readings that the checks weigh, before and after; nothing where no check was taken. */
function Checks({ survey, input }: { readonly survey: SurveySnapshot; readonly input: SurveyInput }) {
  const weighed = useWeighed(survey, input);
  if (weighed === null) return null;
  return (
    <div className={styles.checks}>
      <ReconciledTable {...weighed} />
    </div>
  );
}

type ChooseFirstProps = {
  readonly job: OpenedJob['job'];
  readonly isReadOnly: boolean;
  readonly onChoose: (surveyId: string) => void;
};

function ChooseFirst({ job, isReadOnly, onChoose }: ChooseFirstProps) {
  if (job.vehicle === null) {
    return (
      <EmptyState title="This job has no vehicle yet">
        Choose the car on the job first; its model’s surveys are offered here.
      </EmptyState>
    );
  }
  return <SurveyChoice modelId={job.vehicle.modelId} isReadOnly={isReadOnly} onChoose={onChoose} />;
}

/** Section and plan with every dimension; half measured ones too, as far as they go. */
function SurveyViews({
  survey,
  stateId,
  deltas,
}: {
  readonly survey: SurveySnapshot;
  readonly stateId: string | null;
  readonly deltas: SurveyInput['deltas'];
}) {
  const { lengthUnit, shop } = useDisplay();
  const isPhone = useMediaQuery(PHONE_WIDTH);
  const drawn = useMemo(() => drawnFrom(survey, stateId, deltas), [survey, stateId, deltas]);
  const readingText = useCallback(
    (key: string) => {
      const dimension = drawn?.form.dimensions.find((each) => each.key === key);
      const value = drawn?.values.get(key);
      if (isPhone || dimension === undefined || value === undefined) return null;
      return figureWords(dimension, value, { unit: lengthUnit, denominator: shop.inchDenominator });
    },
    [drawn, isPhone, lengthUnit, shop.inchDenominator],
  );
  if (drawn === null) return null;
  const { values: _values, ...parts } = drawn;
  const options = { ...parts, title: survey.modelName, activeKey: null, readingText, showsAll: false };
  return (
    <div className={styles.views}>
      <SurveyDrawing
        {...options}
        view="section"
        widthPx={isPhone ? 390 : 720}
        heightPx={isPhone ? 270 : 430}
      />
      <SurveyDrawing {...options} view="plan" widthPx={isPhone ? 390 : 720} heightPx={isPhone ? 260 : 320} />
    </div>
  );
}

function drawnFrom(survey: SurveySnapshot, stateId: string | null, deltas: SurveyInput['deltas']) {
  const { extras, readings } = survey;
  const form = surveyForm(survey.formKind, extras.free);
  if (isRefusal(form)) return null;
  const inState = spaceInState({ form, readings, extras, deltas }, stateId);
  const measurements = isRefusal(inState)
    ? readings.map((reading) => asMeasurement(form, reading))
    : inState.measurements;
  const surroundings = isRefusal(inState)
    ? { obstructions: extras.obstructions.map(toObstruction), keepFree: extras.keepFree.map(toKeepFreeZone) }
    : inState.surroundings;
  return {
    form,
    sketch: sketchCavity(form, measurements),
    narrowings: extras.narrowings.map(narrowingSlab),
    ...surroundings,
    values: new Map(
      measurements.map((taken) => [taken.key, 'valueMm' in taken ? taken.valueMm : taken.valueRad]),
    ),
  };
}

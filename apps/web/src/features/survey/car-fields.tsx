'use client';

import { reconcileSurvey } from '@gusset/cargo';
import type { AdjustedReading, SectionForm } from '@gusset/contracts/cargo';
import type { SurveyFacts, SurveyInput, SurveyResult, SurveySnapshot } from '@gusset/contracts/survey';
import { spaceInState, surveyForm } from '@gusset/sheets';
import { isRefusal } from '@gusset/units';
import { useMemo } from 'react';
import { Checkbox } from '../../shared/controls/checkbox.tsx';
import type { JobSheet } from '../../shared/job/use-job-sheet.ts';
import { OtherReadings } from '../../shared/survey/other-readings.tsx';
import { ReconciledTable } from '../../shared/survey/reconciled-table.tsx';
import styles from './survey-screen.module.css';

export type CarFieldsProps = {
  readonly sheet: JobSheet<SurveyInput, SurveyFacts, null, SurveyResult>;
  readonly survey: SurveySnapshot;
};

/** What reads otherwise in this customer's car, and whether the walls stand on weighed readings. */
export function CarFields({ sheet, survey }: CarFieldsProps) {
  const { input, changeNow, mayEdit } = sheet;
  const { deltas = [], reconciles = false, stateId } = input;
  const form = useMemo(() => surveyForm(survey.formKind, survey.extras.free), [survey]);
  const adjusted = useMemo(
    () => (isRefusal(form) ? null : weighed(form, survey, deltas, stateId)),
    [form, survey, deltas, stateId],
  );
  if (isRefusal(form)) return null;
  return (
    <>
      {deltas.length === 0 && !mayEdit ? null : (
        <section className={styles.car} aria-label="This car">
          <h3 className="caption">This car</h3>
          {deltas.length === 0 ? <p>As the model was measured.</p> : null}
          <OtherReadings
            form={form}
            measured={survey.readings}
            replaced={deltas}
            onChange={(next) => changeNow({ deltas: next.length === 0 ? undefined : [...next] })}
            label="A letter that reads otherwise in this car"
            hint="The model keeps its own; this holds for this job"
            isReadOnly={!mayEdit}
          />
        </section>
      )}
      {adjusted === null ? null : (
        <section className={styles.car} aria-label="Checks">
          <h3 className="caption">Checks</h3>
          <Checkbox
            isSelected={reconciles}
            onChange={(isOn) => changeNow({ reconciles: isOn ? true : undefined })}
            isDisabled={!mayEdit}
            detail="Off: they stand on the readings as taken"
          >
            Walls stand on the weighed readings
          </Checkbox>
          <ReconciledTable form={form} adjusted={adjusted} />
        </section>
      )}
    </>
  );
}

/** Null without a check, or where the readings leave no section: the verdict says that already. */
function weighed(
  form: SectionForm,
  { readings, extras }: SurveySnapshot,
  deltas: NonNullable<SurveyInput['deltas']>,
  stateId: string | null,
): readonly AdjustedReading[] | null {
  const inState = spaceInState({ form, readings, extras, deltas }, stateId);
  if (isRefusal(inState)) return null;
  const adjusted = reconcileSurvey(form, inState.measurements);
  return adjusted === null || isRefusal(adjusted) ? null : adjusted;
}

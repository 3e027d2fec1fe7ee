'use client';

import type { SurveyFacts, SurveyInput, SurveyResult, SurveySnapshot } from '@gusset/contracts/survey';
import { surveyForm } from '@gusset/sheets';
import { isRefusal } from '@gusset/units';
import { useMemo } from 'react';
import { Checkbox } from '../../shared/controls/checkbox.tsx';
import type { JobSheet } from '../../shared/job/use-job-sheet.ts';
import { OtherReadings } from '../../shared/survey/other-readings.tsx';
import styles from './survey-screen.module.css';
import { useWeighed } from './use-weighed.ts';

export type CarFieldsProps = {
  readonly sheet: JobSheet<SurveyInput, SurveyFacts, null, SurveyResult>;
  readonly survey: SurveySnapshot;
};

/** What reads otherwise in this customer's car, and whether the walls stand on weighed readings. */
export function CarFields({ sheet, survey }: CarFieldsProps) {
  const { input, changeNow, mayEdit } = sheet;
  const { deltas = [], reconciles = false } = input;
  const weighed = useWeighed(survey, input);
  const form = useMemo(() => surveyForm(survey.formKind, survey.extras.free), [survey]);
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
      {weighed === null ? null : (
        <section className={styles.car} aria-label="Checks">
          <h3 className="caption">Checks</h3>
          <Checkbox
            isSelected={reconciles}
            onChange={(isOn) => changeNow({ reconciles: isOn ? true : undefined })}
            isDisabled={!mayEdit}
            detail="Their likely ± shrinks; the worst counts each correction too"
          >
            Walls stand on the weighed readings
          </Checkbox>
        </section>
      )}
    </>
  );
}

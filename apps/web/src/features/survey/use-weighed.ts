import { reconcileSurvey } from '@gusset/cargo';
import type { AdjustedReading, SectionForm } from '@gusset/contracts/cargo';
import type { SurveyInput, SurveySnapshot } from '@gusset/contracts/survey';
import { spaceInState, surveyForm } from '@gusset/sheets';
import { isRefusal } from '@gusset/units';
import { useMemo } from 'react';

export type Weighed = { readonly form: SectionForm; readonly adjusted: readonly AdjustedReading[] };

/**
 * What the checks make of the readings, this car's and the state's in their place. Null without a check, or where the
 * readings leave no section: the verdict says that already.
 */
export function useWeighed(survey: SurveySnapshot, { deltas, stateId }: SurveyInput): Weighed | null {
  return useMemo(() => {
    const { readings, extras, formKind } = survey;
    const form = surveyForm(formKind, extras.free);
    if (isRefusal(form)) return null;
    const inState = spaceInState({ form, readings, extras, deltas }, stateId);
    if (isRefusal(inState)) return null;
    const adjusted = reconcileSurvey(form, inState.measurements);
    return adjusted === null || isRefusal(adjusted) ? null : { form, adjusted };
  }, [survey, deltas, stateId]);
}

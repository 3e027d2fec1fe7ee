// A survey in one of its named states: seat folded, floor panel out.
import type { Measurement, SectionSurvey, Surroundings } from '@gusset/contracts/cargo';
import { type Refusal, refuse } from '@gusset/units';

export type SurveyInState = {
  readonly measurements: readonly Measurement[];
  readonly surroundings: Surroundings;
};

/** The state's readings take the place of the survey's; absent prisms go. Null = as surveyed. */
export function surveyInState(survey: SectionSurvey, stateId: string | null): SurveyInState | Refusal {
  const { obstructions, keepFree, measurements } = survey;
  if (stateId === null) return { measurements, surroundings: { obstructions, keepFree } };
  const state = survey.states.find(({ id }) => id === stateId);
  if (state === undefined) {
    const allowed = survey.states.map(({ id }) => id).join(', ') || 'no states are described';
    return refuse('stateId', { allowed, got: stateId, why: 'the survey describes no such state' });
  }
  const replaced = new Set(state.replaced.map(({ key }) => key));
  const absent = new Set(state.absent);
  return {
    measurements: [...measurements.filter(({ key }) => !replaced.has(key)), ...state.replaced],
    surroundings: {
      obstructions: obstructions.filter(({ id }) => !absent.has(id)),
      keepFree: keepFree.filter(({ id }) => !absent.has(id)),
    },
  };
}

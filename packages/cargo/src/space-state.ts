// A survey in one of its named states: seat folded, floor panel out, lid closing.
import type { Measurement, SectionSurvey, Surroundings } from '@gusset/contracts/cargo';
import { type Refusal, refuse } from '@gusset/units';

export type SurveyInState = {
  readonly measurements: readonly Measurement[];
  readonly surroundings: Surroundings;
};

/**
 * The state's readings take the place of the survey's; absent prisms go, and those that stand in no other state come.
 * Null = as surveyed.
 */
export function surveyInState(survey: SectionSurvey, stateId: string | null): SurveyInState | Refusal {
  const state = stateId === null ? NO_STATE : survey.states.find(({ id }) => id === stateId);
  if (state === undefined) {
    const allowed = survey.states.map(({ id }) => id).join(', ') || 'no states are described';
    return refuse('stateId', { allowed, got: stateId, why: 'the survey describes no such state' });
  }
  const { obstructions, keepFree, softWalls, beyond, measurements } = survey;
  const replaced = new Set(state.replaced.map(({ key }) => key));
  const absent = new Set(state.absent);
  const present = new Set(state.present ?? []);
  const stands = ({
    id,
    offAsMeasured = false,
  }: {
    readonly id: string;
    readonly offAsMeasured?: boolean | undefined;
  }) => (offAsMeasured ? present.has(id) : !absent.has(id));
  return {
    measurements: [...measurements.filter(({ key }) => !replaced.has(key)), ...state.replaced],
    surroundings: {
      obstructions: obstructions.filter(stands),
      keepFree: keepFree.filter(stands),
      ...(softWalls === undefined ? {} : { softWalls }),
      ...(beyond === undefined ? {} : { beyond }),
    },
  };
}

const NO_STATE = { replaced: [], absent: [], present: [] };

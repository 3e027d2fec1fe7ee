import type { SectionSurvey } from '@gusset/contracts/cargo';
import { sectionSurveySchema } from '@gusset/contracts/cargo';
import { isRefusal } from '@gusset/units';
import { describe, expect, it } from 'vitest';
import { buildCavity } from './build-cavity.ts';
import { HATCH_ESTATE } from './forms/hatch-estate.ts';
import { surveyInState } from './space-state.ts';
import { answered, lengthReading, RECTANGLE, uprightProfile } from './survey-fixture.ts';

const prism = { polygon: uprightProfile(60, 300), zMinMm: -40, zMaxMm: 40, plusMinusMm: 5 };

const survey: SectionSurvey = {
  form: HATCH_ESTATE,
  measurements: [...RECTANGLE],
  obstructions: [{ ...prism, id: 'floor-box', name: 'Tool tray', appliesTo: 'both', moves: false }],
  keepFree: [{ ...prism, id: 'tether', name: 'Tether', kind: 'child-seat-tether' }],
  states: [
    {
      id: 'folded',
      name: 'Seat folded',
      replaced: [lengthReading('floorDepth', 1500), lengthReading('roofDepth', 1500)],
      absent: ['tether'],
    },
  ],
};

const cavityIn = (stateId: string | null) => {
  const { measurements, surroundings } = answered(surveyInState(survey, stateId));
  return answered(buildCavity(survey.form, measurements, surroundings));
};

describe('surveyInState', () => {
  it('leaves the survey as taken without a state', () => {
    expect(sectionSurveySchema.safeParse(survey).error).toBeUndefined();
    expect(cavityIn(null)).toMatchObject({
      obstructions: [{ id: 'floor-box' }],
      keepFree: [{ id: 'tether' }],
    });
  });

  it('replaces readings and takes away what is gone', () => {
    const folded = cavityIn('folded');
    expect(Math.max(...folded.polygon.map((it) => it.xMm))).toBe(1500);
    expect(folded.keepFree).toEqual([]);
    expect(folded.obstructions).toHaveLength(1);
  });

  it('brings what stands there in one state only: a folded seat back, the arms of a closing lid', () => {
    const folding: SectionSurvey = {
      ...survey,
      obstructions: [
        ...survey.obstructions,
        { ...prism, id: 'back', name: 'Folded back', appliesTo: 'both', moves: false, offAsMeasured: true },
      ],
      states: [{ id: 'folded', name: 'Seat folded', replaced: [], absent: ['floor-box'], present: ['back'] }],
    };
    const named = (stateId: string | null) =>
      answered(surveyInState(folding, stateId)).surroundings.obstructions.map(({ id }) => id);
    expect(sectionSurveySchema.safeParse(folding).error).toBeUndefined();
    expect(named(null)).toEqual(['floor-box']);
    expect(named('folded')).toEqual(['back']);
  });

  it('refuses a state nobody described', () => {
    const answer = surveyInState(survey, 'removed');
    expect(isRefusal(answer) && answer.refusal).toMatchObject({
      field: 'stateId',
      allowed: 'folded',
      got: 'removed',
    });
  });
});

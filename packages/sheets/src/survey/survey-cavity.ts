// A kept survey -> the cavity: its readings, what stands in it, and the places that are narrower than the form says.
import { buildCavity, surveyInState } from '@gusset/cargo';
import type {
  CavityResult,
  KeepFreeZone,
  Measurement,
  Obstruction,
  SectionForm,
  Surroundings,
  WidthSlab,
} from '@gusset/contracts/cargo';
import type { PointMm } from '@gusset/contracts/geometry';
import type {
  SurveyCorner,
  SurveyExtras,
  SurveyKeepFree,
  SurveyNarrowing,
  SurveyObstruction,
  TakenReading,
} from '@gusset/contracts/survey';
import { isRefusal, type Refusal } from '@gusset/units';
import { asMeasurement } from './survey-form.ts';

export type MeasuredSpace = {
  readonly form: SectionForm;
  readonly readings: readonly TakenReading[];
  readonly extras: SurveyExtras;
};

export type SpaceInState = {
  readonly measurements: readonly Measurement[];
  readonly surroundings: Surroundings;
};

/** Readings and surroundings in one of the survey's states of seat and floor; null = as measured. */
export function spaceInState(
  { form, readings, extras }: MeasuredSpace,
  stateId: string | null,
): SpaceInState | Refusal {
  return surveyInState(
    {
      form,
      measurements: readings.map((reading) => asMeasurement(form, reading)),
      obstructions: extras.obstructions.map(toObstruction),
      keepFree: extras.keepFree.map(toKeepFreeZone),
      states: extras.states.map(({ id, name, replaced, absent }) => ({
        id,
        name,
        absent,
        replaced: replaced.map((reading) => asMeasurement(form, reading)),
      })),
    },
    stateId,
  );
}

/** Refused as the engine refuses: which dimension, what is allowed, what came, why. */
export function surveyCavity(space: MeasuredSpace, stateId: string | null): CavityResult | Refusal {
  const inState = spaceInState(space, stateId);
  if (isRefusal(inState)) return inState;
  const cavity = buildCavity(space.form, inState.measurements, inState.surroundings);
  if (isRefusal(cavity)) return cavity;
  return { ...cavity, widthSlabs: [...cavity.widthSlabs, ...space.extras.narrowings.map(narrowingSlab)] };
}

export function cornersOf(corners: readonly SurveyCorner[]): PointMm[] {
  return corners.map(({ x, y }) => ({ xMm: x.mm, yMm: y.mm }));
}

export function toObstruction({
  id,
  name,
  corners,
  left,
  right,
  plusMinusMm,
  appliesTo,
  moves,
}: SurveyObstruction): Obstruction {
  const across = { zMinMm: left.mm, zMaxMm: right.mm, plusMinusMm };
  return { id, name, polygon: cornersOf(corners), ...across, appliesTo, moves };
}

export function toKeepFreeZone({
  id,
  name,
  corners,
  left,
  right,
  plusMinusMm,
  kind,
}: SurveyKeepFree): KeepFreeZone {
  return { id, name, polygon: cornersOf(corners), zMinMm: left.mm, zMaxMm: right.mm, plusMinusMm, kind };
}

/** Half of a width lies on either side of the centre line; so does half of its ±. */
export function narrowingSlab({ id, name, corners, width, plusMinusMm }: SurveyNarrowing): WidthSlab {
  return {
    id,
    name,
    polygon: cornersOf(corners),
    zMinMm: -width.mm / 2,
    zMaxMm: width.mm / 2,
    sidePlusMinusMm: plusMinusMm / 2,
    sectionPlusMinusMm: plusMinusMm,
  };
}

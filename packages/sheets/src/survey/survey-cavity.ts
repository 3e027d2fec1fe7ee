// A kept survey -> the cavity: its readings, what stands in it, and the places that are narrower than the form says.
import { buildCavity, type CavityOptions, surveyInState, sweptOutline } from '@gusset/cargo';
import type {
  BeyondOpening,
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
  Reading,
  SurveyBeyond,
  SurveyCorner,
  SurveyExtras,
  SurveyKeepFree,
  SurveyNarrowing,
  SurveyObstruction,
  TakenReading,
} from '@gusset/contracts/survey';
import { isRefusal, type Refusal } from '@gusset/units';
import { withDeltas } from './survey-deltas.ts';
import { asMeasurement } from './survey-form.ts';

const DEGREE_RAD = Math.PI / 180;

export type MeasuredSpace = {
  readonly form: SectionForm;
  readonly readings: readonly TakenReading[];
  readonly extras: SurveyExtras;
  /** What reads otherwise in one customer's car. */
  readonly deltas?: readonly Reading[] | undefined;
};

export type SpaceInState = {
  readonly measurements: readonly Measurement[];
  readonly surroundings: Surroundings;
};

/** Readings and surroundings in one of the survey's states of seat and floor; null = as measured. */
export function spaceInState(
  { form, readings, extras, deltas = [] }: MeasuredSpace,
  stateId: string | null,
): SpaceInState | Refusal {
  return surveyInState(
    {
      form,
      measurements: withDeltas(readings, deltas).readings.map((reading) => asMeasurement(form, reading)),
      obstructions: extras.obstructions.map(toObstruction),
      keepFree: extras.keepFree.map(toKeepFreeZone),
      softWalls: extras.softWalls?.map(({ wallId, crush }) => ({ wallId, crushMm: crush.mm })),
      beyond: extras.beyond === undefined ? undefined : toBeyond(extras.beyond),
      states: extras.states.map(({ id, name, replaced, absent, present }) => ({
        id,
        name,
        absent,
        present,
        replaced: replaced.map((reading) => asMeasurement(form, reading)),
      })),
    },
    stateId,
  );
}

/** Refused as the engine refuses: which dimension, what is allowed, what came, why. */
export function surveyCavity(
  space: MeasuredSpace,
  stateId: string | null,
  options: CavityOptions = {},
): CavityResult | Refusal {
  const inState = spaceInState(space, stateId);
  if (isRefusal(inState)) return inState;
  const cavity = buildCavity(space.form, inState.measurements, inState.surroundings, options);
  if (isRefusal(cavity)) return cavity;
  return { ...cavity, widthSlabs: [...cavity.widthSlabs, ...space.extras.narrowings.map(narrowingSlab)] };
}

export function cornersOf(corners: readonly SurveyCorner[]): PointMm[] {
  return corners.map(({ x, y }) => ({ xMm: x.mm, yMm: y.mm }));
}

/** A part that swings is in the way wherever it comes on its swing. */
export function toObstruction({
  id,
  name,
  corners,
  left,
  right,
  plusMinusMm,
  appliesTo,
  moves,
  offAsMeasured,
  swing,
}: SurveyObstruction): Obstruction {
  const across = { zMinMm: left.mm, zMaxMm: right.mm, plusMinusMm };
  const outline = cornersOf(corners);
  const polygon =
    swing === undefined
      ? outline
      : [
          ...sweptOutline(outline, {
            pivot: { xMm: swing.pivot.x.mm, yMm: swing.pivot.y.mm },
            fromRad: swing.fromDegrees * DEGREE_RAD,
            toRad: swing.toDegrees * DEGREE_RAD,
          }),
        ];
  const standing = offAsMeasured === undefined ? {} : { offAsMeasured };
  return { id, name, polygon, ...across, appliesTo, moves, ...standing };
}

export function toKeepFreeZone({
  id,
  name,
  corners,
  left,
  right,
  plusMinusMm,
  kind,
  offAsMeasured,
}: SurveyKeepFree): KeepFreeZone {
  const across = { zMinMm: left.mm, zMaxMm: right.mm, plusMinusMm };
  const standing = offAsMeasured === undefined ? {} : { offAsMeasured };
  return { id, name, polygon: cornersOf(corners), ...across, kind, ...standing };
}

function toBeyond({ lid, bumper, ground }: SurveyBeyond): BeyondOpening {
  return {
    lid:
      lid === null
        ? null
        : {
            lengthMm: lid.length.mm,
            thicknessMm: lid.thickness.mm,
            openRad: lid.openDegrees * DEGREE_RAD,
            plusMinusMm: lid.plusMinusMm,
          },
    bumper:
      bumper === null
        ? null
        : { outMm: bumper.out.mm, belowMm: bumper.below.mm, plusMinusMm: bumper.plusMinusMm },
    ground: ground === null ? null : { belowMm: ground.below.mm, plusMinusMm: ground.plusMinusMm },
  };
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

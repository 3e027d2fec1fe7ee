// The door of a survey: readings in range, nothing missing, dimensions that can stand together, walls that do not cross.
import type { CavityFinding, Measurement, SectionForm, Surroundings } from '@gusset/contracts/cargo';
import { type Refusal, refuse } from '@gusset/units';
import { construct } from './forms/construct.ts';
import type { Construction, DimensionValues } from './forms/construction.ts';
import { type OutlineWall, outlineOf, polygonOf } from './outline.ts';
import { signedAreaMm2 } from './plane/polygon.ts';
import { crossingEdges } from './plane/simple.ts';
import { fieldOf, missingIn, type Readings, readingsOf, type TakenValue, withAssumed } from './readings.ts';
import { blamed, surroundingsRefusal } from './refusals.ts';

export type AdmittedSurvey = {
  readonly readings: Readings;
  /** Taken and assumed values with their ±. */
  readonly used: ReadonlyMap<string, TakenValue>;
  readonly assumptions: readonly CavityFinding[];
  readonly values: DimensionValues;
  readonly construction: Construction;
  readonly outline: readonly OutlineWall[];
};

export function admittedSurvey(
  form: SectionForm,
  measurements: readonly Measurement[],
  surroundings: Surroundings,
): AdmittedSurvey | Refusal {
  const readings = readingsOf(form, measurements);
  const rejected = readings.rejected[0];
  if (rejected !== undefined) return refuse(rejected.field, rejected);
  const refusal = missingRefusal(form, readings) ?? surroundingsRefusal(surroundings);
  if (refusal !== null) return refusal;
  const { used, findings: assumptions } = withAssumed(form, readings.taken);
  const values = new Map([...used].map(([key, taken]) => [key, taken.value]));
  const construction = construct(form, values);
  const impossible = construction.impossible[0];
  if (impossible !== undefined) return refuse(fieldOf(impossible.key), impossible);
  const outline = outlineOf(construction);
  return (
    brokenOutline(form, values, outline) ?? { readings, used, assumptions, values, construction, outline }
  );
}

function missingRefusal(form: SectionForm, readings: Readings): Refusal | null {
  const missing = missingIn(form, readings.taken);
  const [first] = missing;
  if (first === undefined) return null;
  return refuse(fieldOf(first.key), {
    allowed: 'every required dimension',
    got: null,
    why: `not taken yet: ${missing.map(({ letter, label }) => `${letter} (${label})`).join(', ')}`,
  });
}

/** Less than this is no room for a box: one square centimetre, mm². */
const LEAST_AREA_MM2 = 100;

/** Null when the walls stand; else which dimension keeps them from it. */
export function brokenOutline(
  form: SectionForm,
  values: DimensionValues,
  outline: readonly OutlineWall[],
): Refusal | null {
  const polygon = polygonOf(outline);
  if (outline.length < 3 || signedAreaMm2(polygon) < LEAST_AREA_MM2) {
    return blamed(form, values, outline, 'these dimensions leave no room between the walls');
  }
  if (!outline.some(({ wall }) => wall.role === 'opening')) {
    return blamed(form, values, outline, 'the opening has no height');
  }
  const crossing = crossingEdges(polygon);
  if (crossing === null) return null;
  const walls = outline.filter((_, index) => crossing.includes(index));
  const names = walls.map(({ wall }) => wall.name.toLowerCase());
  return blamed(form, values, walls, `${names.join(' and ')} cross`);
}

// Which dimensions a survey asks for, and in which order: what the cavity cannot be built without first, then what
// makes its walls surer, then the rest.
import {
  BEHIND_SEAT,
  FOOTWELL,
  freePointsForm,
  HATCH_ESTATE,
  SALOON_BOOT,
  SPARE_WHEEL_WELL,
  stationsForm,
  UNDER_SEAT,
} from '@gusset/cargo';
import type {
  Dimension,
  Measurement,
  MissingDimension,
  SectionForm,
  SectionFormKind,
} from '@gusset/contracts/cargo';
import type { FreeSection, Reading, TakenReading } from '@gusset/contracts/survey';
import { type Refusal, refuse } from '@gusset/units';

/** Walls placed by an assumption this unsure are worth a reading, mm. Thinner ones (a floor lying against the straightedge) are not. */
const UNSURE_MM = 5;
/**
 * Left out, the roof and the opening of a hatch hang on the seat angle: with default ± the opening plane is then
 * ±43 mm at worst, with it ±35 and the roof ±5.
 */
const STEADIES_THE_OPENING = 'sealDepth';

export const FREE_SECTION_NAME = 'Free section';

/** The section form of a survey; refused where a free section's corners or stations make none. */
export function surveyForm(formKind: SectionFormKind, free: FreeSection | null): SectionForm | Refusal {
  switch (formKind) {
    case 'saloon-boot':
      return SALOON_BOOT;
    case 'hatch-estate':
      return HATCH_ESTATE;
    case 'behind-seat':
      return BEHIND_SEAT;
    case 'under-seat':
      return UNDER_SEAT;
    case 'spare-wheel-well':
      return SPARE_WHEEL_WELL;
    case 'footwell':
      return FOOTWELL;
    case 'free-section':
      return freeForm(free);
  }
}

function freeForm(free: FreeSection | null): SectionForm | Refusal {
  if (free === null) {
    return refuse('free', {
      allowed: 'corners or stations',
      got: null,
      why: 'a free section says how it is taken',
    });
  }
  return free.by === 'points'
    ? freePointsForm(FREE_SECTION_NAME, free.corners)
    : stationsForm(
        FREE_SECTION_NAME,
        free.stations.map(({ mm }) => mm),
      );
}

/** Optional, but without it a wall is a good deal less sure. */
export function isWorthTaking(dimension: Dimension): boolean {
  if (dimension.need !== 'optional') return false;
  if (dimension.key === STEADIES_THE_OPENING) return true;
  if (dimension.assumed === null) return false;
  return dimension.unit === 'angle'
    ? dimension.assumed.plusMinusRad > 0
    : dimension.assumed.plusMinusMm >= UNSURE_MM;
}

/** What nobody took yet although it would make the walls surer, in the order of the form. */
export function worthTaking(
  form: SectionForm,
  readings: readonly { readonly key: string }[],
): MissingDimension[] {
  const taken = new Set(readings.map(({ key }) => key));
  return form.dimensions
    .filter((dimension) => isWorthTaking(dimension) && !taken.has(dimension.key))
    .map(({ key, letter, label }) => ({ key, letter, label }));
}

/**
 * The dimension to ask for after `currentKey`: the next one needed, round the form; then the next one worth taking;
 * null = nothing is left to ask for.
 */
export function nextToTake(
  form: SectionForm,
  readings: readonly { readonly key: string }[],
  currentKey: string | null,
): string | null {
  const taken = new Set(readings.map(({ key }) => key));
  const at = form.dimensions.findIndex(({ key }) => key === currentKey);
  const round = [...form.dimensions.slice(at + 1), ...form.dimensions.slice(0, at + 1)];
  const open = round.filter(({ key }) => !taken.has(key) && key !== currentKey);
  const next = open.find(({ need }) => need === 'required') ?? open.find(isWorthTaking);
  return next?.key ?? null;
}

/** A kept reading as the engine takes it. Its unit is the dimension's; an unknown key goes in as a length and is refused there by name. */
export function asMeasurement(form: SectionForm, reading: Reading & Partial<TakenReading>): Measurement {
  const { key, typed, method, value, plusMinus, takenBy = '–', takenAt = EPOCH } = reading;
  const taken = { key, typed, method, takenBy: takenBy === '' ? '–' : takenBy, takenAt };
  const unit = form.dimensions.find((dimension) => dimension.key === key)?.unit ?? 'length';
  return unit === 'angle'
    ? { ...taken, valueRad: value, plusMinusRad: plusMinus }
    : { ...taken, valueMm: value, plusMinusMm: plusMinus };
}

const EPOCH = '1970-01-01T00:00:00Z';

// Sheet 02. The cavity is built by the cargo engine; this file picks the pinned revision, asks for what is missing and
// names every lettered dimension, so that a delta can say which one moved.
import { missingDimensions } from '@gusset/cargo';
import type { Dimension, SectionForm } from '@gusset/contracts/cargo';
import {
  type SurveyExtras,
  type SurveyFacts,
  type SurveyInput,
  type SurveyResult,
  type SurveySnapshot,
  surveyInputSchema,
  type TakenReading,
} from '@gusset/contracts/survey';
import { degreesFromRad, isRefusal } from '@gusset/units';
import {
  incomplete,
  type KeyFigure,
  ready,
  refused,
  type SheetDefinition,
  type SheetOutcome,
} from '../sheet-definition.ts';
import { spaceInState, surveyCavity } from './survey-cavity.ts';
import { withDeltas } from './survey-deltas.ts';
import { surveyForm, worthTaking } from './survey-form.ts';

export const surveySheet: SheetDefinition<SurveyInput, SurveyFacts, null, SurveyResult> = {
  kind: 'survey',
  engineVersion: 2,
  optionalReads: [],
  inputSchema: surveyInputSchema,
  emptyInput: () => ({ surveyId: null, stateId: null, notes: '' }),
  compute: (input, facts) => computeSurvey(input, facts),
  keyFigures(result) {
    const { opening } = result.cavity;
    return [
      {
        key: 'space',
        label: 'Space',
        value: spaceWords(result.modelName, result.spaceName, result.form.name),
      },
      { key: 'revision', label: 'Survey revision', value: String(result.revision) },
      { key: 'seatState', label: 'Seats and floor', value: result.seatState },
      ...readingFigures(result.form, result.readings),
      ...deltaFigures(result),
      {
        key: 'stands',
        label: 'Walls stand on',
        value: result.cavity.adjusted === undefined ? '' : 'reconciled values',
      },
      {
        key: 'opening.height',
        label: 'Opening, height',
        value: mm(opening.heightMm, opening.heightPlusMinusMm),
      },
      { key: 'opening.width', label: 'Opening, width', value: mm(opening.widthMm, opening.widthPlusMinusMm) },
      ...result.cavity.obstructions.map(({ id, name, plusMinusMm }) => ({
        key: `obstruction.${id}`,
        label: 'In the way',
        value: `${name} ±${plain(plusMinusMm)}`,
      })),
      ...result.cavity.keepFree.map(({ id, name }) => ({
        key: `keep.${id}`,
        label: 'Keep free',
        value: name,
      })),
    ].filter((figure) => figure.value !== '');
  },
  factFigures({ survey, newer }) {
    const shown = newer ?? survey;
    return shown === null ? [] : snapshotFigures(shown);
  },
};

function computeSurvey(input: SurveyInput, { survey }: SurveyFacts): SheetOutcome<SurveyResult> {
  if (survey === null)
    return incomplete([{ field: 'surveyId', what: 'a survey of this vehicle’s cargo space' }]);
  const { extras } = survey;
  const { readings, deltas } = withDeltas(survey.readings, input.deltas ?? []);
  const form = surveyForm(survey.formKind, extras.free);
  if (isRefusal(form)) return refused([form.refusal]);
  const space = { form, readings, extras };
  const inState = spaceInState(space, input.stateId);
  if (isRefusal(inState)) return refused([inState.refusal]);
  // A reading that cannot be is refused by the engine by name; it is not missing.
  const taken = new Set(inState.measurements.map(({ key }) => key));
  const missing = missingDimensions(form, inState.measurements).filter(({ key }) => !taken.has(key));
  if (missing.length > 0) {
    return incomplete(
      missing.map(({ key, letter, label }) => ({ field: key, what: `${letter}, ${label.toLowerCase()}` })),
    );
  }
  const cavity = surveyCavity(space, input.stateId, { reconciles: input.reconciles ?? false });
  if (isRefusal(cavity)) return refused([cavity.refusal]);
  const state = extras.states.find(({ id }) => id === input.stateId) ?? null;
  const used: readonly TakenReading[] = [
    ...readings.filter(({ key }) => !state?.replaced.some((other) => other.key === key)),
    ...(state?.replaced ?? []).map((reading) => ({
      ...reading,
      takenBy: survey.takenBy,
      takenAt: survey.takenOn ?? '',
    })),
  ];
  return ready({
    surveyId: survey.surveyId,
    revision: survey.revision,
    modelName: survey.modelName,
    spaceName: survey.spaceName,
    seatState: state?.name ?? survey.seatState,
    takenBy: survey.takenBy,
    takenOn: survey.takenOn,
    form,
    readings: used,
    cavity,
    worthTaking: worthTaking(form, used),
    ...(deltas.length === 0 ? {} : { deltas }),
  });
}

/** `this car 812 mm, model 800 mm`: named beside the reading itself. */
function deltaFigures({ deltas = [], form }: SurveyResult): KeyFigure[] {
  return deltas.flatMap(({ key, model, car }) => {
    const dimension = form.dimensions.find((it) => it.key === key);
    if (dimension === undefined) return [];
    const { letter, label, unit } = dimension;
    const words = (value: number) =>
      unit === 'angle' ? `${plain(degreesFromRad(value))}°` : `${plain(value)} mm`;
    const value = `${words(car)}, model ${model === null ? 'not measured' : words(model)}`;
    return [{ key: `delta.${key}`, label: `This car · ${letter} · ${label}`, value }];
  });
}

/** What a survey says in words, without working it out: half measured ones have figures too. */
function snapshotFigures(survey: SurveySnapshot): KeyFigure[] {
  const form = surveyForm(survey.formKind, survey.extras.free);
  const { obstructions, keepFree, narrowings, states, softWalls = [], beyond = {} } = survey.extras;
  const named = (
    group: string,
    label: string,
    parts: readonly { readonly id: string; readonly name: string }[],
  ) =>
    parts.map((part) => ({
      key: `${group}.${part.id}`,
      label,
      value: `${part.name} · ${outlineWords(part)}`,
    }));
  return [
    { key: 'survey', label: 'Survey', value: `revision ${survey.revision}` },
    ...(isRefusal(form) ? [] : readingFigures(form, survey.readings)),
    ...named('obstruction', 'In the way', obstructions),
    ...named('keep', 'Keep free', keepFree),
    ...named('narrowing', 'Narrower place', narrowings),
    ...named('soft', 'Soft trim', softWalls),
    ...Object.entries(beyond)
      .filter(([, part]) => part !== null)
      .map(([key, part]) => ({
        key: `beyond.${key}`,
        label: 'Beyond the opening',
        value: `${key} · ${outlineWords(part ?? {})}`,
      })),
    ...states.map(({ id, name, replaced, absent, present = [] }) => ({
      key: `state.${id}`,
      label: 'State of seat and floor',
      value: [
        `${name} · ${replaced.map(({ key, typed }) => `${key} ${typed}`).join(', ')}`,
        ...absent.map((part) => `without ${partName(survey.extras, part)}`),
        ...present.map((part) => `with ${partName(survey.extras, part)}`),
      ].join(', '),
    })),
  ];
}

function partName({ obstructions, keepFree }: SurveyExtras, id: string): string {
  return [...obstructions, ...keepFree].find((part) => part.id === id)?.name ?? id;
}

/**
 * Everything a person entered for it, so that any change of it shows as a difference. In the order of the keys: a stored
 * issue comes back in an order of the database's own.
 */
function outlineWords(part: object): string {
  return Object.entries(part)
    .filter(([key, value]) => key !== 'id' && key !== 'name' && value !== undefined && value !== null)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, value]) =>
      key === 'corners' && Array.isArray(value)
        ? `corners ${cornerWords(value)}`
        : `${PART_WORDS[key] ?? key} ${valueWords(value)}`,
    )
    .join(', ');
}

/** What the entries of a part are called, where the key alone is no word. */
const PART_WORDS: Readonly<Record<string, string>> = {
  appliesTo: 'counts for',
  offAsMeasured: 'only in a state:',
  moves: 'moves:',
  openDegrees: 'degrees open',
  plusMinusMm: '±',
  swing: 'swings',
  wallId: 'wall',
};

function cornerWords(corners: readonly unknown[]): string {
  return corners.map((corner) => valueWords(corner)).join(' / ');
}

function valueWords(value: unknown): string {
  if (typeof value !== 'object' || value === null) return String(value);
  if ('mm' in value) return `${String(value.mm)} mm`;
  // By key here too; x stays before y.
  return Object.entries(value)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, entry]) => valueWords(entry))
    .join(', ');
}

export function spaceWords(modelName: string, spaceName: string, formName: string): string {
  return [modelName, spaceName === '' ? formName.toLowerCase() : spaceName].join(', ');
}

function readingFigures(form: SectionForm, readings: readonly TakenReading[]): KeyFigure[] {
  const byKey = new Map(readings.map((reading) => [reading.key, reading]));
  return form.dimensions.flatMap((dimension) => {
    const reading = byKey.get(dimension.key);
    if (reading === undefined) return [];
    const { key, letter, label } = dimension;
    return [
      { key: `reading.${key}`, label: `${letter} · ${label}`, value: readingWords(dimension, reading) },
    ];
  });
}

function readingWords({ unit }: Dimension, { value, plusMinus }: TakenReading): string {
  return unit === 'angle'
    ? `${plain(degreesFromRad(value))}° ±${plain(degreesFromRad(plusMinus))}°`
    : mm(value, plusMinus);
}

function mm(value: number, plusMinus: number): string {
  return `${plain(value)} ±${plain(plusMinus)} mm`;
}

/** To a tenth, which is finer than any tape. */
function plain(value: number): string {
  return String(Math.round(value * 10) / 10);
}

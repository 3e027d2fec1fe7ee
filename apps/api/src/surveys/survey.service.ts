// The surveys of a vehicle model: begun, described, settled, put away.
import {
  type CreateSurveyInput,
  NO_EXTRAS,
  type SurveyDetails,
  type SurveyExtras,
} from '@gusset/contracts/survey';
import type { Tx } from '@gusset/database';
import { canonicalJson, keyAfter, surveyCavity, surveyForm } from '@gusset/sheets';
import { isRefusal } from '@gusset/units';
import { record } from '../data/audit.ts';
import { fromShopDate, toShopDate } from '../data/dates.ts';
import { once } from '../data/idempotency.ts';
import { asRequiredJson } from '../data/json.ts';
import { conflictError } from '../data/versioned.ts';
import type { Actor, Deps } from '../deps.ts';
import { notAccepted, notFound, refusedByEngine, ShopError } from '../errors.ts';
import {
  changeSurvey,
  extrasOf,
  formKindOf,
  lockModel,
  lockSurvey,
  readingsOf,
  revisionsOf,
  type SurveyRow,
  surveysOfModel,
  surveysVisibleTo,
} from './survey.queries.ts';
import { openRevision, surveyOrNotFound, viewSurvey } from './survey-scope.ts';
import { type SurveyHead, type SurveyView, toSurveyHead } from './survey-view.ts';

export type SurveysOfModel = {
  readonly model: { readonly id: string; readonly name: string; readonly archived: boolean };
  /** Newest revision of each space first; older ones follow it. */
  readonly surveys: readonly SurveyHead[];
};

export function listSurveys(
  { doors }: Deps,
  actor: Actor,
  { modelId, archived }: { readonly modelId: string; readonly archived: boolean },
): Promise<SurveysOfModel> {
  return doors.inShop(actor.shopId, async (tx) => {
    const model = await tx.vehicleModel.findFirst({
      where: { shopId: actor.shopId, id: modelId },
      select: { id: true, make: true, model: true, archivedAt: true },
    });
    if (model === null) throw notFound('vehicle model');
    const rows = await surveysOfModel(tx, actor, modelId, archived);
    return {
      model: { id: model.id, name: `${model.make} ${model.model}`, archived: model.archivedAt !== null },
      surveys: rows.map(toSurveyHead),
    };
  });
}

export function readSurvey({ doors }: Deps, actor: Actor, surveyId: string): Promise<SurveyView> {
  return doors.inShop(actor.shopId, (tx) => viewSurvey(tx, actor, surveyId));
}

export function createSurvey(
  { doors }: Deps,
  actor: Actor,
  key: string,
  input: CreateSurveyInput,
): Promise<SurveyView> {
  return doors.inShop(actor.shopId, (tx) =>
    once(tx, actor, key, input, async () => {
      if (!(await lockModel(tx, actor, input.modelId))) throw notFound('vehicle model');
      const form = surveyForm(input.formKind, input.free);
      if (isRefusal(form)) throw refusedByEngine([form.refusal]);
      await refuseTakenSpace(tx, actor, input);
      const { id } = await tx.survey.create({
        data: {
          shopId: actor.shopId,
          modelId: input.modelId,
          formKind: input.formKind,
          spaceName: input.spaceName,
          seatState: input.seatState,
          extras: asRequiredJson({ ...NO_EXTRAS, free: input.free }),
        },
        select: { id: true },
      });
      await record(tx, actor, { act: 'survey.begun', subject: 'survey', subjectId: id, after: input });
      return viewSurvey(tx, actor, id);
    }),
  );
}

async function refuseTakenSpace(
  tx: Tx,
  actor: Actor,
  space: { readonly modelId: string; readonly formKind: string; readonly spaceName: string },
): Promise<void> {
  if ((await revisionsOf(tx, actor, space)).length === 0) return;
  const message =
    'This space of the model has a survey already. Measure on in it, or give this space a name of its own.';
  throw new ShopError('NAME_TAKEN', message, { fields: [{ path: 'spaceName', message }] });
}

type At = { readonly surveyId: string; readonly version: number };

export type DescribeSurvey = {
  readonly surveyId: string;
  /** As they stood on the screen; refused where someone changed them since. */
  readonly before: SurveyDetails;
  readonly details: SurveyDetails;
};

/** Name, state, day and notes. A new name holds for every revision of the space. */
export function describeSurvey(
  { doors }: Deps,
  actor: Actor,
  { surveyId, before, details }: DescribeSurvey,
): Promise<SurveyView> {
  return doors.inShop(actor.shopId, async (tx) => {
    const row = await openRevision(tx, actor, surveyId); // locked: nobody changes it between look and write
    const standing: SurveyDetails = {
      spaceName: row.spaceName,
      seatState: row.seatState,
      takenOn: toShopDate(row.takenOn),
      notes: row.notes,
    };
    if (canonicalJson(standing) !== canonicalJson(before)) {
      throw await surveyConflict(tx, actor, row, { ...details }, { ...standing });
    }
    const space = { modelId: row.modelId, formKind: row.formKind, spaceName: details.spaceName };
    if (details.spaceName !== row.spaceName) {
      await lockModel(tx, actor, row.modelId);
      await refuseTakenSpace(tx, actor, space);
    }
    const { spaceName, seatState, notes } = details;
    await tx.survey.updateMany({
      where: { ...surveysVisibleTo(actor), id: row.id },
      data: { seatState, notes, takenOn: fromShopDate(details.takenOn) },
    });
    if (spaceName !== row.spaceName) {
      await tx.survey.updateMany({
        where: {
          ...surveysVisibleTo(actor),
          modelId: row.modelId,
          formKind: row.formKind,
          spaceName: row.spaceName,
        },
        data: { spaceName },
      });
    }
    await record(tx, actor, {
      act: 'survey.described',
      subject: 'survey',
      subjectId: row.id,
      after: details,
    });
    return viewSurvey(tx, actor, row.id);
  });
}

/** Obstructions, keep-free zones, narrower places, states, and how a free section is taken. */
export function setExtras({ doors }: Deps, actor: Actor, at: At, extras: SurveyExtras): Promise<SurveyView> {
  return doors.inShop(actor.shopId, async (tx) => {
    const row = await openRevision(tx, actor, at.surveyId);
    const before = extrasOf(row);
    if (formKindOf(row) !== 'free-section' && extras.free !== null) {
      throw notAccepted('free', 'This form has an outline of its own.');
    }
    const form = surveyForm(formKindOf(row), extras.free);
    if (isRefusal(form)) throw refusedByEngine([form.refusal]);
    const data = { extras: asRequiredJson(extras) };
    if (!(await changeSurvey(tx, actor, { surveyId: row.id, version: at.version }, data))) {
      throw await surveyConflict(tx, actor, row, { ...extras }, { ...before });
    }
    await moveReadings(tx, actor, row, extras);
    await record(tx, actor, {
      act: 'survey.extras-changed',
      subject: 'survey',
      subjectId: row.id,
      before,
      after: extras,
    });
    return viewSurvey(tx, actor, row.id);
  });
}

/** Readings stay at their corner or station; those whose place is gone go too. */
async function moveReadings(tx: Tx, { shopId }: Actor, row: SurveyRow, after: SurveyExtras): Promise<void> {
  const { free } = extrasOf(row);
  const moves = row.measurements.map((reading) => ({ reading, to: keyAfter(free, after.free, reading.key) }));
  if (moves.every(({ reading, to }) => reading.key === to)) return;
  await tx.measurement.deleteMany({ where: { shopId, surveyId: row.id } });
  await tx.measurement.createMany({
    data: moves.flatMap(({ reading, to }) =>
      to === null ? [] : [{ shopId, surveyId: row.id, ...reading, key: to }],
    ),
  });
}

/** Closes the revision: every needed letter is there and the walls make a section. */
export function settleSurvey({ doors, clock }: Deps, actor: Actor, surveyId: string): Promise<SurveyView> {
  return doors.inShop(actor.shopId, async (tx) => {
    await settleInTx(tx, actor, surveyId, clock.now());
    return viewSurvey(tx, actor, surveyId);
  });
}

/** Also when sheet 02 is issued: what an issue rests on does not move any more. */
export async function settleInTx(tx: Tx, actor: Actor, surveyId: string, now: Date): Promise<void> {
  await lockSurvey(tx, actor, surveyId);
  const row = await surveyOrNotFound(tx, actor, surveyId);
  if (row.settledAt !== null) return;
  const { missing } = toSurveyHead(row);
  if (missing.length > 0) {
    const fields = missing.map(({ key, letter, label }) => ({
      path: key,
      message: `Still missing: ${letter}, ${label.toLowerCase()}.`,
    }));
    throw new ShopError('SHEET_INCOMPLETE', fields[0]?.message ?? 'Something is still missing.', { fields });
  }
  const extras = extrasOf(row);
  const form = surveyForm(formKindOf(row), extras.free);
  if (isRefusal(form)) throw refusedByEngine([form.refusal]);
  const cavity = surveyCavity({ form, readings: readingsOf(row), extras }, null);
  if (isRefusal(cavity)) throw refusedByEngine([cavity.refusal]);
  await tx.survey.updateMany({
    where: { ...surveysVisibleTo(actor), id: surveyId, settledAt: null },
    data: { settledAt: now },
  });
  await record(tx, actor, {
    act: 'survey.settled',
    subject: 'survey',
    subjectId: surveyId,
    after: { revision: row.revision },
  });
}

/** Puts all revisions of the space away, or takes them back. */
export function archiveSurvey(
  { doors, clock }: Deps,
  actor: Actor,
  { surveyId, archived }: { readonly surveyId: string; readonly archived: boolean },
): Promise<SurveyView> {
  return doors.inShop(actor.shopId, async (tx) => {
    const { modelId, formKind, spaceName } = await surveyOrNotFound(tx, actor, surveyId);
    await tx.survey.updateMany({
      where: { ...surveysVisibleTo(actor), modelId, formKind, spaceName },
      data: { archivedAt: archived ? clock.now() : null },
    });
    const act = archived ? 'survey.archived' : 'survey.restored';
    await record(tx, actor, { act, subject: 'survey', subjectId: surveyId });
    return viewSurvey(tx, actor, surveyId);
  });
}

function surveyConflict(
  tx: Tx,
  actor: Actor,
  row: SurveyRow,
  yours: Readonly<Record<string, unknown>>,
  theirs: Readonly<Record<string, unknown>>,
): Promise<ShopError> {
  return conflictError(tx, actor, {
    subject: 'survey',
    subjectId: row.id,
    currentVersion: row.version,
    yours,
    theirs,
  });
}

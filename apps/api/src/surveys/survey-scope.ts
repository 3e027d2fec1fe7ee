// Finding the revision that an act changes: the open one, or a new one where the last is settled.
import type { Tx } from '@gusset/database';
import { record } from '../data/audit.ts';
import type { Actor } from '../deps.ts';
import { notFound, ShopError } from '../errors.ts';
import {
  copyAsNextRevision,
  findSurvey,
  lockModel,
  lockSurvey,
  revisionsOf,
  type SurveyRow,
} from './survey.queries.ts';
import { type SurveyView, toSurveyView } from './survey-view.ts';

export async function surveyOrNotFound(tx: Tx, actor: Actor, surveyId: string): Promise<SurveyRow> {
  const row = await findSurvey(tx, actor, surveyId);
  if (row === null) throw notFound('survey');
  return row;
}

/**
 * The revision to write into, locked until the transaction ends. A settled one never changes: the space's open
 * revision takes the change, or the next one is begun from the newest.
 */
export async function openRevision(tx: Tx, actor: Actor, surveyId: string): Promise<SurveyRow> {
  await lockSurvey(tx, actor, surveyId);
  const row = await surveyOrNotFound(tx, actor, surveyId);
  if (row.archivedAt !== null) {
    throw new ShopError('NOT_ACCEPTED', 'This survey was put away. Bring it back before measuring on.');
  }
  if (row.settledAt === null) return row;
  await lockModel(tx, actor, row.modelId);
  const [newest] = await revisionsOf(tx, actor, row);
  const newestId = newest?.id ?? row.id;
  if (newest !== undefined && newest.settledAt === null) {
    await lockSurvey(tx, actor, newestId);
    return surveyOrNotFound(tx, actor, newestId);
  }
  const last = await surveyOrNotFound(tx, actor, newestId);
  const id = await copyAsNextRevision(tx, actor, last);
  await record(tx, actor, {
    act: 'survey.revised',
    subject: 'survey',
    subjectId: id,
    before: { surveyId: last.id, revision: last.revision },
    after: { revision: last.revision + 1 },
  });
  return surveyOrNotFound(tx, actor, id);
}

export async function viewSurvey(tx: Tx, actor: Actor, surveyId: string): Promise<SurveyView> {
  const row = await surveyOrNotFound(tx, actor, surveyId);
  return toSurveyView(row, await revisionsOf(tx, actor, row));
}

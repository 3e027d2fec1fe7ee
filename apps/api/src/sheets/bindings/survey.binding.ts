import type { SurveyFacts, SurveyInput, SurveyResult } from '@gusset/contracts/survey';
import { surveySheet } from '@gusset/sheets';
import { noteMilestones } from '../../jobs/job-standing.ts';
import { findSurvey, newerSettled, toSnapshot } from '../../surveys/survey.queries.ts';
import { settleInTx } from '../../surveys/survey.service.ts';
import type { SheetBinding } from '../sheet-binding.ts';

/**
 * Sheet 02: reads the pinned revision of a survey, and whether the space has been measured anew since. Issuing
 * settles the pinned revision, so that what an issue rests on does not move.
 */
export const surveyBinding: SheetBinding<SurveyInput, SurveyFacts, null, SurveyResult> = {
  definition: surveySheet,
  async loadFacts({ tx, actor }, { surveyId }) {
    const row = surveyId === null ? null : await findSurvey(tx, actor, surveyId);
    if (row === null) return { survey: null, newer: null };
    const newer = await newerSettled(tx, actor, row);
    return { survey: toSnapshot(row), newer: newer === null ? null : toSnapshot(newer) };
  },
  async onIssued({ deps, tx, actor, job }, { result }) {
    const now = deps.clock.now();
    await settleInTx(tx, actor, result.surveyId, now);
    await noteMilestones(tx, actor, job.id, { surveyedAt: now });
  },
};

import { dimensionKeySchema } from '@gusset/contracts/cargo';
import { idempotencyKeySchema, idSchema, versionSchema } from '@gusset/contracts/common';
import {
  createSurveySchema,
  setReadingSchema,
  surveyDetailsSchema,
  surveyExtrasSchema,
} from '@gusset/contracts/survey';
import { z } from 'zod';
import { allowed, router } from '../trpc/procedures.ts';
import {
  archiveSurvey,
  createSurvey,
  describeSurvey,
  listSurveys,
  readSurvey,
  setExtras,
  settleSurvey,
} from './survey.service.ts';
import { dropPhoto } from './survey-photo.service.ts';
import { dropReading, setReading } from './survey-reading.service.ts';

export const surveyRouter = router({
  ofModel: allowed('vehicle.read')
    .input(z.strictObject({ modelId: idSchema, archived: z.boolean().default(false) }))
    .query(({ ctx, input }) => listSurveys(ctx.deps, ctx.who, input)),

  read: allowed('vehicle.read')
    .input(z.strictObject({ surveyId: idSchema }))
    .query(({ ctx, input }) => readSurvey(ctx.deps, ctx.who, input.surveyId)),

  create: allowed('survey.edit')
    .input(z.strictObject({ key: idempotencyKeySchema, survey: createSurveySchema }))
    .mutation(({ ctx, input }) => createSurvey(ctx.deps, ctx.who, input.key, input.survey)),

  describe: allowed('survey.edit')
    .input(z.strictObject({ surveyId: idSchema, before: surveyDetailsSchema, details: surveyDetailsSchema }))
    .mutation(({ ctx, input }) => describeSurvey(ctx.deps, ctx.who, input)),

  setReading: allowed('survey.edit')
    .input(z.strictObject({ key: idempotencyKeySchema, reading: setReadingSchema }))
    .mutation(({ ctx, input }) => setReading(ctx.deps, ctx.who, input.key, input.reading)),

  removeReading: allowed('survey.edit')
    .input(
      z.strictObject({
        key: idempotencyKeySchema,
        surveyId: idSchema,
        dimension: dimensionKeySchema,
        version: versionSchema,
      }),
    )
    .mutation(({ ctx, input: { key, surveyId, dimension, version } }) =>
      dropReading(ctx.deps, ctx.who, key, { surveyId, key: dimension, version }),
    ),

  setExtras: allowed('survey.edit')
    .input(z.strictObject({ surveyId: idSchema, version: versionSchema, extras: surveyExtrasSchema }))
    .mutation(({ ctx, input: { extras, ...at } }) => setExtras(ctx.deps, ctx.who, at, extras)),

  settle: allowed('survey.edit')
    .input(z.strictObject({ surveyId: idSchema }))
    .mutation(({ ctx, input }) => settleSurvey(ctx.deps, ctx.who, input.surveyId)),

  archive: allowed('survey.edit')
    .input(z.strictObject({ surveyId: idSchema, archived: z.boolean() }))
    .mutation(({ ctx, input }) => archiveSurvey(ctx.deps, ctx.who, input)),

  removePhoto: allowed('survey.edit')
    .input(z.strictObject({ photoId: idSchema }))
    .mutation(({ ctx, input }) => dropPhoto(ctx.deps, ctx.who, input.photoId)),
});

// Sheet 02, Survey: which measured space of the vehicle this job is built into, and the cavity that follows.
import { z } from 'zod';
import type { CavityResult, MissingDimension, SectionForm, SectionFormKind } from '../cargo/index.ts';
import { idSchema, notesSchema } from '../common/index.ts';
import { readingSchema, type SurveyExtras, type TakenReading } from './survey.ts';

export const surveyInputSchema = z.strictObject({
  /** The pinned revision of a survey; null = none chosen yet. */
  surveyId: idSchema.nullable(),
  /** A state of seat and floor that the survey knows; null = as it was measured. */
  stateId: z.string().min(1).max(60).nullable(),
  notes: notesSchema,
  /** The walls stand on values reconciled by least squares. Left out = on the readings as taken. */
  reconciles: z.boolean().optional(),
  /** What reads otherwise in this customer's own car: in place of the model's readings. Left out = nothing. */
  deltas: z.array(readingSchema).max(60).readonly().optional(),
});
export type SurveyInput = z.infer<typeof surveyInputSchema>;

/** A revision as a sheet reads it: plain JSON. */
export type SurveySnapshot = {
  readonly surveyId: string;
  readonly revision: number;
  /** `Halden Brisk, 2021 to 2024`. */
  readonly modelName: string;
  readonly formKind: SectionFormKind;
  readonly spaceName: string;
  /** As it was measured: `seats up`. */
  readonly seatState: string;
  readonly takenBy: string;
  readonly takenOn: string | null;
  /** In the order of their keys. */
  readonly readings: readonly TakenReading[];
  readonly extras: SurveyExtras;
};

export type SurveyFacts = {
  readonly survey: SurveySnapshot | null;
  /** A later settled revision of the same space; null while the pinned one is the newest. */
  readonly newer: SurveySnapshot | null;
};

/** Null = nobody took it on the model. */
export type SurveyDelta = { readonly key: string; readonly model: number | null; readonly car: number };

/** What later sheets read: the cavity, and who measured what. */
export type SurveyResult = {
  readonly surveyId: string;
  readonly revision: number;
  readonly modelName: string;
  readonly spaceName: string;
  /** The state of seat and floor that the cavity stands for, in words. */
  readonly seatState: string;
  readonly takenBy: string;
  readonly takenOn: string | null;
  readonly form: SectionForm;
  /** The readings that made the cavity, the state's own in their place. */
  readonly readings: readonly TakenReading[];
  readonly cavity: CavityResult;
  /** Dimensions nobody took that would make the walls surer. */
  readonly worthTaking: readonly MissingDimension[];
  /** Where this car differs from the model as measured; left out = nowhere. Values in mm, or radians of an angle. */
  readonly deltas?: readonly SurveyDelta[];
};

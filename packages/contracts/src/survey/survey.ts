// A survey as the shop keeps it: one space of one vehicle model, measured letter by letter. What was typed is kept
// beside every value. A settled revision never changes; measuring on makes the next one.
import { z } from 'zod';
import {
  dimensionKeySchema,
  freeCornerSchema,
  keepFreeKindSchema,
  measuringMethodSchema,
  sectionFormKindSchema,
} from '../cargo/index.ts';
import {
  idSchema,
  notesSchema,
  shopDateSchema,
  shortTextSchema,
  typedLengthSchema,
} from '../common/index.ts';
import { COORDINATE_LIMIT_MM } from '../geometry/index.ts';

/** A length with what was typed: `19 5/8"`. */
export const typedMmSchema = typedLengthSchema(-COORDINATE_LIMIT_MM, COORDINATE_LIMIT_MM);
export type TypedMm = Readonly<z.infer<typeof typedMmSchema>>;

/** A corner in the section: x from the foot of the back wall toward the opening, y up from the floor. */
export const surveyCornerSchema = z.strictObject({ x: typedMmSchema, y: typedMmSchema });
export type SurveyCorner = Readonly<z.infer<typeof surveyCornerSchema>>;

const partOfSpace = {
  id: z.string().min(1).max(60),
  name: z.string().trim().min(1, 'Say what it is.').max(60),
  corners: z.array(surveyCornerSchema).min(3, 'An outline has at least three corners.').max(12).readonly(),
};

/** Across the width, mm: 0 on the centre line, below 0 = left, seen from behind looking forward. */
const across = {
  left: typedMmSchema,
  right: typedMmSchema,
  plusMinusMm: z.number().min(0).max(200),
};
const leftOfRight = {
  path: ['right'],
  message: 'The right side lies right of the left one: left of the centre line is below 0.',
};

export const surveyObstructionSchema = z
  .strictObject({
    ...partOfSpace,
    ...across,
    appliesTo: z.enum(['fit', 'motion', 'both']),
    moves: z.boolean(),
  })
  .refine((it) => it.left.mm < it.right.mm, leftOfRight);
export type SurveyObstruction = Readonly<z.infer<typeof surveyObstructionSchema>>;

export const surveyKeepFreeSchema = z
  .strictObject({ ...partOfSpace, ...across, kind: keepFreeKindSchema })
  .refine((it) => it.left.mm < it.right.mm, leftOfRight);
export type SurveyKeepFree = Readonly<z.infer<typeof surveyKeepFreeSchema>>;

/** A part of the section where the space is narrower than the form's own widths say. */
export const surveyNarrowingSchema = z.strictObject({
  ...partOfSpace,
  width: typedMmSchema.refine((width) => width.mm > 0, 'A width is above 0.'),
  plusMinusMm: z.number().min(0).max(200),
});
export type SurveyNarrowing = Readonly<z.infer<typeof surveyNarrowingSchema>>;

/** How a free section is taken: corner by corner, or offsets from a straightedge at these stations. */
export const freeSectionSchema = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('points'), corners: z.array(freeCornerSchema).min(3).max(60).readonly() }),
  z.strictObject({
    by: z.literal('stations'),
    /** Rising, the first at 0. */
    stations: z.array(typedMmSchema).min(2).max(80).readonly(),
  }),
]);
export type FreeSection = Readonly<z.infer<typeof freeSectionSchema>>;

/** One reading as it is kept: mm, or radians where the form says that the dimension is an angle. */
export const readingSchema = z.strictObject({
  key: dimensionKeySchema,
  value: z.number().min(-20_000).max(20_000),
  typed: z.string().max(40),
  plusMinus: z.number().min(0).max(200),
  method: measuringMethodSchema,
});
export type Reading = Readonly<z.infer<typeof readingSchema>>;

/** The space with a seat folded or a floor panel out: these readings take the place of the survey's own. */
export const surveyStateSchema = z.strictObject({
  id: z.string().min(1).max(60),
  name: z.string().trim().min(1, 'Name the state: seat folded.').max(80),
  replaced: z.array(readingSchema).max(60).readonly(),
  /** Obstructions and keep-free zones that are gone in this state, by id. */
  absent: z.array(z.string().min(1).max(60)).max(60).readonly(),
});
export type SurveyState = Readonly<z.infer<typeof surveyStateSchema>>;

export const surveyExtrasSchema = z.strictObject({
  /** Null for the forms whose outline is fixed. */
  free: freeSectionSchema.nullable(),
  obstructions: z.array(surveyObstructionSchema).max(60).readonly(),
  keepFree: z.array(surveyKeepFreeSchema).max(60).readonly(),
  narrowings: z.array(surveyNarrowingSchema).max(20).readonly(),
  states: z.array(surveyStateSchema).max(20).readonly(),
});
export type SurveyExtras = Readonly<z.infer<typeof surveyExtrasSchema>>;

export const NO_EXTRAS: SurveyExtras = {
  free: null,
  obstructions: [],
  keepFree: [],
  narrowings: [],
  states: [],
};

/** A reading with who took it and when. */
export type TakenReading = Reading & { readonly takenBy: string; readonly takenAt: string };

export const createSurveySchema = z
  .strictObject({
    modelId: idSchema,
    formKind: sectionFormKindSchema,
    /** Tells two spaces of one kind apart: `left well`. */
    spaceName: z.string().trim().max(80).default(''),
    /** How the seats stood while it was measured: `seats up`. */
    seatState: z.string().trim().max(80).default(''),
    free: freeSectionSchema.nullable().default(null),
  })
  .refine((survey) => (survey.formKind === 'free-section') === (survey.free !== null), {
    path: ['free'],
    message: 'A free section says how it is taken: corners or stations. Other forms have an outline already.',
  });
export type CreateSurveyInput = z.infer<typeof createSurveySchema>;

export const setReadingSchema = z.strictObject({
  surveyId: idSchema,
  /** The version of this one reading that was on screen; 0 = there was none. */
  version: z.number().int().min(0).max(2_000_000_000),
  reading: readingSchema,
  /** When it was measured: on a phone without a signal, earlier than it arrives. Null = now. */
  takenAt: z.iso.datetime({ offset: true }).nullable().default(null),
});
export type SetReadingInput = z.infer<typeof setReadingSchema>;

export const surveyDetailsSchema = z.strictObject({
  spaceName: z.string().trim().max(80),
  seatState: z.string().trim().max(80),
  takenOn: shopDateSchema.nullable(),
  notes: notesSchema,
});
export type SurveyDetails = z.infer<typeof surveyDetailsSchema>;

export const photoPlaceSchema = z.strictObject({
  surveyId: idSchema,
  /** The lettered dimension that it shows; null = the whole space. */
  measurementKey: dimensionKeySchema.nullable().default(null),
  caption: shortTextSchema.default(''),
});
export type PhotoPlace = z.infer<typeof photoPlaceSchema>;

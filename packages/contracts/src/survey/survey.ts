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
/** Not there as the space was measured: only in the states that name it. Left out = it is there. */
const offAsMeasured = z.boolean().optional();

/** A part that turns about a pin: what it sweeps is in the way, not only where it rests. Counter-clockwise above 0. */
export const surveySwingSchema = z
  .strictObject({
    pivot: surveyCornerSchema,
    fromDegrees: z.number().min(-360).max(360),
    toDegrees: z.number().min(-360).max(360),
  })
  .refine((it) => it.fromDegrees <= it.toDegrees, {
    path: ['toDegrees'],
    message: 'The end of the swing is not below its beginning.',
  })
  .refine((it) => it.toDegrees - it.fromDegrees <= 360, {
    path: ['toDegrees'],
    message: 'A part swings through 360° at most.',
  });
export type SurveySwing = Readonly<z.infer<typeof surveySwingSchema>>;

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
    offAsMeasured,
    /** Left out = it stays where it was measured. */
    swing: surveySwingSchema.optional(),
  })
  .refine((it) => it.left.mm < it.right.mm, leftOfRight);
export type SurveyObstruction = Readonly<z.infer<typeof surveyObstructionSchema>>;

export const surveyKeepFreeSchema = z
  .strictObject({ ...partOfSpace, ...across, kind: keepFreeKindSchema, offAsMeasured })
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
    /** Along the straightedge, rising, the first at 0. Its own place and tilt are dimensions of the form. */
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
  /** Those that stand there in this state only, by id. Left out = none. */
  present: z.array(z.string().min(1).max(60)).max(60).readonly().optional(),
});
export type SurveyState = Readonly<z.infer<typeof surveyStateSchema>>;

/** A soft wall that a box in its place may press in. */
export const surveySoftWallSchema = z.strictObject({
  id: z.string().min(1).max(60),
  wallId: z.string().min(1).max(40),
  /** The wall in the words of the form, for lists of what changed. */
  name: z.string().min(1).max(60),
  crush: typedMmSchema.refine(({ mm }) => mm >= 0 && mm <= 100, 'Soft trim gives way by 0 to 100 mm.'),
});
export type SurveySoftWall = Readonly<z.infer<typeof surveySoftWallSchema>>;

const beyondLength = typedMmSchema.refine(({ mm }) => mm > 0 && mm <= 5000, 'Above 0, at most 5000 mm.');
const beyondPlusMinusMm = z.number().min(0).max(200);

/** Raised lid, bumper and ground as they were measured; null = not yet. */
export const surveyBeyondSchema = z.strictObject({
  lid: z
    .strictObject({
      length: beyondLength,
      thickness: beyondLength,
      openDegrees: z.number().min(-90).max(180),
      plusMinusMm: beyondPlusMinusMm,
    })
    .nullable(),
  bumper: z
    .strictObject({
      out: beyondLength,
      below: typedMmSchema.refine(({ mm }) => mm >= 0 && mm <= 5000, '0 to 5000 mm.'),
      plusMinusMm: beyondPlusMinusMm,
    })
    .nullable(),
  ground: z.strictObject({ below: beyondLength, plusMinusMm: beyondPlusMinusMm }).nullable(),
});
export type SurveyBeyond = Readonly<z.infer<typeof surveyBeyondSchema>>;

export const surveyExtrasSchema = z.strictObject({
  /** Null for the forms whose outline is fixed. */
  free: freeSectionSchema.nullable(),
  obstructions: z.array(surveyObstructionSchema).max(60).readonly(),
  keepFree: z.array(surveyKeepFreeSchema).max(60).readonly(),
  narrowings: z.array(surveyNarrowingSchema).max(20).readonly(),
  states: z.array(surveyStateSchema).max(20).readonly(),
  /** Left out = no wall gives way. */
  softWalls: z.array(surveySoftWallSchema).max(20).readonly().optional(),
  /** Left out = nobody looked beyond the opening. */
  beyond: surveyBeyondSchema.optional(),
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

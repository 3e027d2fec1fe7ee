// What stands in or must stay free of a cargo space beside its walls, and the named states of seat and floor.
import { z } from 'zod';
import { coordinateMmSchema, polygonMmSchema } from '../geometry/index.ts';
import { beyondOpeningSchema, softWallSchema } from './beyond-opening.ts';
import { measurementSchema } from './measuring.ts';
import { sectionFormSchema } from './section-form.ts';

const prism = {
  id: z.string().min(1).max(60),
  name: z.string().min(1).max(80),
  /** In the section plane, mm; either turning sense. */
  polygon: polygonMmSchema.readonly(),
  /** Across the width, mm, 0 on the centre line. */
  zMinMm: coordinateMmSchema,
  zMaxMm: coordinateMmSchema,
  plusMinusMm: z.number().min(0).max(200),
  /** Not there as the space was measured: only in the states that name it. Left out = it is there. */
  offAsMeasured: z.boolean().optional(),
};

export const obstructionSchema = z
  .strictObject({
    ...prism,
    /** Fit = counts for a box in its place (a lid arm that sweeps as the lid shuts); motion = only on the way in. */
    appliesTo: z.enum(['fit', 'motion', 'both']),
    /** Hinges, struts, seat frames: wants the clearance of moving metal. */
    moves: z.boolean(),
  })
  .refine((it) => it.zMinMm < it.zMaxMm, { path: ['zMaxMm'], message: 'above zMinMm' });
export type Obstruction = Readonly<z.infer<typeof obstructionSchema>>;

export const keepFreeKindSchema = z.enum([
  'seat-belt',
  'child-seat-tether',
  'airbag',
  'spare-wheel',
  'jack',
  'vent',
  'release-handle',
  'exit',
  'other',
]);
export type KeepFreeKind = z.infer<typeof keepFreeKindSchema>;

/** Room that has to stay usable after the work. Planning aid only: the vehicle maker's instructions come first. */
export const keepFreeZoneSchema = z
  .strictObject({ ...prism, kind: keepFreeKindSchema })
  .refine((it) => it.zMinMm < it.zMaxMm, { path: ['zMaxMm'], message: 'above zMinMm' });
export type KeepFreeZone = Readonly<z.infer<typeof keepFreeZoneSchema>>;

/** A named state of seat and floor (`seat folded`, `floor panel out`). */
export const spaceStateSchema = z.strictObject({
  id: z.string().min(1).max(60),
  name: z.string().min(1).max(80),
  /** These readings take the place of the survey's readings with the same key. */
  replaced: z.array(measurementSchema).max(60).readonly(),
  /** Obstructions and keep-free zones that are gone in this state, by id. */
  absent: z.array(z.string().min(1).max(60)).max(60).readonly(),
  /** Those that stand there in this state only (a folded seat back), by id. Left out = none. */
  present: z.array(z.string().min(1).max(60)).max(60).readonly().optional(),
});
export type SpaceState = Readonly<z.infer<typeof spaceStateSchema>>;

export const surroundingsSchema = z.strictObject({
  obstructions: z.array(obstructionSchema).max(60).readonly(),
  keepFree: z.array(keepFreeZoneSchema).max(60).readonly(),
  /** Left out = no wall gives way. */
  softWalls: z.array(softWallSchema).max(60).readonly().optional(),
  /** Left out = nobody looked. */
  beyond: beyondOpeningSchema.optional(),
});
export type Surroundings = Readonly<z.infer<typeof surroundingsSchema>>;

/** Everything taken at one vehicle for one section. */
export const sectionSurveySchema = z.strictObject({
  form: sectionFormSchema,
  measurements: z.array(measurementSchema).max(400).readonly(),
  obstructions: surroundingsSchema.shape.obstructions,
  keepFree: surroundingsSchema.shape.keepFree,
  softWalls: surroundingsSchema.shape.softWalls,
  beyond: surroundingsSchema.shape.beyond,
  states: z.array(spaceStateSchema).max(20).readonly(),
});
export type SectionSurvey = Readonly<z.infer<typeof sectionSurveySchema>>;

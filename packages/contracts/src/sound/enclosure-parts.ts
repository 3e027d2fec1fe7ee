// What moves air out of a box beside the drivers: ports and passive radiators, as entered.
import { z } from 'zod';
import { RADIATOR_RANGES } from '../acoustics/ranges.ts';
import { typedLengthSchema } from '../common/index.ts';
import { typedFigureSchema, typedOf } from './typed.ts';

export const ENCLOSURES = [
  'infinite-baffle',
  'closed',
  'vented',
  'passive-radiator',
  'single-tuned-bandpass',
  'dual-tuned-bandpass',
] as const;
export type EnclosureKind = (typeof ENCLOSURES)[number];
export const ENCLOSURE_WORDS: Record<EnclosureKind, string> = {
  'infinite-baffle': 'Trunk wall',
  closed: 'Closed box',
  vented: 'Vented box',
  'passive-radiator': 'Passive radiators',
  'single-tuned-bandpass': 'Bandpass, one port',
  'dual-tuned-bandpass': 'Bandpass, two ports',
};

/** As entered; the sheet says whether a port can have it. */
const portLengthSchema = typedLengthSchema(0, 20_000).nullable();

export const soundPortSchema = z.strictObject({
  shape: z.enum(['round', 'slot']),
  count: z.number().int().min(1).max(12),
  /** Inside, of a round one. */
  diameter: portLengthSchema,
  /** Clear opening of a slot. */
  width: portLengthSchema,
  height: portLengthSchema,
  /** Radius of the quarter-circle flare at each end; null = sharp. Round ones only. */
  outerFlare: portLengthSchema,
  innerFlare: portLengthSchema,
  /** Panels of the box that run on flush past the inner end: 0, 1 (along one wall) or 2 (in a corner). */
  walls: z.union([z.literal(0), z.literal(1), z.literal(2)]),
  /** Which of the two is wanted; the other follows. Both keep what was typed. */
  by: z.enum(['tuning', 'length']),
  tuning: typedFigureSchema(5, 500).nullable(),
  /** Overall, flares included. */
  length: portLengthSchema,
});
export type SoundPort = z.infer<typeof soundPortSchema>;

export const EMPTY_PORT: SoundPort = {
  shape: 'round',
  count: 1,
  diameter: null,
  width: null,
  height: null,
  outerFlare: null,
  innerFlare: null,
  walls: 0,
  by: 'tuning',
  tuning: null,
  length: null,
};

/** Figures of one radiator, off its maker's sheet. */
export const soundRadiatorSchema = z.strictObject({
  count: z.number().int().min(1).max(8),
  fsHz: typedOf(RADIATOR_RANGES.fsHz).nullable(),
  qms: typedOf(RADIATOR_RANGES.qms).nullable(),
  vasLitres: typedOf(RADIATOR_RANGES.vasLitres).nullable(),
  sdCm2: typedOf(RADIATOR_RANGES.sdCm2).nullable(),
  /** Screwed on beside the cone's own mass; null = none. */
  addedMassGrams: typedOf(RADIATOR_RANGES.addedMassGrams).nullable(),
  /** Peak travel one way; null = not stated. */
  xmaxMm: typedOf(RADIATOR_RANGES.xmaxMm).nullable(),
});
export type SoundRadiator = z.infer<typeof soundRadiatorSchema>;

export const EMPTY_RADIATOR: SoundRadiator = {
  count: 1,
  fsHz: null,
  qms: null,
  vasLitres: null,
  sdCm2: null,
  addedMassGrams: null,
  xmaxMm: null,
};

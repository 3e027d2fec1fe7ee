// Sheet 03, Sound: what someone decides. What belongs to a kind of box that is not chosen stays as it was typed.
import { z } from 'zod';
import { coilWiringSchema } from '../acoustics/index.ts';
import { idSchema, notesSchema } from '../common/index.ts';
import { fillSchema, leakSchema } from './box-air.ts';
import {
  EMPTY_PORT,
  EMPTY_RADIATOR,
  ENCLOSURES,
  soundPortSchema,
  soundRadiatorSchema,
} from './enclosure-parts.ts';
import { BAND_LIMIT, soundAmplifierSchema, soundBandSchema, soundPassSchema } from './signal.ts';
import { typedFigureSchema, typedLitresSchema, typedWattsSchema } from './typed.ts';

/** Designs on one sheet are lettered: the one that counts and up to five beside it. */
export const DESIGN_LETTERS = ['A', 'B', 'C', 'D', 'E', 'F'] as const;
export type DesignLetter = (typeof DESIGN_LETTERS)[number];
const letterSchema = z.enum(DESIGN_LETTERS);
const designNameSchema = z.string().max(60);

/** One whole design: drivers, what drives them, and the box they stand in. */
export const soundDesignSchema = z.strictObject({
  /** A driver of the catalogue. */
  driverId: idSchema.nullable(),
  count: z.number().int().min(1).max(8),
  /** Strings of how many in series; must divide the count. */
  seriesPerString: z.number().int().min(1).max(8),
  coilWiring: coilWiringSchema,
  /** Two drivers one behind the other, with this air between them; null = side by side. */
  isobaric: z.strictObject({ coupling: typedLitresSchema.nullable() }).nullable(),
  /** Power the amplifier gives into this load, watts. */
  drive: typedWattsSchema.nullable(),
  amplifier: soundAmplifierSchema,
  highPass: soundPassSchema.nullable(),
  lowPass: soundPassSchema.nullable(),
  equaliser: z.array(soundBandSchema).max(BAND_LIMIT),
  enclosure: z.enum(ENCLOSURES),
  /** Net air wanted behind the drivers, litres. */
  targetNet: typedLitresSchema.nullable(),
  fill: fillSchema,
  leak: leakSchema,
  /** Chamber in front of the drivers; bandpass boxes only. */
  front: z.strictObject({ net: typedLitresSchema.nullable(), fill: fillSchema }),
  /** Of the vented box; of the front chamber in a bandpass box. */
  port: soundPortSchema,
  /** Of the rear chamber in a bandpass box with two ports. */
  rearPort: soundPortSchema,
  radiator: soundRadiatorSchema,
});
export type SoundDesign = z.infer<typeof soundDesignSchema>;

/** Another design, drawn and listed beside the one that counts. */
export const soundVariantSchema = z.strictObject({
  letter: letterSchema,
  name: designNameSchema,
  design: soundDesignSchema,
});
export type SoundVariant = z.infer<typeof soundVariantSchema>;

/** Where the level is meant to stay: between two frequencies, within so many dB of one level. */
export const soundTargetSchema = z.strictObject({
  lowHz: typedFigureSchema(5, 1_000).nullable(),
  highHz: typedFigureSchema(5, 1_000).nullable(),
  plusMinusDb: typedFigureSchema(0.5, 20).nullable(),
  /** Null = the middle of what the design does between the two. */
  levelDb: typedFigureSchema(20, 180).nullable(),
});
export type SoundTarget = z.infer<typeof soundTargetSchema>;

/** `measured`: this car's own transfer; `estimate`: a shelf from its longest inside length; `none`: as if outdoors. */
export const CABINS = ['estimate', 'measured', 'none'] as const;
export type CabinChoice = (typeof CABINS)[number];

/** The design that counts stands on the sheet itself: it is what sheet 04 builds. */
export const soundInputSchema = soundDesignSchema.extend({
  letter: letterSchema,
  name: designNameSchema,
  variants: z.array(soundVariantSchema).max(DESIGN_LETTERS.length - 1),
  cabin: z.enum(CABINS),
  target: soundTargetSchema.nullable(),
  notes: notesSchema,
});
export type SoundInput = z.infer<typeof soundInputSchema>;

/** A design that nobody has entered anything of. */
export const EMPTY_DESIGN: SoundDesign = {
  driverId: null,
  count: 1,
  seriesPerString: 1,
  coilWiring: 'single',
  isobaric: null,
  drive: null,
  amplifier: { maxVolts: null, maxAmps: null, outputOhm: null, cableOhm: null },
  highPass: null,
  lowPass: null,
  equaliser: [],
  enclosure: 'closed',
  targetNet: null,
  fill: 'none',
  leak: 'tight',
  front: { net: null, fill: 'none' },
  port: EMPTY_PORT,
  rearPort: EMPTY_PORT,
  radiator: EMPTY_RADIATOR,
};

export const EMPTY_SOUND_INPUT: SoundInput = {
  ...EMPTY_DESIGN,
  letter: 'A',
  name: '',
  variants: [],
  cabin: 'estimate',
  target: null,
  notes: '',
};

/** The design that counts, without what belongs to the sheet. */
export function designOf(input: SoundInput): SoundDesign {
  const {
    letter: _letter,
    name: _name,
    variants: _variants,
    cabin: _cabin,
    target: _target,
    notes: _notes,
    ...design
  } = input;
  return design;
}

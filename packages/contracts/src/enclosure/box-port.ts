// Ports of a box as bodies: what is built for an area and a length that the acoustic side asks for.
import { z } from 'zod';
import { boxFaceSchema, typedLengthMmSchema, wallFaceSchema } from './box-shape.ts';

const place = z.number().min(-20_000).max(20_000);

/** Pipes alike through one face. */
export const tubePortSchema = z.strictObject({
  kind: z.literal('tube'),
  face: boxFaceSchema,
  count: z.int().min(1).max(12).default(1),
  /** Inside, between the flares. */
  insideDiaMm: typedLengthMmSchema,
  wallMm: typedLengthMmSchema.default(4),
  /** From the outermost wood of the face to the inner end, flares included. */
  lengthMm: typedLengthMmSchema,
  /** Quarter-circle flares; 0 = sharp. */
  outerFlareMm: typedLengthMmSchema.default(0),
  innerFlareMm: typedLengthMmSchema.default(0),
  /** Of one. */
  massKg: z.number().min(0).max(1_000).default(0),
  /** Walls: across from the centre line, up from the lower edge. Sides: x and y of the side view. Null = where the
   * face has most wood round them. */
  at: z
    .array(z.strictObject({ acrossMm: place, upMm: place }))
    .min(1)
    .max(12)
    .nullable()
    .default(null),
});
export type TubePort = Readonly<z.infer<typeof tubePortSchema>>;

/** A channel of panels. Its first wall is `along`, one of the box's own; where that ends it may turn and go on along
 * the next. */
export const slotPortSchema = z.strictObject({
  kind: z.literal('slot'),
  /** Where it opens. */
  face: wallFaceSchema,
  /** A wall beside that face, or a side. */
  along: boxFaceSchema,
  /** Clear, square to `along`. */
  heightMm: typedLengthMmSchema,
  /** Clear, along the wall; null = from side to side. A slot along a side always takes the whole height. */
  widthMm: typedLengthMmSchema.nullable().default(null),
  /** Middle of a slot that is narrower than the inside; null = on the centre line. */
  acrossMm: place.nullable().default(null),
  /** Along the middle of the channel, from the outermost wood of the face. */
  lengthMm: typedLengthMmSchema,
  /** Corners that it may go round. A slot along a side goes straight. */
  bendsAllowed: z.int().min(0).max(2).default(2),
});
export type SlotPort = Readonly<z.infer<typeof slotPortSchema>>;

export const boxPortSchema = z.discriminatedUnion('kind', [tubePortSchema, slotPortSchema]);
export type BoxPort = Readonly<z.infer<typeof boxPortSchema>>;

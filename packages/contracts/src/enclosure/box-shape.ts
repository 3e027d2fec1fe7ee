// The outside of a box as the shop measures it. Side view: origin at the lower back corner, x toward the front
// (the way out of the vehicle), y up; z runs across the width, 0 on the centre line, + toward the left side as
// seen by someone who faces the front. The schema keeps out what no shop could mean; the engine's door
// (`buildBox`) refuses what cannot be built, with the reason.
import { z } from 'zod';

/** A length that may still turn out too small or too large to build. */
export const typedLengthMmSchema = z.number().min(0).max(20_000);

/** The walls round the side view. A box needs a bottom; every other wall may be missing from a free profile. */
export const wallFaceSchema = z.enum([
  'bottom',
  'front',
  'top',
  'back',
  'slope-1',
  'slope-2',
  'slope-3',
  'slope-4',
]);
export type WallFace = z.infer<typeof wallFaceSchema>;

/** Every face of a box: its walls, and the two sides. */
export const boxFaceSchema = z.enum([...wallFaceSchema.options, 'left', 'right']);
export type BoxFace = z.infer<typeof boxFaceSchema>;

const slopedFace = z.enum(['front', 'back']);

export const boxShapeSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('rectangular'),
    heightMm: typedLengthMmSchema,
    depthMm: typedLengthMmSchema,
    widthMm: typedLengthMmSchema,
  }),
  /** One face leans from the bottom edge to the top edge; the face across from it stands upright. */
  z.strictObject({
    kind: z.literal('wedge'),
    heightMm: typedLengthMmSchema,
    depthBottomMm: typedLengthMmSchema,
    depthTopMm: typedLengthMmSchema,
    widthMm: typedLengthMmSchema,
    slopedFace,
  }),
  /** Upright up to the knee, leaning from there to the top: the leaning wall is `slope-1`. */
  z.strictObject({
    kind: z.literal('clipped-wedge'),
    heightMm: typedLengthMmSchema,
    depthBottomMm: typedLengthMmSchema,
    depthTopMm: typedLengthMmSchema,
    kneeHeightMm: typedLengthMmSchema,
    widthMm: typedLengthMmSchema,
    slopedFace,
  }),
  /** Any side view that does not cross itself, hollow corners too: corners counter-clockwise, each with the wall that
   * starts at it. An L is one with six. */
  z.strictObject({
    kind: z.literal('profile'),
    widthMm: typedLengthMmSchema,
    walls: z
      .array(
        z.strictObject({
          xMm: z.number().min(-20_000).max(20_000),
          yMm: z.number().min(-20_000).max(20_000),
          face: wallFaceSchema,
        }),
      )
      .min(3)
      .max(8),
  }),
]);
export type BoxShape = Readonly<z.infer<typeof boxShapeSchema>>;

// Sheet 04, Box: what someone decides. Lengths keep what was typed beside their value; what is not entered is null.
import { z } from 'zod';
import { idSchema, notesSchema, typedLengthSchema } from '../common/index.ts';

/** A length as entered; the engines say whether a box can have it. */
export const boxLengthSchema = typedLengthSchema(0, 20_000);
export type BoxLength = z.infer<typeof boxLengthSchema>;

/** From the centre line or an edge, so that it may lie on either side. */
const signedLengthSchema = typedLengthSchema(-20_000, 20_000);

/** Between the maker's cut-out and the hole in the baffle, on the diameter. */
export const DEFAULT_CUTOUT_CLEARANCE_MM = 1.5;

const finishIdSchema = idSchema.nullable();

const terminalCupSchema = z.strictObject({
  /** The part of the catalogue that is fitted; null = not chosen yet. */
  partId: idSchema.nullable(),
  face: z.enum(['front', 'back', 'top', 'left', 'right']),
  cutout: z.discriminatedUnion('shape', [
    z.strictObject({ shape: z.literal('circle'), diameter: boxLengthSchema }),
    z.strictObject({ shape: z.literal('rectangle'), width: boxLengthSchema, height: boxLengthSchema }),
  ]),
  insideDepth: boxLengthSchema,
  /** Centre: across from the centre line and up from the lower edge (sides: x and y of the side view); null = low and
   * clear of the braces. */
  at: z.strictObject({ across: signedLengthSchema, up: signedLengthSchema }).nullable(),
});

export const boxInputSchema = z.strictObject({
  /** A clipped wedge stands upright up to its knee and leans from there; an L is low at the foot, deep below only. */
  shape: z.enum(['rectangular', 'wedge', 'clipped-wedge', 'l']),
  /** Outside of the wood before finish. `depth` is along the bottom; all but rectangular boxes have a depth at the top. */
  outside: z.strictObject({
    width: boxLengthSchema.nullable(),
    height: boxLengthSchema.nullable(),
    depth: boxLengthSchema.nullable(),
    depthTop: boxLengthSchema.nullable(),
    /** Up to the knee of a clipped wedge, or the height of an L's foot. */
    kneeHeight: boxLengthSchema.nullable().default(null),
  }),
  /** Which face leans, or on which side an L has its step. Front = toward the opening of the vehicle. */
  slopedFace: z.enum(['front', 'back']),
  /** Sheet goods of the catalogue. */
  carcassId: idSchema.nullable(),
  /** Baffle and its doublers; null = as the carcass. */
  baffleId: idSchema.nullable(),
  /** What each face is covered with; null = left as wood. */
  finishes: z.strictObject({
    front: finishIdSchema,
    back: finishIdSchema,
    top: finishIdSchema,
    bottom: finishIdSchema,
    left: finishIdSchema,
    right: finishIdSchema,
    /** Leaning walls, and what an L has above its foot. */
    slopes: finishIdSchema.default(null),
  }),
  /** The finish is tucked into cut-outs and recesses, so that they must be cut larger. */
  finishWrapsOpenings: z.boolean(),
  baffle: z.strictObject({
    /** `slope-1`: the leaning wall of a clipped wedge, the upright one above an L's foot. */
    face: z.enum(['front', 'back', 'top', 'slope-1']),
    doubler: z
      .strictObject({ at: z.enum(['inside', 'outside']), layers: z.number().int().min(1).max(3) })
      .nullable(),
  }),
  drivers: z.strictObject({
    mount: z.enum(['surface', 'flush']),
    /** Null = not decided; screw holes are then not drawn. */
    fixing: z
      .strictObject({
        kind: z.enum(['screw', 't-nut', 'insert']),
        hole: boxLengthSchema,
        /** Flange of a T-nut. */
        flange: boxLengthSchema.nullable(),
      })
      .nullable(),
    /** Centre of each driver on the baffle's face: across from the centre line, up from its lower edge. Null = one even
     * row halfway up. */
    positions: z
      .array(z.strictObject({ across: signedLengthSchema, up: signedLengthSchema }))
      .min(1)
      .max(6)
      .nullable(),
    cutoutClearance: boxLengthSchema,
    /** Inner face of a grille in front of the finished baffle; null = no grille. */
    grilleStandOff: boxLengthSchema.nullable(),
  }),
  /** How square corners are joined, and the walls to sides that run through. */
  joints: z
    .strictObject({
      corners: z.enum(['butt', 'rabbet', 'mitre']),
      sides: z.enum(['butt', 'rabbet']),
    })
    .default({ corners: 'butt', sides: 'butt' }),
  /** How far the baffle stands back behind the edges round it; null = flush. */
  baffleSetBack: boxLengthSchema.nullable().default(null),
  /** Outer edges rounded after assembly; null = sharp. */
  roundOver: z
    .strictObject({ radius: boxLengthSchema, edges: z.enum(['sides', 'across', 'all']) })
    .nullable()
    .default(null),
  /** A wall inside that makes two chambers: parallel to a face, so far behind its wood; null = one chamber. */
  divider: z
    .strictObject({
      parallelTo: z.enum(['front', 'back', 'top', 'bottom', 'left', 'right']),
      clear: boxLengthSchema.nullable(),
      drivers: z.enum(['baffle', 'divider']),
      /** Chamber behind the cones. */
      magnets: z.enum(['near', 'far']),
    })
    .nullable()
    .default(null),
  bracing: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('none') }),
    z.strictObject({ kind: z.literal('suggested') }),
    z.strictObject({ kind: z.literal('count'), count: z.number().int().min(1).max(6) }),
  ]),
  cornerBlocks: z
    .strictObject({ leg: boxLengthSchema, seams: z.enum(['across', 'sides', 'all']) })
    .nullable(),
  terminalCup: terminalCupSchema.nullable(),
  lining: z.enum(['none', 'walls', 'filled']),
  /** Corner of the low-pass filter: walls should resonate above twice this. */
  lowPassHz: z.number().min(20).max(2_000),
  place: z.discriminatedUnion('by', [
    /** On the floor, pushed up to the wall behind it; a null gap is what the shop wants there at worst. */
    z.strictObject({
      by: z.literal('rest'),
      back: z.enum(['seat-back', 'cab-wall', 'other']).nullable(),
      gap: boxLengthSchema.nullable(),
    }),
    /** Lower back corner of the box in the section, and its tilt, nose up. */
    z.strictObject({
      by: z.literal('pose'),
      x: signedLengthSchema,
      y: signedLengthSchema,
      tiltDeg: z.number().min(-180).max(180),
    }),
  ]),
  notes: notesSchema,
});
export type BoxInput = z.infer<typeof boxInputSchema>;

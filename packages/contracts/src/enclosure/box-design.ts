// What someone decides about a box: `buildBox` turns it into panels and volumes. Units in the key names; defaults
// are the shop's usual choices, each of them editable.
import { z } from 'zod';
import { boxPortSchema } from './box-port.ts';
import { boxFaceSchema, boxShapeSchema, typedLengthMmSchema } from './box-shape.ts';

const litres = z.number().min(0).max(5_000);
const massKg = z.number().min(0).max(1_000);

/** The sheet that a group of panels is cut from. Thickness as measured on the real sheet, not as sold. */
export const panelStockSchema = z.strictObject({
  materialId: z.string().min(1).max(60),
  thicknessMm: typedLengthMmSchema,
  densityKgM3: z.number().min(0).max(20_000),
  /** Bending stiffness E; MDF 2.5-3.0, birch plywood about 7.5 as a mean of both directions. */
  modulusGPa: z.number().min(0).max(500).default(2.8),
  /** True for plywood whose face grain is meant to show one way. */
  hasGrain: z.boolean().default(false),
});
export type PanelStock = Readonly<z.infer<typeof panelStockSchema>>;

/** `rabbet`: the panel that runs through is stepped for the end of the other. Only square corners are; others are
 * butted, and flat or hollow ones mitred, whatever is chosen. */
const cornerKindSchema = z.enum(['butt', 'rabbet', 'mitre']).default('butt');

/** Which panel of each pair runs past the other at a butt joint, so that its edge is seen. */
export const buttJointsSchema = z.strictObject({
  /** `through`: the sides carry the whole side view and cover the walls' ends. `covered`: the walls run over them. */
  sides: z.enum(['through', 'covered']).default('through'),
  bottomFront: z.enum(['bottom', 'front']).default('bottom'),
  bottomBack: z.enum(['bottom', 'back']).default('bottom'),
  topFront: z.enum(['top', 'front']).default('top'),
  topBack: z.enum(['top', 'back']).default('top'),
  /** How each pair is joined; `others` are the pairs with a slope. */
  kinds: z
    .strictObject({
      bottomFront: cornerKindSchema,
      bottomBack: cornerKindSchema,
      topFront: cornerKindSchema,
      topBack: cornerKindSchema,
      others: cornerKindSchema,
      /** Sides that run through may be rabbeted all round for the walls' ends. */
      sides: z.enum(['butt', 'rabbet']).default('butt'),
    })
    .prefault({}),
  /** Into the panel that runs through; null = half of it. */
  rabbetDepthMm: typedLengthMmSchema.nullable().default(null),
});
export type ButtJoints = Readonly<z.infer<typeof buttJointsSchema>>;

/** What lies on the wood outside, by face. */
export const finishSchema = z.strictObject({
  bottomMm: typedLengthMmSchema.default(0),
  frontMm: typedLengthMmSchema.default(0),
  topMm: typedLengthMmSchema.default(0),
  backMm: typedLengthMmSchema.default(0),
  slopesMm: typedLengthMmSchema.default(0),
  leftMm: typedLengthMmSchema.default(0),
  rightMm: typedLengthMmSchema.default(0),
  /** What is left of it under a driver's flange: 4 mm carpet goes down to about 1.5 mm. */
  compressedMm: typedLengthMmSchema.default(0),
  /** True where it is tucked into cut-outs and recesses, so that they must be cut larger. */
  wrapsOpenings: z.boolean().default(false),
});
export type Finish = Readonly<z.infer<typeof finishSchema>>;

/** A driver as a body: the figures of the maker's dimension drawing. */
export const driverBodySchema = z.strictObject({
  overallDiaMm: typedLengthMmSchema,
  cutoutDiaMm: typedLengthMmSchema,
  boltCircleDiaMm: typedLengthMmSchema,
  boltCount: z.int().min(0).max(24),
  /** From the underside of the flange to the rear of the magnet. */
  mountingDepthMm: typedLengthMmSchema,
  magnetDiaMm: typedLengthMmSchema,
  flangeThicknessMm: typedLengthMmSchema,
  /** Gasket as compressed by the bolts; 0 = none. */
  gasketThicknessMm: typedLengthMmSchema.default(0),
  /** Hole in the magnet that breathes to the rear; null = closed. */
  poleVentDiaMm: typedLengthMmSchema.nullable().default(null),
  sideVents: z.boolean().default(false),
  /** Air that one driver takes from the box, the maker's figure; null = not stated. */
  displacementLitres: litres.nullable().default(null),
  massKg: massKg.nullable().default(null),
  /** Mechanical limit of travel one way; null = not stated. */
  xmechMm: typedLengthMmSchema.nullable().default(null),
});
export type DriverBody = Readonly<z.infer<typeof driverBodySchema>>;

export const driverFixingSchema = z.strictObject({
  kind: z.enum(['screw', 't-nut', 'insert']),
  /** Hole bored for it in the panel; for a screw, the pilot. */
  holeDiaMm: typedLengthMmSchema,
  /** Flange of a T-nut; null for the others. */
  flangeDiaMm: typedLengthMmSchema.nullable().default(null),
});
export type DriverFixing = Readonly<z.infer<typeof driverFixingSchema>>;

/** Centre of a driver on the baffle's outer face: from the centre line, and up along the face from its lower edge
 * (on a top baffle: back from its front edge). */
export const driverPositionSchema = z.strictObject({
  zMm: z.number().min(-20_000).max(20_000),
  upMm: z.number().min(-20_000).max(20_000),
});
export type DriverPosition = Readonly<z.infer<typeof driverPositionSchema>>;

export const mountedDriversSchema = z.strictObject({
  count: z.int().min(1).max(6),
  body: driverBodySchema,
  mount: z.enum(['surface', 'flush']),
  fixing: driverFixingSchema.nullable().default(null),
  /** Null = one even row, halfway up the face. */
  positions: z.array(driverPositionSchema).min(1).max(6).nullable().default(null),
});
export type MountedDrivers = Readonly<z.infer<typeof mountedDriversSchema>>;

const braceSolidFraction = z.number().min(0).max(1).default(0.45);
const offCentre = z.enum(['left', 'right']).default('left');

/** Window braces: upright frames across the box, each tying bottom, front, top and back together. */
export const bracingSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('none') }),
  /** As few as bring every braced wall above twice the low-pass corner. */
  z.strictObject({ kind: z.literal('suggested'), solidFraction: braceSolidFraction, offCentre }),
  z.strictObject({
    kind: z.literal('count'),
    count: z.int().min(1).max(6),
    solidFraction: braceSolidFraction,
    offCentre,
  }),
  z.strictObject({
    kind: z.literal('placed'),
    zMm: z.array(z.number().min(-20_000).max(20_000)).min(1).max(6),
    solidFraction: braceSolidFraction,
  }),
]);
export type Bracing = Readonly<z.infer<typeof bracingSchema>>;

/** Three-cornered strips glued into inside seams. */
export const cornerBlocksSchema = z.strictObject({
  legMm: typedLengthMmSchema,
  /** `across`: the seams between walls. `sides`: the seams round both sides. */
  seams: z.enum(['across', 'sides', 'all']).default('across'),
});
export type CornerBlocks = Readonly<z.infer<typeof cornerBlocksSchema>>;

export const terminalCupSchema = z.strictObject({
  face: boxFaceSchema,
  cutout: z.discriminatedUnion('shape', [
    z.strictObject({ shape: z.literal('circle'), diameterMm: typedLengthMmSchema }),
    z.strictObject({
      shape: z.literal('rectangle'),
      widthMm: typedLengthMmSchema,
      heightMm: typedLengthMmSchema,
      cornerRadiusMm: typedLengthMmSchema.default(0),
    }),
  ]),
  /** How far the cup reaches into the air behind the panel. */
  insideDepthMm: typedLengthMmSchema,
  /** The maker's figure; null = cut-out times inside depth. */
  displacementLitres: litres.nullable().default(null),
  massKg: massKg.default(0),
  /** Walls: across from the centre line, up from the lower edge. Sides: x and y of the side view. Null = low and
   * clear of the braces. */
  at: z
    .strictObject({
      acrossMm: z.number().min(-20_000).max(20_000),
      upMm: z.number().min(-20_000).max(20_000),
    })
    .nullable()
    .default(null),
});
export type TerminalCup = Readonly<z.infer<typeof terminalCupSchema>>;

/** A wall inside, square to the side view or to the width, that makes two chambers: `near` lies between it and the face
 * that it stands parallel to, `far` behind it. */
export const dividerSchema = z.strictObject({
  parallelTo: boxFaceSchema,
  /** Clear air between that face's innermost wood and the divider. */
  clearMm: typedLengthMmSchema,
  /** Where the drivers sit. Those in a divider are cut into its side away from `magnets`. */
  drivers: z.enum(['baffle', 'divider']).default('baffle'),
  /** Chamber behind the cones. */
  magnets: z.enum(['near', 'far']).default('far'),
});
export type Divider = Readonly<z.infer<typeof dividerSchema>>;

export const boxDesignSchema = z.strictObject({
  shape: boxShapeSchema,
  stock: z.strictObject({
    carcass: panelStockSchema,
    /** Baffle and its doublers; null = as the carcass. */
    baffle: panelStockSchema.nullable().default(null),
    /** Null = as the carcass. */
    brace: panelStockSchema.nullable().default(null),
  }),
  joints: buttJointsSchema.prefault({}),
  baffle: z.strictObject({
    face: z.enum(['front', 'back', 'top', 'slope-1']),
    /** Extra layers: `inside` takes air, `outside` adds depth to the box. */
    doubler: z
      .strictObject({ at: z.enum(['inside', 'outside']), layers: z.int().min(1).max(3) })
      .nullable()
      .default(null),
    /** How far the baffle stands back behind the edges round it, within the outside; 0 = flush. */
    setBackMm: typedLengthMmSchema.default(0),
  }),
  finish: finishSchema.prefault({}),
  drivers: mountedDriversSchema.nullable().default(null),
  /** Cut-out = the driver's figure + this, 1 to 2 mm. */
  cutoutClearanceMm: typedLengthMmSchema.default(1.5),
  /** A grille's inner face in front of the baffle's finished face; null = no grille. */
  grilleStandOffMm: typedLengthMmSchema.nullable().default(null),
  bracing: bracingSchema.prefault({ kind: 'suggested' }),
  cornerBlocks: cornerBlocksSchema.nullable().default(null),
  terminalCup: terminalCupSchema.nullable().default(null),
  /** Designs were kept with `port: null` before boxes had any. */
  port: z.null().optional(),
  ports: z.array(boxPortSchema).max(6).default([]),
  /** Outer edges rounded after assembly: round both sides, across the box, or all; null = sharp. */
  roundOver: z
    .strictObject({ radiusMm: typedLengthMmSchema, edges: z.enum(['sides', 'across', 'all']).default('all') })
    .nullable()
    .default(null),
  /** Null = one chamber. */
  divider: dividerSchema.nullable().default(null),
  /** Anything else that stands in the air: an amplifier, a crossover. */
  fittedParts: z
    .array(z.strictObject({ label: z.string().min(1).max(60), litres, massKg }))
    .max(12)
    .default([]),
  sealantLitres: litres.default(0.1),
  /** Fibre acts on the air's stiffness, not as a solid: it is noted, never deducted. */
  lining: z.enum(['none', 'walls', 'filled']).default('none'),
  /** Cut-outs add a little air behind the flange; left out unless somebody asks for it. */
  countCutoutAir: z.boolean().default(false),
  /** What the driver is meant to see; null = no target yet. */
  targetNetLitres: litres.nullable().default(null),
  /** Corner of the low-pass filter: panels should resonate above twice this. */
  lowPassHz: z.number().min(0).max(20_000).default(100),
});
export type BoxDesign = Readonly<z.infer<typeof boxDesignSchema>>;
export type BoxDesignInput = Readonly<z.input<typeof boxDesignSchema>>;

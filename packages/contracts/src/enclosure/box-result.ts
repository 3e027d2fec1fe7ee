// What a box comes to: sizes, air, wood, mass, joints, checks, and the lines to draw it from. Unrounded.
import { z } from 'zod';
import { polygonMmSchema } from '../geometry/index.ts';
import { panelSchema } from '../panel/index.ts';
import { boxFindingSchema } from './box-finding.ts';
import { boxFaceSchema, wallFaceSchema } from './box-shape.ts';

const vectorSchema = z.strictObject({ x: z.number(), y: z.number(), z: z.number() });
/** A direction without unit, or a point of the box in mm where the name says so. */
export type Vector = Readonly<z.infer<typeof vectorSchema>>;

/** Where a panel lies: box point = originMm + u xAxis + v yAxis + w normal, right-handed; normal points outward
 * (doublers too; braces toward the left), so the outer face is w = 0 and the inner is w = -thickness. */
export const placementSchema = z.strictObject({
  originMm: vectorSchema,
  xAxis: vectorSchema,
  yAxis: vectorSchema,
  normal: vectorSchema,
});
export type Placement = Readonly<z.infer<typeof placementSchema>>;

/**
 * A panel as a body. Its `Panel` (same `panelId`) is drawn as seen from outside: u to the right, v up. Corner i of one
 * face lies behind corner i of the other: the body is what straight edges between them enclose, less the panel's
 * holes and rabbets.
 */
export const panelBodySchema = z.strictObject({
  panelId: z.string(),
  mark: z.string(),
  role: z.enum(['wall', 'baffle', 'side', 'doubler', 'brace', 'port', 'divider']),
  face: boxFaceSchema.nullable(),
  placement: placementSchema,
  thicknessMm: z.number(),
  outerFace: polygonMmSchema,
  innerFace: polygonMmSchema,
  /**
   * For each edge of the panel's outline, the face that reaches it. Where two opposite edges lean the same way
   * neither face is the larger, and the outline is the rectangle round both.
   */
  edgeLeans: z.array(z.enum(['square', 'outer', 'inner'])),
  /** Cut of the body in the side view; null for sides and braces, which lie in its plane. */
  section: polygonMmSchema.nullable(),
});
export type PanelBody = Readonly<z.infer<typeof panelBodySchema>>;

const sizeSchema = z.strictObject({ depthMm: z.number(), heightMm: z.number(), widthMm: z.number() });
export type BoxSize = Readonly<z.infer<typeof sizeSchema>>;

export const deductionSchema = z.strictObject({
  code: z.enum([
    'driver',
    'port',
    'brace',
    'divider',
    'corner-block',
    'inside-doubler',
    'terminal-cup',
    'fitted-part',
    'sealant',
    'cutout-air',
  ]),
  /** The maker's or the shop's own name for it; null where the code says it all. */
  label: z.string().nullable(),
  count: z.int(),
  /** All of them together; negative where it gives air back. */
  litres: z.number(),
  source: z.enum(['maker', 'typed', 'computed', 'missing']),
});
export type Deduction = Readonly<z.infer<typeof deductionSchema>>;

const chamberSchema = z.strictObject({
  place: z.enum(['near', 'far']),
  /** Between walls, inside doublers and divider, before anything else stands in it. */
  airLitres: z.number(),
  /** What stands in it; parts without a place stand in the far one, sealant goes by air. */
  deductions: z.array(deductionSchema),
  netLitres: z.number(),
});
export type Chamber = Readonly<z.infer<typeof chamberSchema>>;

const volumesSchema = z.strictObject({
  /** Carcass and outside doublers as one body. = shell + gross + mouths of slots + recess. */
  outsideLitres: z.number(),
  /** Walls, sides and outside doublers before any hole is cut; mouths of slots are no wood. */
  shellLitres: z.number(),
  /** Air of the bare carcass. */
  grossLitres: z.number(),
  deductions: z.array(deductionSchema),
  deductedLitres: z.number(),
  netLitres: z.number(),
  targetNetLitres: z.number().nullable(),
  /** Net less target; null without a target. */
  overTargetLitres: z.number().nullable(),
  /** Air in the cut-outs behind the flange: in the net only where the design asks for it. */
  cutoutAirLitres: z.number(),
  /** Open air in front of a baffle that is set back, within the outside. Left out where it is flush. */
  recessLitres: z.number().optional(),
  /** Wood that rounding the outer edges takes off; panels and outside are before it. Left out where all are sharp. */
  roundedOffLitres: z.number().optional(),
});

const placedDriverSchema = z.strictObject({
  number: z.int(),
  zMm: z.number(),
  upMm: z.number(),
  /** Centre of the seat (underside of the flange), mm. */
  seatMm: vectorSchema,
  /** Out of the box, along the driver. */
  axis: vectorSchema,
  cutoutDiaMm: z.number(),
  recessDiaMm: z.number().nullable(),
  recessDepthMm: z.number().nullable(),
  /** How far the flange stands in front of the finished face; not in the box's finished size. */
  proudMm: z.number(),
  /** Stand-off that a grille needs from the finished face; null where the driver's travel is not stated. */
  grilleRoomMm: z.number().nullable(),
  /** Seat to the nearest wall along the axis, measured at the magnet's edge. */
  depthAtMagnetEdgeMm: z.number(),
  neededDepthMm: z.number(),
  /** Cut of the driver's hull in the side view. */
  section: polygonMmSchema,
});
export type PlacedDriver = Readonly<z.infer<typeof placedDriverSchema>>;

const placedPortSchema = z.strictObject({
  /** From 1, in the order of the design. */
  number: z.int(),
  kind: z.enum(['tube', 'slot']),
  face: boxFaceSchema,
  count: z.int(),
  /** Clear cross-section of all of them, between flares. */
  openAreaCm2: z.number(),
  /** As built, along the middle, from the outermost wood. */
  lengthMm: z.number(),
  bends: z.int(),
  /** Air in all of them, from the outermost wood to the inner end; what flares add is left out. */
  airLitres: z.number(),
  /** Of the shell's wood, what is left out for the mouth of a slot; tubes go through holes. */
  mouthLitres: z.number(),
  /** What all of them take from the air inside, walls included. */
  displacedLitres: z.number(),
  /** Middle of the first, from the outermost wood to the inner end. */
  centreLineMm: z.array(vectorSchema),
  /** From the inner end to the wood across from it, and what is wanted there. */
  endRoomMm: z.number(),
  neededRoomMm: z.number(),
  /** Channel of a slot along a wall, cut in the side view; null for the others. */
  section: polygonMmSchema.nullable(),
});
export type PlacedPort = Readonly<z.infer<typeof placedPortSchema>>;

const panelModeSchema = z.strictObject({
  panelId: z.string(),
  mark: z.string(),
  acrossMm: z.number(),
  upMm: z.number(),
  thicknessMm: z.number(),
  firstModeHz: z.number(),
  targetHz: z.number(),
  bracesNeeded: z.int().nullable(),
  thicknessNeededMm: z.number().nullable(),
});
export type PanelMode = Readonly<z.infer<typeof panelModeSchema>>;

const seamSchema = z.strictObject({
  between: z.tuple([boxFaceSchema, boxFaceSchema]),
  /** Length along the inside corner. */
  lengthMm: z.number(),
  screws: z.int(),
});
export type Seam = Readonly<z.infer<typeof seamSchema>>;

const cornerBlockSchema = z.strictObject({
  between: z.tuple([boxFaceSchema, boxFaceSchema]),
  legMm: z.number(),
  /** The angle between its legs. */
  angleRad: z.number(),
  lengthMm: z.number(),
  pieces: z.int(),
  /** All its pieces together. */
  litres: z.number(),
  massKg: z.number(),
});
export type CornerBlock = Readonly<z.infer<typeof cornerBlockSchema>>;

const massSchema = z.strictObject({
  panelsKg: z.number(),
  cornerBlocksKg: z.number(),
  partsKg: z.number(),
  driversKg: z.number(),
  emptyKg: z.number(),
  withDriversKg: z.number(),
  /** Centre of gravity, mm in the box's own frame. Finish, glue and screws are not in it. */
  emptyCentreMm: vectorSchema,
  withDriversCentreMm: vectorSchema,
});
export type BoxMass = Readonly<z.infer<typeof massSchema>>;

const rectangleSchema = z.strictObject({
  xMinMm: z.number(),
  xMaxMm: z.number(),
  zMinMm: z.number(),
  zMaxMm: z.number(),
});

export const boxResultSchema = z.strictObject({
  sizes: z.strictObject({
    /** As typed. */
    carcass: sizeSchema,
    /** With outside doublers. */
    wood: sizeSchema,
    /** With the finish: what must pass the opening. */
    finished: sizeSchema,
  }),
  volumes: volumesSchema,
  panels: z.array(panelSchema),
  bodies: z.array(panelBodySchema),
  cornerBlocks: z.array(cornerBlockSchema),
  drivers: z.array(placedDriverSchema),
  /** Near, then far; left out where the box has one chamber. Their nets add up to the box's. */
  chambers: z.array(chamberSchema).optional(),
  /** Left out where there are none. */
  ports: z.array(placedPortSchema).optional(),
  braces: z.strictObject({
    zMm: z.array(z.number()),
    /** Wood kept of each frame, as built. */
    solidFraction: z.number(),
  }),
  modes: z.array(panelModeSchema),
  mass: massSchema,
  /** Outer wood to be finished, and what openings take from it. */
  finishAreas: z.array(z.strictObject({ face: boxFaceSchema, areaM2: z.number(), openingsM2: z.number() })),
  joints: z.strictObject({
    seams: z.array(seamSchema),
    /** Inside seams of the shell: what is glued, and sealed by a fillet. */
    shellSeamMm: z.number(),
    /** Seams of braces against walls: glued. */
    braceSeamMm: z.number(),
    /** Seams of the panels that make ports; left out where there are none. */
    portSeamMm: z.number().optional(),
    /** The divider's seams, glued and sealed; left out where there is none. */
    dividerSeamMm: z.number().optional(),
    /** Faces glued together in doublers, each layer once. */
    laminatedM2: z.number(),
    screws: z.int(),
  }),
  /** Side view, counter-clockwise; wall by wall in the order of `walls`. */
  section: z.strictObject({
    walls: z.array(wallFaceSchema),
    carcass: polygonMmSchema,
    wood: polygonMmSchema,
    finished: polygonMmSchema,
    inner: polygonMmSchema,
    /** Inner less inside doublers: the outline of a brace. */
    free: polygonMmSchema,
  }),
  plan: z.strictObject({ wood: rectangleSchema, inner: rectangleSchema }),
  /** Outer faces of the wood, counter-clockwise from outside. */
  faces: z.array(z.strictObject({ face: boxFaceSchema, cornersMm: z.array(vectorSchema) })),
  findings: z.array(boxFindingSchema),
});
export type BoxResult = Readonly<z.infer<typeof boxResultSchema>>;

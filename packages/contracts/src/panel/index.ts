// One flat panel as the saw must make it: what the enclosure engine hands to cutting.
import { z } from 'zod';
import { polygonMmSchema } from '../geometry/index.ts';

const lengthMm = z.number().positive().max(5_000);

/** One edge of a panel's larger face, from corner i to corner i + 1 of its outline. */
export const panelEdgeSchema = z.strictObject({
  /** Bevel from square, radians: 0 = square cut; positive = the face that reaches the outline here overhangs the
   * other. That is the larger face, except where two opposite bevels lean the same way. */
  bevelRad: z.number().min(0).max(1.5),
  joint: z.enum(['free', 'butt', 'rabbet', 'dado', 'mitre']),
  /** True where this panel runs past its neighbour at a butt joint, so its edge is seen. */
  runsThrough: z.boolean(),
  /** Step cut into the inner face along this edge, for the end of the other panel; left out where there is none. */
  rabbet: z.strictObject({ widthMm: lengthMm, depthMm: lengthMm }).optional(),
});
export type PanelEdge = Readonly<z.infer<typeof panelEdgeSchema>>;

export const panelHoleSchema = z.discriminatedUnion('shape', [
  z.strictObject({
    shape: z.literal('circle'),
    purpose: z.string().max(60),
    centreXMm: z.number(),
    centreYMm: z.number(),
    diameterMm: lengthMm,
    /** Null = right through. */
    depthMm: z.number().positive().max(100).nullable(),
  }),
  z.strictObject({
    shape: z.literal('rectangle'),
    purpose: z.string().max(60),
    centreXMm: z.number(),
    centreYMm: z.number(),
    widthMm: lengthMm,
    heightMm: lengthMm,
    cornerRadiusMm: z.number().min(0).max(500),
    depthMm: z.number().positive().max(100).nullable(),
  }),
]);
export type PanelHole = Readonly<z.infer<typeof panelHoleSchema>>;

export const panelSchema = z.strictObject({
  id: z.string().min(1).max(60),
  /** Short mark that stands on the label and on the drawing: A, B, C1. */
  mark: z.string().min(1).max(8),
  /** In the shop's words: `Baffle`, `Left side`. */
  name: z.string().min(1).max(60),
  /** Which sheet material it is cut from: the id of the sheet goods record. */
  materialId: z.string().min(1).max(60),
  thicknessMm: z.number().positive().max(100),
  /** Size of the rectangle round the larger face; length lies along the outline's x axis. */
  lengthMm,
  widthMm: lengthMm,
  /** Corners of the larger face, counter-clockwise, within (0, 0)-(lengthMm, widthMm). Where two opposite bevels lean
   * the same way neither face is larger: then it is the rectangle round both, which is the blank to cut. */
  outline: polygonMmSchema,
  /** Radius that the router cuts at each corner of the outline, same order; left out where all are sharp. A disc is a
   * square with half its side at every corner. */
  cornerRadiiMm: z.array(z.number().min(0).max(2_500)).optional(),
  /** One entry per outline edge, in the same order. */
  edges: z.array(panelEdgeSchema).min(3),
  holes: z.array(panelHoleSchema).max(60),
  /** Which side must lie along the sheet's grain; none = may turn. */
  grain: z.enum(['length', 'width', 'none']),
  quantity: z.number().int().min(1).max(400),
  /** Finished solid volume of one panel, bevels and holes counted, cubic millimetres. */
  solidMm3: z.number().nonnegative(),
  massKg: z.number().nonnegative(),
});
export type Panel = Readonly<z.infer<typeof panelSchema>>;

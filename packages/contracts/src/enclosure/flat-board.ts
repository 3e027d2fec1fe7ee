// A flat board besides the box: equipment board, cover, false floor, adapter ring, a pod's base ring. Board plane as
// seen from the face that shows: x right, y up, origin at the lower left corner of the outline's bounding box. Mm, kg.
import { z } from 'zod';
import { pointMmSchema, polygonMmSchema } from '../geometry/index.ts';
import { panelHoleSchema, panelSchema } from '../panel/index.ts';
import { panelStockSchema } from './box-design.ts';
import { typedLengthMmSchema } from './box-shape.ts';

const sizeMm = z.number().positive().max(5_000);

export const flatBoardKindSchema = z.enum([
  'equipment-board',
  'cover',
  'false-floor',
  'adapter-ring',
  'pod-base-ring',
]);
export type FlatBoardKind = z.infer<typeof flatBoardKindSchema>;

export const boardOutlineSchema = z.discriminatedUnion('shape', [
  z.strictObject({
    shape: z.literal('rectangle'),
    widthMm: sizeMm,
    heightMm: sizeMm,
    cornerRadiusMm: typedLengthMmSchema.default(0),
  }),
  z.strictObject({ shape: z.literal('circle'), diameterMm: sizeMm }),
  /** Free corners, either way round; the radius is cut at outer corners, hollow ones stay sharp. */
  z.strictObject({
    shape: z.literal('polygon'),
    corners: polygonMmSchema,
    cornerRadiusMm: typedLengthMmSchema.default(0),
  }),
]);
export type BoardOutline = Readonly<z.infer<typeof boardOutlineSchema>>;

/** A device on the board, by the rectangle that it covers. */
export const boardDeviceSchema = z.strictObject({
  id: z.string().min(1).max(60),
  name: z.string().min(1).max(60),
  centre: pointMmSchema,
  widthMm: sizeMm,
  heightMm: sizeMm,
  massKg: z.number().min(0).max(1_000).default(0),
  /** Air kept free on all sides, the maker's figure first; 25 mm is the shop's usual one. */
  airMm: typedLengthMmSchema.default(25),
  /** Where plugs or controls are reached, and the room that a hand needs there. */
  access: z
    .strictObject({ side: z.enum(['left', 'right', 'top', 'bottom']), roomMm: typedLengthMmSchema })
    .nullable()
    .default(null),
});
export type BoardDevice = Readonly<z.infer<typeof boardDeviceSchema>>;

export const flatBoardDesignSchema = z.strictObject({
  kind: flatBoardKindSchema,
  id: z.string().min(1).max(60),
  name: z.string().min(1).max(60),
  mark: z.string().min(1).max(8),
  stock: panelStockSchema,
  /** Alike boards glued face to face into one. */
  layers: z.int().min(1).max(12).default(1),
  outline: boardOutlineSchema,
  /** Openings for air, fingers, drivers; cut through every layer unless they have a depth. */
  openings: z.array(panelHoleSchema).max(30).default([]),
  /** Screw or bolt holes one by one, through every layer. */
  fixings: z
    .array(z.strictObject({ at: pointMmSchema, holeDiaMm: sizeMm }))
    .max(60)
    .default([]),
  boltCircles: z
    .array(
      z.strictObject({
        centre: pointMmSchema,
        diameterMm: sizeMm,
        count: z.int().min(1).max(36),
        holeDiaMm: sizeMm,
        /** Direction of the first hole from the centre, counter-clockwise from x. */
        startRad: z.number().min(-10).max(10).default(0),
      }),
    )
    .max(6)
    .default([]),
  devices: z.array(boardDeviceSchema).max(24).default([]),
});
export type FlatBoardDesign = Readonly<z.infer<typeof flatBoardDesignSchema>>;
export type FlatBoardDesignInput = z.input<typeof flatBoardDesignSchema>;

/** What is wrong with a board, where it can be seen. `got` and `wanted` are in mm; below 0 is off the board. */
export const flatBoardFindingSchema = z.strictObject({
  code: z.enum([
    'hole-off-board',
    'hole-near-edge',
    'holes-meet',
    'device-off-board',
    'devices-too-near',
    'access-blocked',
    'device-over-opening',
  ]),
  /** Purposes of the holes or ids of the devices that it is about. */
  about: z.array(z.string()),
  gotMm: z.number(),
  wantedMm: z.number(),
  atMm: pointMmSchema,
});
export type FlatBoardFinding = Readonly<z.infer<typeof flatBoardFindingSchema>>;

export const flatBoardResultSchema = z.strictObject({
  /** One panel, `quantity` = layers. Partly deep openings are in the first layer's own panel. */
  panels: z.array(panelSchema).min(1),
  /** One face with its openings cut out, square millimetres. */
  faceAreaMm2: z.number(),
  thicknessMm: z.number(),
  boardKg: z.number(),
  withDevicesKg: z.number(),
  /** Where it balances in the board's plane, devices included. */
  centreMm: pointMmSchema,
  fixingCount: z.int(),
  findings: z.array(flatBoardFindingSchema),
});
export type FlatBoardResult = Readonly<z.infer<typeof flatBoardResultSchema>>;

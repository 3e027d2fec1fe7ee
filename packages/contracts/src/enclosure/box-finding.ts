// What a box design runs into. An answer, never a refusal: the numbers are here, the sentence is the screen's.
import { z } from 'zod';
import { pointMmSchema } from '../geometry/index.ts';
import { boxFaceSchema } from './box-shape.ts';

const mm = z.number();
const driverNumber = z.int().min(1);
const portNumber = z.int().min(1);
const panelRef = { panelId: z.string(), mark: z.string() };

export const boxFindingSchema = z.discriminatedUnion('code', [
  /** The magnet's rear edge, or the frame's, lies in a wall by `byMm`. `at` is where, in the side view. */
  z.strictObject({
    code: z.literal('driver-meets-wall'),
    part: z.enum(['magnet', 'frame']),
    driver: driverNumber,
    face: boxFaceSchema,
    edge: z.enum(['lower', 'upper', 'left', 'right']),
    byMm: mm,
    at: pointMmSchema,
  }),
  /** Room behind the magnet's edge, along the driver's axis, short of what the vent or the cooling needs. */
  z.strictObject({
    code: z.literal('magnet-room-short'),
    driver: driverNumber,
    face: boxFaceSchema,
    edge: z.enum(['lower', 'upper']),
    vented: z.boolean(),
    roomMm: mm,
    neededMm: mm,
    byMm: mm,
    at: pointMmSchema,
  }),
  z.strictObject({
    code: z.literal('side-vent-room-short'),
    driver: driverNumber,
    face: boxFaceSchema,
    roomMm: mm,
    neededMm: mm,
    byMm: mm,
  }),
  /** `flange`: larger than the face it lies on. `cut-out`: larger than the inside behind it. */
  z.strictObject({
    code: z.literal('driver-larger-than-baffle'),
    measure: z.enum(['flange', 'cut-out']),
    direction: z.enum(['up', 'across']),
    neededMm: mm,
    haveMm: mm,
    byMm: mm,
  }),
  z.strictObject({
    code: z.literal('magnet-larger-than-cutout'),
    magnetDiaMm: mm,
    cutoutDiaMm: mm,
    byMm: mm,
  }),
  /** From the recess (flush) or flange (surface) to the edge of the box face. */
  z.strictObject({
    code: z.literal('driver-near-edge'),
    driver: driverNumber,
    edge: z.enum(['lower', 'upper', 'left', 'right']),
    distanceMm: mm,
    neededMm: mm,
    byMm: mm,
  }),
  z.strictObject({
    code: z.literal('drivers-close'),
    drivers: z.tuple([driverNumber, driverNumber]),
    gapMm: mm,
    neededMm: mm,
    byMm: mm,
  }),
  z.strictObject({ code: z.literal('recess-thin'), leftMm: mm, neededMm: mm, byMm: mm }),
  /** From the bolt circle to the cut-out's edge there is less than the T-nut's flange, or the fixing's hole with
   * wood round it, needs: trim the flange, use an insert, or a plywood ring. */
  z.strictObject({
    code: z.literal('fixing-at-cutout'),
    fixing: z.enum(['screw', 't-nut', 'insert']),
    roomMm: mm,
    neededMm: mm,
    byMm: mm,
  }),
  z.strictObject({ code: z.literal('grille-close'), standOffMm: mm, neededMm: mm, byMm: mm }),
  z.strictObject({ code: z.literal('driver-displacement-missing'), count: z.int() }),
  z.strictObject({ code: z.literal('driver-mass-missing'), count: z.int() }),
  /** An opening runs off its panel, so it is left off the panel's list of holes. */
  z.strictObject({ code: z.literal('opening-off-panel'), ...panelRef, purpose: z.string(), byMm: mm }),
  /** An opening runs into one that is already cut, so it too is left off. */
  z.strictObject({
    code: z.literal('openings-meet'),
    ...panelRef,
    purpose: z.string(),
    other: z.string(),
    byMm: mm,
  }),
  z.strictObject({ code: z.literal('brace-meets-driver'), ...panelRef, driver: driverNumber, byMm: mm }),
  z.strictObject({ code: z.literal('brace-meets-terminal'), ...panelRef, byMm: mm }),
  z.strictObject({ code: z.literal('terminal-meets-driver'), driver: driverNumber, byMm: mm }),
  /** Frame or magnet of a driver on the baffle lies in the divider. */
  z.strictObject({ code: z.literal('driver-meets-divider'), driver: driverNumber, byMm: mm }),
  /** Room between a magnet and the divider behind it. */
  z.strictObject({
    code: z.literal('divider-close'),
    driver: driverNumber,
    roomMm: mm,
    neededMm: mm,
    byMm: mm,
  }),
  z.strictObject({ code: z.literal('port-meets-divider'), port: portNumber, byMm: mm }),
  z.strictObject({ code: z.literal('terminal-meets-divider'), byMm: mm }),
  /** It finds no room, however often it may turn: it is drawn as long as there is room for. */
  z.strictObject({ code: z.literal('port-too-long'), port: portNumber, lengthMm: mm, roomMm: mm, byMm: mm }),
  /** Between the longest straight channel and the shortest bent one: it is built as one of them. */
  z.strictObject({
    code: z.literal('port-length-off'),
    port: portNumber,
    askedMm: mm,
    builtMm: mm,
    byMm: mm,
  }),
  /** Room before the inner end short of the smaller side of the channel, or of the diameter. */
  z.strictObject({
    code: z.literal('port-end-close'),
    port: portNumber,
    roomMm: mm,
    neededMm: mm,
    byMm: mm,
  }),
  z.strictObject({ code: z.literal('port-meets-brace'), port: portNumber, ...panelRef, byMm: mm }),
  z.strictObject({ code: z.literal('port-meets-driver'), port: portNumber, driver: driverNumber, byMm: mm }),
  z.strictObject({ code: z.literal('port-meets-wall'), port: portNumber, face: boxFaceSchema, byMm: mm }),
  z.strictObject({ code: z.literal('ports-meet'), ports: z.tuple([portNumber, portNumber]), byMm: mm }),
  /** The windows cannot be as large as asked: more wood stays, and the net volume knows it. */
  z.strictObject({
    code: z.literal('brace-window-small'),
    solidFraction: z.number(),
    wantedFraction: z.number(),
  }),
  z.strictObject({ code: z.literal('no-room-for-braces'), firstModeHz: z.number(), targetHz: z.number() }),
  z.strictObject({
    code: z.literal('panel-mode-low'),
    ...panelRef,
    firstModeHz: z.number(),
    targetHz: z.number(),
    /** Window braces that would do, evenly set; null where they don't divide this panel. */
    bracesNeeded: z.int().nullable(),
    thicknessNeededMm: mm,
  }),
  /** Beyond the tilt of an ordinary saw. */
  z.strictObject({ code: z.literal('bevel-steep'), ...panelRef, bevelRad: z.number(), limitRad: z.number() }),
  z.strictObject({
    code: z.literal('two-person-lift'),
    emptyKg: z.number(),
    withDriversKg: z.number(),
    limitKg: z.number(),
    /** True where the box alone is over the limit, so fitting the drivers after it is in does not help. */
    emptyIsHeavy: z.boolean(),
    /** True where two people would each carry more than the limit, even before the drivers are in. */
    hoist: z.boolean(),
  }),
  z.strictObject({ code: z.literal('cutout-air-left-out'), litres: z.number(), percentOfNet: z.number() }),
  z.strictObject({ code: z.literal('lining-not-deducted'), lining: z.enum(['walls', 'filled']) }),
  z.strictObject({ code: z.literal('net-off-target'), overLitres: z.number(), percent: z.number() }),
]);
export type BoxFinding = Readonly<z.infer<typeof boxFindingSchema>>;
export type BoxFindingCode = BoxFinding['code'];

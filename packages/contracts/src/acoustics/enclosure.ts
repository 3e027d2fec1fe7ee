// The acoustic side of a system: chambers, ports, passive radiators, and how they stand round the drivers.
import { z } from 'zod';
import type { DeepReadonly } from './deep-readonly.ts';
import { CHAMBER_RANGES, LOSS_Q, PORT_RANGES, RADIATOR_RANGES } from './ranges.ts';

const lossQ = LOSS_Q.nullable();

/** Air behind or in front of the drivers. */
export const chamberSchema = z.strictObject({
  /** Air left after drivers, ports and braces. */
  netLitres: CHAMBER_RANGES.netLitres,
  /** Apparent growth by fibre: 1 unlined, to about 1.25 well filled, 1.4 the limit. */
  fillFactor: CHAMBER_RANGES.fillFactor.default(1),
  /** Q of the leaks; null = tight. */
  ql: lossQ.default(null),
  /** Q of the absorption; null = none. */
  qa: lossQ.default(null),
});
export type Chamber = DeepReadonly<z.infer<typeof chamberSchema>>;

/** One end of a port. */
export const portEndSchema = z.strictObject({
  /** `flanged`: ends flush in a panel. `free`: ends in the open air of the chamber. */
  kind: z.enum(['flanged', 'free']),
  /** Walls that run on past this end, flush with the opening. */
  walls: z.literal([0, 1, 2], { error: '0, 1 or 2 walls' }).default(0),
  /** Quarter-circle flare, round ports only; 0 = sharp. */
  flareRadiusMm: PORT_RANGES.flareRadiusMm.default(0),
});
export type PortEnd = DeepReadonly<z.infer<typeof portEndSchema>>;

export const portMouthSchema = z.discriminatedUnion('shape', [
  z.strictObject({ shape: z.literal('round'), diameterMm: PORT_RANGES.diameterMm }),
  z.strictObject({
    shape: z.literal('rectangular'),
    widthMm: PORT_RANGES.slotSideMm,
    heightMm: PORT_RANGES.slotSideMm,
  }),
]);
export type PortMouth = DeepReadonly<z.infer<typeof portMouthSchema>>;

/** Either the length that is built or the tuning that is wanted; the other one follows. */
export const portSizingSchema = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('length'), lengthMm: PORT_RANGES.lengthMm }),
  z.strictObject({ by: z.literal('tuning'), tuningHz: PORT_RANGES.tuningHz }),
]);
export type PortSizing = DeepReadonly<z.infer<typeof portSizingSchema>>;

/** Ports alike that share one chamber. */
export const portSchema = z.strictObject({
  mouth: portMouthSchema,
  count: PORT_RANGES.count.default(1),
  outerEnd: portEndSchema,
  innerEnd: portEndSchema,
  sizing: portSizingSchema,
  /** Q of the flow losses; null = none. */
  qp: lossQ.default(null),
});
export type Port = DeepReadonly<z.infer<typeof portSchema>>;

/** Passive radiators alike that share one chamber. */
export const passiveRadiatorSchema = z.strictObject({
  count: RADIATOR_RANGES.count,
  fsHz: RADIATOR_RANGES.fsHz,
  qms: RADIATOR_RANGES.qms,
  vasLitres: RADIATOR_RANGES.vasLitres,
  sdCm2: RADIATOR_RANGES.sdCm2,
  addedMassGrams: RADIATOR_RANGES.addedMassGrams,
  /** Peak travel one way; null = not stated. */
  xmaxMm: RADIATOR_RANGES.xmaxMm.nullable(),
});
export type PassiveRadiator = DeepReadonly<z.infer<typeof passiveRadiatorSchema>>;

export const enclosureSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('infinite-baffle') }),
  z.strictObject({ kind: z.literal('closed'), chamber: chamberSchema }),
  z.strictObject({ kind: z.literal('vented'), chamber: chamberSchema, port: portSchema }),
  z.strictObject({
    kind: z.literal('passive-radiator'),
    chamber: chamberSchema,
    radiator: passiveRadiatorSchema,
  }),
  z.strictObject({
    kind: z.literal('single-tuned-bandpass'),
    rear: chamberSchema,
    front: chamberSchema,
    frontPort: portSchema,
  }),
  z.strictObject({
    kind: z.literal('dual-tuned-bandpass'),
    rear: chamberSchema,
    rearPort: portSchema,
    front: chamberSchema,
    frontPort: portSchema,
  }),
]);
export type Enclosure = DeepReadonly<z.infer<typeof enclosureSchema>>;

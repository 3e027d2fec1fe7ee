// The acoustic side of a system: chambers, ports, passive radiators, and how they stand round the drivers.
import { z } from 'zod';
import type { DeepReadonly } from './deep-readonly.ts';
import { quantity, wholeNumber } from './quantity.ts';

const lossQ = quantity(1, 100_000, '').nullable();

/** Air behind or in front of the drivers. */
export const chamberSchema = z.strictObject({
  /** Air left after drivers, ports and braces. */
  netLitres: quantity(0.05, 20_000, 'L'),
  /** Apparent growth by fibre: 1 unlined, to about 1.25 well filled, 1.4 the limit. */
  fillFactor: quantity(1, 1.4, '').default(1),
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
  flareRadiusMm: quantity(0, 500, 'mm').default(0),
});
export type PortEnd = DeepReadonly<z.infer<typeof portEndSchema>>;

export const portMouthSchema = z.discriminatedUnion('shape', [
  z.strictObject({ shape: z.literal('round'), diameterMm: quantity(5, 1_000, 'mm') }),
  z.strictObject({
    shape: z.literal('rectangular'),
    widthMm: quantity(5, 3_000, 'mm'),
    heightMm: quantity(5, 3_000, 'mm'),
  }),
]);
export type PortMouth = DeepReadonly<z.infer<typeof portMouthSchema>>;

/** Either the length that is built or the tuning that is wanted; the other one follows. */
export const portSizingSchema = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('length'), lengthMm: quantity(1, 5_000, 'mm') }),
  z.strictObject({ by: z.literal('tuning'), tuningHz: quantity(5, 500, 'Hz') }),
]);
export type PortSizing = DeepReadonly<z.infer<typeof portSizingSchema>>;

/** Ports alike that share one chamber. */
export const portSchema = z.strictObject({
  mouth: portMouthSchema,
  count: wholeNumber(1, 50).default(1),
  outerEnd: portEndSchema,
  innerEnd: portEndSchema,
  sizing: portSizingSchema,
  /** Q of the flow losses; null = none. */
  qp: lossQ.default(null),
});
export type Port = DeepReadonly<z.infer<typeof portSchema>>;

/** Passive radiators alike that share one chamber. */
export const passiveRadiatorSchema = z.strictObject({
  count: wholeNumber(1, 20),
  fsHz: quantity(1, 500, 'Hz'),
  qms: quantity(0.1, 200, ''),
  vasLitres: quantity(0.01, 5_000, 'L'),
  sdCm2: quantity(1, 20_000, 'cm²'),
  addedMassGrams: quantity(0, 20_000, 'g'),
  /** Peak travel one way; null = not stated. */
  xmaxMm: quantity(0.05, 300, 'mm').nullable(),
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

// Ports for a tuning: which mouths are looked at, the room there is, and what each comes out as.
import { z } from 'zod';
import type { DeepReadonly } from './deep-readonly.ts';
import { designSystemSchema } from './design-system.ts';
import type { Port } from './enclosure.ts';
import { quantity } from './quantity.ts';
import { CHAMBER_RANGES, PORT_RANGES } from './ranges.ts';
import { portRoleSchema } from './result.ts';
import { type SoundFinding, verdictSettingSchema } from './sound-finding.ts';

/** Walls of the box that a slot uses as its own: the fewer panels it brings, the less air it takes. */
export const slotWallsSchema = z.enum(['none', 'one-wall', 'corner', 'full-width']);
export type SlotWalls = z.infer<typeof slotWallsSchema>;

const wallMm = quantity(0, 60, 'mm');

export const portMouthCandidateSchema = z.discriminatedUnion('shape', [
  z.strictObject({
    shape: z.literal('round'),
    /** Inside. */
    diameterMm: PORT_RANGES.diameterMm,
    /** Of the pipe. */
    wallMm: wallMm.default(4),
    count: PORT_RANGES.count.default(1),
    /** Quarter-circle flares; 0 = sharp. What they take beyond the pipe is left out. */
    outerFlareMm: PORT_RANGES.flareRadiusMm.default(0),
    innerFlareMm: PORT_RANGES.flareRadiusMm.default(0),
  }),
  z.strictObject({
    shape: z.literal('slot'),
    widthMm: PORT_RANGES.slotSideMm,
    heightMm: PORT_RANGES.slotSideMm,
    /** Of the panels that make the slot and aren't walls of the box. */
    wallMm: wallMm.default(18),
    count: PORT_RANGES.count.default(1),
    walls: slotWallsSchema.default('full-width'),
  }),
]);
export type PortMouthCandidate = DeepReadonly<z.infer<typeof portMouthCandidateSchema>>;

export const portRoomSchema = z.strictObject({
  /** Inside, from the panel that the port passes through to the wall opposite. */
  straightMm: quantity(10, 20_000, 'mm'),
  /** Inside, square to that, in the plane of a bend; null = not known, so no bend is tried. */
  acrossMm: quantity(10, 20_000, 'mm').nullable().default(null),
  /** Right-angled turns that the shop is willing to build. */
  bendsAllowed: z.literal([0, 1, 2], { error: '0, 1 or 2 bends' }).default(0),
  /** Kept free before the inner end; null = the smaller side of the mouth (usual practice). */
  clearMm: quantity(0, 2_000, 'mm').nullable().default(null),
});
export type PortRoom = DeepReadonly<z.infer<typeof portRoomSchema>>;

export const portTableSchema = z.strictObject({
  /** Vented or bandpass. Tuning, mouth and net volume of the role's own chamber are replaced by those asked for. */
  system: designSystemSchema,
  role: portRoleSchema.default('port'),
  tuningHz: PORT_RANGES.tuningHz,
  /** `net`: held whatever the port takes, the box grows. `before-port`: what there is before the port is put in. */
  air: z.strictObject({ by: z.enum(['net', 'before-port']), litres: CHAMBER_RANGES.netLitres }),
  /** Thickness of the panel that the port passes through. */
  panelMm: wallMm.default(18),
  mouths: z
    .array(portMouthCandidateSchema)
    .min(1, { error: '1 to 60 mouths' })
    .max(60, { error: '1 to 60 mouths' }),
  /** Null = not known: then whether it fits isn't said. */
  room: portRoomSchema.nullable().default(null),
  /** The shop's lines for air speed, and the band in which they count. */
  lines: verdictSettingSchema.prefault({}),
  /** Highest speed of the air that the least area is asked for, peak. */
  mostMps: quantity(1, 100, 'm/s').default(17),
});
export type PortTableInput = DeepReadonly<z.input<typeof portTableSchema>>;
export type PortTableQuestion = DeepReadonly<z.infer<typeof portTableSchema>>;

export type PortFinding =
  | Extract<
      SoundFinding,
      {
        readonly code:
          | 'port-quiet'
          | 'port-needs-rounding'
          | 'port-needs-flares'
          | 'port-chuffs'
          | 'pipe-resonance';
      }
    >
  /** Even at its shortest (flares, or the panel's thickness) the mouth tunes lower than asked. */
  | { readonly code: 'mouth-too-small'; readonly severity: 'over'; readonly highestTuningHz: number }
  /** The longer it gets the more air it takes: the box never comes down to the tuning; null = it leaves no air at all. */
  | { readonly code: 'port-takes-the-air'; readonly severity: 'over'; readonly lowestTuningHz: number | null }
  | { readonly code: 'needs-bends'; readonly severity: 'caution'; readonly bends: 1 | 2 }
  /** `roomMm` of port would fit at most, with the bends that are allowed. */
  | { readonly code: 'too-long'; readonly severity: 'over'; readonly roomMm: number };

export type PortFit = 'straight' | 'one-bend' | 'two-bends' | 'no' | 'not-known';

type BuiltPort = {
  /** Ready for a system: sized by its length. */
  readonly port: Port;
  /** Of the chamber, the port taken off. */
  readonly netLitres: number;
  /** Overall, flares and panel included, along the middle of a bent one. */
  readonly lengthMm: number;
  readonly effectiveLengthMm: number;
  /** Air that the ports take, walls included. */
  readonly displacedLitres: number;
  /** Peak, at the voltage of the system's source, in the band of `lines`. */
  readonly peakSpeedMps: number;
  readonly peakSpeedHz: number;
  /** First resonance of the pipe: c/(2 effective length). */
  readonly pipeResonanceHz: number;
  readonly fit: PortFit;
};

export type PortRow = {
  readonly mouth: PortMouthCandidate;
  /** All ports together, at the throat. */
  readonly openAreaCm2: number;
  /** Null = no such port, and the findings say why. */
  readonly built: BuiltPort | null;
  readonly findings: readonly PortFinding[];
};

/** The open area that keeps the air at `mostMps`: at a given tuning and net volume the flow doesn't depend on it. */
export type LeastPortArea = {
  readonly areaCm2: number;
  /** Inside diameters of that many round ports alike. */
  readonly diametersMm: readonly { readonly count: number; readonly diameterMm: number }[];
  /** Small's S = 0.8 fb Vd (17 m/s at full travel); null where the maker states no travel. */
  readonly bySmallCm2: number | null;
  /** Where the air is fastest. */
  readonly frequencyHz: number;
};

export type PortTable = {
  readonly rows: readonly PortRow[];
  readonly leastArea: LeastPortArea;
};

// Sheet 03, Sound: which drivers, in how large a closed box, with how much power; what that does in this car.
import { z } from 'zod';
import type { DriverParameters, ResponseResult, SoundFinding } from '../acoustics/index.ts';
import { coilWiringSchema } from '../acoustics/index.ts';
import { idSchema, notesSchema } from '../common/index.ts';
import type { DriverFigures } from '../records/index.ts';

/** What was typed stands beside its value. */
const typedSchema = z.string().max(60);

export const FILLS = ['none', 'lined', 'half', 'full'] as const;
/** Apparent growth of the air and absorption Q, by how the box is filled (guidance after Small). */
export const FILL_EFFECT: Record<
  (typeof FILLS)[number],
  { readonly fillFactor: number; readonly qa: number | null }
> = {
  none: { fillFactor: 1, qa: null },
  lined: { fillFactor: 1.04, qa: 50 },
  half: { fillFactor: 1.12, qa: 20 },
  full: { fillFactor: 1.2, qa: 7 },
};
export const FILL_WORDS: Record<(typeof FILLS)[number], string> = {
  none: 'No lining',
  lined: 'Walls lined',
  half: 'Half filled',
  full: 'Well filled',
};

export const soundInputSchema = z.strictObject({
  /** A driver of the catalogue. */
  driverId: idSchema.nullable(),
  count: z.number().int().min(1).max(8),
  /** Strings of how many in series; must divide the count. */
  seriesPerString: z.number().int().min(1).max(8),
  coilWiring: coilWiringSchema,
  /** Power the amplifier gives into this load, watts. */
  drive: z.strictObject({ watts: z.number().min(0.1).max(20_000), typed: typedSchema }).nullable(),
  /** Net air wanted behind the drivers, litres. */
  targetNet: z.strictObject({ litres: z.number().min(0.5).max(2_000), typed: typedSchema }).nullable(),
  fill: z.enum(FILLS),
  /** `estimate`: a shelf from the vehicle's longest inside length; `none`: as if outdoors. */
  cabin: z.enum(['estimate', 'none']),
  notes: notesSchema,
});
export type SoundInput = z.infer<typeof soundInputSchema>;

export type SoundFacts = {
  readonly driver: { readonly id: string; readonly name: string; readonly figures: DriverFigures } | null;
  /** Longest clear length inside the vehicle, m; null = not known. */
  readonly longestCabinM: number | null;
};

export type SoundResult = {
  readonly driverId: string;
  readonly driverName: string;
  readonly count: number;
  readonly parameters: DriverParameters;
  readonly contradictions: readonly {
    readonly field: string;
    readonly given: number;
    readonly implied: number;
    readonly percent: number;
  }[];
  /** What the box sheet aims at. */
  readonly netLitres: number;
  readonly displacementLitres: number;
  readonly driveWatts: number;
  readonly driveVolts: number;
  /** Nominal load that the amplifier sees: direct-current resistance of the whole array. */
  readonly rdcOhm: number;
  readonly qtc: number;
  readonly fcHz: number;
  readonly f3Hz: number;
  readonly peakDb: number;
  readonly alpha: number;
  /** Lowest frequency that is still within 3 dB of the loudest, in the car where a cabin is given. */
  readonly reachesHz: number | null;
  /** Below this the cone runs out of travel at full power; null = it does not, or the travel is not stated. */
  readonly travelBelowHz: number | null;
  /** Loudest level in the low band at this power, dB at one metre (or in the car). */
  readonly loudestDb: number;
  readonly cabinLongestM: number | null;
  readonly curves: ResponseResult;
  readonly findings: readonly SoundFinding[];
};

// Boxes that theory knows for a driver, and what each does best.
import { z } from 'zod';
import { boxSettingSchema } from './box-setting.ts';
import type { DeepReadonly } from './deep-readonly.ts';
import { driverParametersSchema } from './driver.ts';
import { chamberSchema, passiveRadiatorSchema } from './enclosure.ts';
import { quantity } from './quantity.ts';
import { CHAMBER_RANGES, PORT_RANGES } from './ranges.ts';
import { airSchema } from './system.ts';

export const alignmentsSchema = boxSettingSchema.extend({
  driver: driverParametersSchema,
  /** Rises above the flat part, dB, that closed boxes are listed for besides the ones without a rise. */
  closedRisesDb: z
    .array(quantity(0.05, 6, 'dB'))
    .max(4, { error: 'at most 4 rises' })
    .default([0.5, 1]),
});
export type AlignmentsInput = DeepReadonly<z.input<typeof alignmentsSchema>>;

/** What a design must keep to so that a chamber and a port can be made of it. */
export const alignedBoxSchema = z.strictObject({
  netLitres: CHAMBER_RANGES.netLitres,
  tuningHz: PORT_RANGES.tuningHz.nullable(),
});

export type ClosedAlignmentFamily = 'critically-damped' | 'bessel' | 'butterworth' | 'chebyshev';
export type VentedAlignmentFamily =
  | 'bessel'
  | 'butterworth'
  | 'chebyshev'
  | 'sub-chebyshev'
  | 'quasi-third-order'
  | 'twin';

/** What a design does better than the other ones of its kind; the number behind each is in the design. */
export type AlignmentStrength = 'flattest' | 'deepest' | 'gentlest' | 'shortest-ringing' | 'smallest';

type AlignmentFigures = {
  readonly netLitres: number;
  /** Stiffness of the air in the box over that of the suspensions. */
  readonly alpha: number;
  /** -3 dB from the flat part; the lowest decides `deepest`. */
  readonly f3Hz: number;
  /** Rise above the flat part, dB; 0 = none. */
  readonly peakDb: number;
  /** Null = no rise. */
  readonly peakHz: number | null;
  /** Group delay at `f3Hz`. */
  readonly delayAtF3Ms: number;
  /** From a step until its sound stays within a tenth of its start; the least decides `shortest-ringing`. */
  readonly settleMs: number;
  /** Root mean square of the level off the flat part, over two octaves from `f3Hz` up; the least without a rise is `flattest`. */
  readonly unevennessDb: number;
  /** How far the level falls over the octave below `f3Hz`; the least decides `gentlest`. */
  readonly octaveDropDb: number;
  readonly strengths: readonly AlignmentStrength[];
};

export type ClosedAlignment = AlignmentFigures & {
  readonly kind: 'closed';
  readonly family: ClosedAlignmentFamily;
  /** What the books call it: `B2`. */
  readonly textbook: string;
  readonly qtc: number;
};

export type VentedAlignmentDesign = AlignmentFigures & {
  readonly kind: 'vented';
  readonly family: VentedAlignmentFamily;
  /** What the books call it: `QB3`. */
  readonly textbook: string;
  readonly tuningHz: number;
};

export type AlignmentDesign = ClosedAlignment | VentedAlignmentDesign;

/** Why a design that theory knows isn't in the list. */
export type AbsentAlignment = {
  readonly kind: 'closed' | 'vented';
  readonly textbook: string;
  readonly because:
    | { readonly code: 'driver-q-too-high'; readonly qts: number; readonly belowQ: number }
    /** The family has no member for this Q: other drivers have one. */
    | { readonly code: 'no-member-for-q'; readonly qts: number }
    /** The family is one single box, for another driver Q. */
    | { readonly code: 'needs-another-q'; readonly qts: number; readonly needsQ: number }
    /** So close to a listed one that it would be the same box. */
    | { readonly code: 'same-box'; readonly as: string }
    /** Volume or tuning beyond anything that is built. */
    | { readonly code: 'out-of-range'; readonly netLitres: number; readonly tuningHz: number | null };
};

export type Alignments = {
  /** Of the drivers on their source, by which the designs were chosen. */
  readonly qtsInCircuit: number;
  /** Closed before vented, small before large. */
  readonly designs: readonly AlignmentDesign[];
  readonly absent: readonly AbsentAlignment[];
};

export const radiatorTuningSchema = z.strictObject({
  chamber: chamberSchema,
  /** Its added mass is what is asked for; what stands there is not looked at. */
  radiator: passiveRadiatorSchema,
  tuningHz: PORT_RANGES.tuningHz,
  air: airSchema.prefault({}),
});
export type RadiatorTuningInput = DeepReadonly<z.input<typeof radiatorTuningSchema>>;

export type RadiatorTuning = {
  /** To put on each radiator. */
  readonly addedMassGrams: number;
  /** Each radiator's own moving mass, air load included. */
  readonly bareMassGrams: number;
  /** Where the radiators cancel the output. */
  readonly notchHz: number;
  /** Tuning with nothing added: the highest that this box can have. */
  readonly highestTuningHz: number;
  /** Compliance of the radiators over that of the box. */
  readonly delta: number;
  /** The notch stands so close under the tuning that it eats into what is heard. */
  readonly notchNear: boolean;
};

export const symmetricBandpassSchema = boxSettingSchema.extend({
  driver: driverParametersSchema,
  /** Q of the band's edges: 0.7071 is flat, less sags to both sides, more has two humps. */
  shape: quantity(0.4, 1.5, '').default(Math.SQRT1_2),
  /** What fixes the rest: level in the middle of the band beside the driver on a baffle, or the middle itself. */
  by: z.discriminatedUnion('aim', [
    z.strictObject({ aim: z.literal('gain'), gainDb: quantity(-12, 12, 'dB') }),
    z.strictObject({ aim: z.literal('centre'), centreHz: quantity(5, 2_000, 'Hz') }),
  ]),
});
export type SymmetricBandpassInput = DeepReadonly<z.input<typeof symmetricBandpassSchema>>;

export type SymmetricBandpass = {
  readonly rearLitres: number;
  readonly frontLitres: number;
  /** Of the front chamber, and the middle of the band. */
  readonly tuningHz: number;
  /** -3 dB from the middle of the band. */
  readonly lowHz: number;
  readonly highHz: number;
  /** Middle of the band beside the same drivers on a baffle, far above their resonance. */
  readonly gainDb: number;
  /** Humps above the middle, dB; 0 = none. */
  readonly rippleDb: number;
  readonly qtc: number;
};

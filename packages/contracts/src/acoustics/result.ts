// What the acoustics engine answers. Lists run parallel to `frequenciesHz`; null = does not apply to the system.
import { z } from 'zod';
import type { DeepReadonly } from './deep-readonly.ts';

const curve = z.array(z.number());

/** What stops the level from rising further at a frequency. */
export const limitCauseSchema = z.enum([
  'thermal',
  'amplifier-voltage',
  'amplifier-current',
  'excursion',
  'inner-excursion',
  'radiator-excursion',
]);
export type LimitCause = z.infer<typeof limitCauseSchema>;

export const portRoleSchema = z.enum(['port', 'front-port', 'rear-port']);
export type PortRole = z.infer<typeof portRoleSchema>;

export const portFiguresSchema = z.strictObject({
  role: portRoleSchema,
  tuningHz: z.number(),
  /** Overall, flares included; zero or less means that this mouth can't reach the tuning. */
  lengthMm: z.number(),
  /** The air that moves: the pipe and its ends. */
  effectiveLengthMm: z.number(),
  /** All ports together, at the throat. */
  openAreaCm2: z.number(),
  /** False where the length comes out shorter than the flares, or at nothing. */
  buildable: z.boolean(),
});
export type PortFigures = DeepReadonly<z.infer<typeof portFiguresSchema>>;

export const soundFiguresSchema = z.strictObject({
  mmsGrams: z.number(),
  cmsMmPerN: z.number(),
  rmsNsPerM: z.number(),
  /** Of one coil. */
  blTm: z.number(),
  qts: z.number(),
  /** With amplifier and cable resistance. */
  qtsInCircuit: z.number(),
  /** Direct-current load of the array, cable not counted. */
  rdcOhm: z.number(),
  /** Half-space reference efficiency, percent. */
  referenceEfficiencyPercent: z.number(),
  /** Stiffness of the air in the box behind the drivers over that of the suspension. */
  alpha: z.number().nullable(),
  /** Resonance of the drivers on that air, losses left out. */
  fcHz: z.number().nullable(),
  qtc: z.number().nullable(),
  /** The same with leak and absorption, to first order. */
  qtcWithLosses: z.number().nullable(),
  /** -3 dB from the flat part, inductance left out. */
  f3Hz: z.number().nullable(),
  /** Rise above the flat part, dB; 0 = none. */
  peakDb: z.number().nullable(),
  /** Tuning of the port or radiators; of the front chamber in a bandpass box. */
  tuningHz: z.number().nullable(),
  rearTuningHz: z.number().nullable(),
  /** Where a radiator cancels the output: its own resonance with the added mass. */
  radiatorNotchHz: z.number().nullable(),
  ports: z.array(portFiguresSchema),
});
export type SoundFigures = DeepReadonly<z.infer<typeof soundFiguresSchema>>;

/**
 * Drives that levels are compared at: one watt into the direct-current load, the voltage asked for, and all that the
 * coils and the amplifier take.
 */
export const driveSchema = z.strictObject({
  drive: z.enum(['one-watt', 'given', 'full-power']),
  voltageVrms: z.number(),
  /** Above the plotted level; the model is linear, so every level curve moves by it as a whole. */
  aboveDb: z.number(),
});
export type Drive = DeepReadonly<z.infer<typeof driveSchema>>;

export const responseResultSchema = z.strictObject({
  frequenciesHz: curve,
  /** At the listening distance, cabin included where one is given. */
  splDb: curve,
  /** The same without the cabin. */
  splFreeDb: curve,
  /** Of the pressure against the source's voltage before the filters, -π to π; filters and cabin included. */
  phaseRad: curve,
  impedanceOhm: curve,
  /** Inductive is positive. */
  impedancePhaseRad: curve,
  /** Out of the amplifier, after the filters. */
  currentArms: curve,
  /** At the amplifier's terminals: what turns to heat in cable, coils, suspensions and losses of the air. */
  realPowerWatts: curve,
  /** The same terminals, volts times amperes: what the amplifier has to be able to give. */
  apparentPowerVa: curve,
  /** Peak, one way; the outer cone of an isobaric pair. */
  excursionMm: curve,
  innerExcursionMm: curve.nullable(),
  radiatorExcursionMm: curve.nullable(),
  /** Peak at the throat; the front port of a bandpass box. */
  portSpeedMps: curve.nullable(),
  rearPortSpeedMps: curve.nullable(),
  groupDelayMs: curve,
  /** Null where no limit of driver, radiators or amplifier is stated. */
  maxSplDb: curve.nullable(),
  maxSplLimit: z.array(limitCauseSchema).nullable(),
  /** `full-power` is missing where neither the driver's power nor the amplifier's voltage is stated. */
  drives: z.array(driveSchema),
  figures: soundFiguresSchema,
});
export type ResponseResult = DeepReadonly<z.infer<typeof responseResultSchema>>;

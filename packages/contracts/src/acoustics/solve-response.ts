// The public shape of `solve response`. Key names carry their unit in the way that scripts write it. The solve
// door maps it onto the engine's own types.
import { z } from 'zod';
import type { DeepReadonly } from './deep-readonly.ts';
import { coilCountSchema } from './driver.ts';
import { hotCoilEstimateSchema, hotCoilSettingSchema } from './hot-coil.ts';
import {
  AIR_RANGES,
  ARRAY_RANGES,
  CABIN_RANGES,
  CHAMBER_RANGES,
  DISTANCE_M,
  DRIVER_RANGES,
  FILTER_RANGES,
  FREQUENCY_HZ,
  LOSS_Q,
  PORT_RANGES,
  RADIATOR_RANGES,
  SOURCE_RANGES,
} from './ranges.ts';
import { limitCauseSchema, portRoleSchema } from './result.ts';
import { coilWiringSchema, frequenciesHzSchema, UNEVEN_STRINGS } from './system.ts';
import { timeSettingSchema } from './time-response.ts';

const lossQ = LOSS_Q.nullable().default(null);

const chamber = z.strictObject({
  volume_L: CHAMBER_RANGES.netLitres,
  fillFactor: CHAMBER_RANGES.fillFactor.default(1),
  QL: lossQ,
  QA: lossQ,
});

const portEnd = z.strictObject({
  type: z.enum(['flanged', 'free']),
  walls: z.literal([0, 1, 2], { error: '0, 1 or 2' }).default(0),
  flareRadius_mm: PORT_RANGES.flareRadiusMm.default(0),
});

const portCommon = {
  count: PORT_RANGES.count.default(1),
  /** Outer end first. */
  ends: z.tuple([portEnd, portEnd]),
  QP: lossQ,
  tuning_Hz: PORT_RANGES.tuningHz.optional(),
  length_mm: PORT_RANGES.lengthMm.optional(),
};

const port = z
  .discriminatedUnion('shape', [
    z.strictObject({ shape: z.literal('round'), diameter_mm: PORT_RANGES.diameterMm, ...portCommon }),
    z.strictObject({
      shape: z.literal('rect'),
      width_mm: PORT_RANGES.slotSideMm,
      height_mm: PORT_RANGES.slotSideMm,
      ...portCommon,
    }),
  ])
  .refine((it) => (it.tuning_Hz === undefined) !== (it.length_mm === undefined), {
    error: 'exactly one of tuning_Hz and length_mm',
    path: ['tuning_Hz'],
  });

const enclosure = z.discriminatedUnion('type', [
  z.strictObject({ type: z.literal('infinite_baffle') }),
  z.strictObject({ type: z.literal('sealed'), chamber }),
  z.strictObject({ type: z.literal('vented'), chamber, port }),
  z.strictObject({
    type: z.literal('passive_radiator'),
    chamber,
    pr: z.strictObject({
      count: RADIATOR_RANGES.count,
      fs_Hz: RADIATOR_RANGES.fsHz,
      Qms: RADIATOR_RANGES.qms,
      Vas_L: RADIATOR_RANGES.vasLitres,
      Sd_cm2: RADIATOR_RANGES.sdCm2,
      addedMass_g: RADIATOR_RANGES.addedMassGrams.default(0),
      Xmax_mm: RADIATOR_RANGES.xmaxMm.nullable().default(null),
    }),
  }),
  z.strictObject({ type: z.literal('bandpass4'), rear: chamber, front: chamber, frontPort: port }),
  z.strictObject({
    type: z.literal('bandpass6'),
    rear: chamber,
    rearPort: port,
    front: chamber,
    frontPort: port,
  }),
]);

const driver = z
  .strictObject({
    name: z.string().max(120).default(''),
    fs_Hz: DRIVER_RANGES.fsHz,
    Qms: DRIVER_RANGES.qms,
    Qes: DRIVER_RANGES.qes,
    Vas_L: DRIVER_RANGES.vasLitres,
    Sd_cm2: DRIVER_RANGES.sdCm2,
    Re_ohm: DRIVER_RANGES.reOhm,
    Le_mH: DRIVER_RANGES.leMh.default(0),
    L2_mH: DRIVER_RANGES.l2Mh.nullable().default(null),
    R2_ohm: DRIVER_RANGES.r2Ohm.nullable().default(null),
    coils: coilCountSchema.default(1),
    Xmax_mm: DRIVER_RANGES.xmaxMm.nullable().default(null),
    Pe_W: DRIVER_RANGES.peWatts.nullable().default(null),
    displacement_L: DRIVER_RANGES.displacementLitres.default(0),
  })
  .refine((it) => (it.L2_mH === null) === (it.R2_ohm === null), {
    error: 'both L2_mH and R2_ohm, or neither',
    path: ['R2_ohm'],
  });

const filter = z.discriminatedUnion('kind', [
  z
    .strictObject({
      kind: z.enum(['highpass', 'lowpass']),
      alignment: z.enum(['butterworth', 'linkwitz-riley', 'bessel']),
      order: FILTER_RANGES.order,
      f_Hz: FREQUENCY_HZ,
    })
    .refine((it) => it.alignment !== 'linkwitz-riley' || it.order % 2 === 0, {
      error: '2, 4, 6 or 8 for linkwitz-riley',
      path: ['order'],
    }),
  z.strictObject({
    kind: z.literal('peaking'),
    f_Hz: FREQUENCY_HZ,
    gain_dB: FILTER_RANGES.gainDb,
    Q: FILTER_RANGES.q,
  }),
]);

const cabin = z.union([
  z.strictObject({
    Lmax_m: CABIN_RANGES.longestM,
    Qc: CABIN_RANGES.q,
    flow_Hz: CABIN_RANGES.lowerHz,
    Qlow: CABIN_RANGES.q,
  }),
  z.strictObject({
    /** Frequency and gain, rising in frequency; held level beyond both ends. */
    curve: z
      .array(z.tuple([FREQUENCY_HZ, CABIN_RANGES.gainDb]))
      .min(2, { error: '2 to 2000 points' })
      .max(2_000, { error: '2 to 2000 points' })
      .refine((points) => points.every((point, i) => point[0] > (points[i - 1]?.[0] ?? 0)), {
        error: 'frequencies that rise from point to point',
      }),
  }),
]);

const array = z
  .strictObject({
    count: ARRAY_RANGES.drivers.default(1),
    seriesPerString: ARRAY_RANGES.drivers.default(1),
    parallelStrings: ARRAY_RANGES.drivers.default(1),
    coilWiring: coilWiringSchema.default('single'),
    isobaric: z.strictObject({ couplingVolume_L: ARRAY_RANGES.couplingLitres }).nullable().default(null),
  })
  .refine((it) => it.seriesPerString * it.parallelStrings === it.count, UNEVEN_STRINGS)
  .refine((it) => it.isobaric === null || it.count === 2, {
    error: '2 drivers, for an isobaric pair',
    path: ['count'],
  });

export const solveIdSchema = z.union([z.string().max(200), z.number()]);

/** One line in. */
export const solveResponseRequestSchema = z.strictObject({
  id: solveIdSchema,
  frequencies_Hz: frequenciesHzSchema,
  air: z
    .strictObject({
      temperature_C: AIR_RANGES.temperatureC.default(20),
      pressure_Pa: AIR_RANGES.pressurePa.default(101_325),
    })
    .prefault({}),
  source: z.strictObject({
    voltage_Vrms: SOURCE_RANGES.voltageVrms,
    Rg_ohm: SOURCE_RANGES.outputOhm.default(0),
    Rcable_ohm: SOURCE_RANGES.cableOhm.default(0),
    /** Most that the amplifier gives before it clips. */
    max_Vrms: SOURCE_RANGES.maxVoltageVrms.nullable().default(null),
    max_Arms: SOURCE_RANGES.maxCurrentArms.nullable().default(null),
  }),
  filters: z.array(filter).max(40, { error: 'at most 40 filters' }).default([]),
  driver,
  array: array.prefault({}),
  enclosure,
  cabin: cabin.nullable().default(null),
  distance_m: DISTANCE_M.default(1),
  /** Asks for the answer to a step of the source's volts in time. */
  step: z
    .strictObject({
      duration_ms: timeSettingSchema.shape.durationMs,
      flat_to_Hz: timeSettingSchema.shape.flatToHz,
    })
    .nullable()
    .default(null),
  /** Asks for an estimate with warm coils. */
  hot_coil: z
    .strictObject({
      rise_K: hotCoilSettingSchema.shape.riseK,
      Rth_K_per_W: hotCoilSettingSchema.shape.thermalResistanceKPerW,
      average_share: hotCoilSettingSchema.shape.averageShare,
    })
    .nullable()
    .default(null),
});
export type SolveResponseRequest = DeepReadonly<z.infer<typeof solveResponseRequestSchema>>;

const curve = z.array(z.number());

/** Figures that don't apply to a system are left out. */
export const solveResponseDerivedSchema = z.strictObject({
  Mms_g: z.number(),
  Cms_mm_per_N: z.number(),
  Rms: z.number(),
  BL_per_coil: z.number(),
  Qts: z.number(),
  Qts_in_circuit: z.number(),
  Rdc_ohm: z.number(),
  eta0_percent: z.number(),
  alpha: z.number().optional(),
  fc_Hz: z.number().optional(),
  Qtc: z.number().optional(),
  Qtc_with_losses: z.number().optional(),
  f3_Hz: z.number().optional(),
  peak_dB: z.number().optional(),
  fb_Hz: z.number().optional(),
  fb_rear_Hz: z.number().optional(),
  notch_Hz: z.number().optional(),
  port_length_mm: z.number().optional(),
  port_effective_length_mm: z.number().optional(),
  port_rear_length_mm: z.number().optional(),
  port_rear_effective_length_mm: z.number().optional(),
  /** Ports whose length comes out at nothing or shorter than their flares. */
  unbuildable_ports: z.array(portRoleSchema).optional(),
});

/** One line out. */
export const solveResponseAnswerSchema = z.strictObject({
  id: solveIdSchema,
  frequencies_Hz: curve,
  spl_dB: curve,
  impedance_ohm: curve,
  impedance_phase_deg: curve,
  excursion_mm: curve,
  group_delay_ms: curve,
  /** Null where no limit is given: Pe_W, an Xmax_mm, max_Vrms, max_Arms. */
  max_spl_dB: curve.nullable(),
  max_spl_limit: z.array(limitCauseSchema).nullable(),
  excursion_inner_mm: curve.optional(),
  port_velocity_mps: curve.optional(),
  port_rear_velocity_mps: curve.optional(),
  pr_excursion_mm: curve.optional(),
  /** Of the pressure against the source's voltage. */
  phase_deg: curve.optional(),
  current_Arms: curve.optional(),
  /** Real power at the amplifier's terminals. */
  power_W: curve.optional(),
  apparent_power_VA: curve.optional(),
  /** At one watt into Rdc_ohm, and at all that the coils and the amplifier take. */
  spl_1W_dB: curve.optional(),
  spl_full_power_dB: curve.optional(),
  /** Where a step was asked for. */
  step: z
    .strictObject({
      t_ms: curve,
      pressure_Pa: curve,
      impulse_Pa_per_s: curve,
      flat_to_Hz: z.number(),
      gone_by_Hz: z.number(),
      settled: z.boolean(),
    })
    .optional(),
  /** Where warm coils were asked for: an estimate. */
  hot_coil: z
    .strictObject({
      basis: hotCoilEstimateSchema.shape.basis,
      rise_K: z.number(),
      coil_C: z.number(),
      Re_ohm: z.number(),
      beyond_coil: z.boolean(),
      compression_dB: curve,
      spl_dB: curve,
    })
    .optional(),
  derived: solveResponseDerivedSchema,
});
export type SolveResponseAnswer = DeepReadonly<z.infer<typeof solveResponseAnswerSchema>>;

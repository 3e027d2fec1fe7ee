// The public shape of `solve response`. Key names carry their unit in the way that scripts write it. The solve
// door maps it onto the engine's own types.
import { z } from 'zod';
import type { DeepReadonly } from './deep-readonly.ts';
import { coilCountSchema } from './driver.ts';
import { quantity, wholeNumber } from './quantity.ts';
import { limitCauseSchema, portRoleSchema } from './result.ts';
import { coilWiringSchema, frequenciesHzSchema } from './system.ts';

const lossQ = quantity(1, 100_000, '').nullable().default(null);

const chamber = z.strictObject({
  volume_L: quantity(0.05, 20_000, 'L'),
  fillFactor: quantity(1, 1.4, '').default(1),
  QL: lossQ,
  QA: lossQ,
});

const portEnd = z.strictObject({
  type: z.enum(['flanged', 'free']),
  walls: z.literal([0, 1, 2], { error: '0, 1 or 2' }).default(0),
  flareRadius_mm: quantity(0, 500, 'mm').default(0),
});

const portCommon = {
  count: wholeNumber(1, 50).default(1),
  /** Outer end first. */
  ends: z.tuple([portEnd, portEnd]),
  QP: lossQ,
  tuning_Hz: quantity(5, 500, 'Hz').optional(),
  length_mm: quantity(1, 5_000, 'mm').optional(),
};

const port = z
  .discriminatedUnion('shape', [
    z.strictObject({ shape: z.literal('round'), diameter_mm: quantity(5, 1_000, 'mm'), ...portCommon }),
    z.strictObject({
      shape: z.literal('rect'),
      width_mm: quantity(5, 3_000, 'mm'),
      height_mm: quantity(5, 3_000, 'mm'),
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
      count: wholeNumber(1, 20),
      fs_Hz: quantity(1, 500, 'Hz'),
      Qms: quantity(0.1, 200, ''),
      Vas_L: quantity(0.01, 5_000, 'L'),
      Sd_cm2: quantity(1, 20_000, 'cm²'),
      addedMass_g: quantity(0, 20_000, 'g').default(0),
      Xmax_mm: quantity(0.05, 300, 'mm').nullable().default(null),
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
    fs_Hz: quantity(5, 2_000, 'Hz'),
    Qms: quantity(0.1, 200, ''),
    Qes: quantity(0.02, 100, ''),
    Vas_L: quantity(0.01, 5_000, 'L'),
    Sd_cm2: quantity(1, 20_000, 'cm²'),
    Re_ohm: quantity(0.05, 200, 'Ω'),
    Le_mH: quantity(0, 100, 'mH').default(0),
    L2_mH: quantity(0.0001, 100, 'mH').nullable().default(null),
    R2_ohm: quantity(0.0001, 10_000, 'Ω').nullable().default(null),
    coils: coilCountSchema.default(1),
    Xmax_mm: quantity(0.05, 200, 'mm').nullable().default(null),
    Pe_W: quantity(0.1, 20_000, 'W').nullable().default(null),
    displacement_L: quantity(0, 100, 'L').default(0),
  })
  .refine((it) => (it.L2_mH === null) === (it.R2_ohm === null), {
    error: 'both L2_mH and R2_ohm, or neither',
    path: ['R2_ohm'],
  });

const frequency = quantity(1, 20_000, 'Hz');
const filter = z.discriminatedUnion('kind', [
  z
    .strictObject({
      kind: z.enum(['highpass', 'lowpass']),
      alignment: z.enum(['butterworth', 'linkwitz-riley', 'bessel']),
      order: wholeNumber(1, 8),
      f_Hz: frequency,
    })
    .refine((it) => it.alignment !== 'linkwitz-riley' || it.order % 2 === 0, {
      error: '2, 4, 6 or 8 for linkwitz-riley',
      path: ['order'],
    }),
  z.strictObject({
    kind: z.literal('peaking'),
    f_Hz: frequency,
    gain_dB: quantity(-40, 40, 'dB'),
    Q: quantity(0.05, 50, ''),
  }),
]);

const cabin = z.union([
  z.strictObject({
    Lmax_m: quantity(0.3, 20, 'm'),
    Qc: quantity(0.1, 10, ''),
    flow_Hz: quantity(0.1, 500, 'Hz'),
    Qlow: quantity(0.1, 10, ''),
  }),
  z.strictObject({
    /** Frequency and gain, rising in frequency; held level beyond both ends. */
    curve: z
      .array(z.tuple([frequency, quantity(-80, 80, 'dB')]))
      .min(2, { error: '2 to 2000 points' })
      .max(2_000, { error: '2 to 2000 points' })
      .refine((points) => points.every((point, i) => point[0] > (points[i - 1]?.[0] ?? 0)), {
        error: 'frequencies that rise from point to point',
      }),
  }),
]);

const array = z
  .strictObject({
    count: wholeNumber(1, 64).default(1),
    seriesPerString: wholeNumber(1, 64).default(1),
    parallelStrings: wholeNumber(1, 64).default(1),
    coilWiring: coilWiringSchema.default('single'),
    isobaric: z
      .strictObject({ couplingVolume_L: quantity(0.001, 1_000, 'L') })
      .nullable()
      .default(null),
  })
  .refine((it) => it.seriesPerString * it.parallelStrings === it.count, {
    error: 'seriesPerString × parallelStrings; uneven strings are not modelled',
    path: ['count'],
  })
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
      temperature_C: quantity(-50, 70, '°C').default(20),
      pressure_Pa: quantity(30_000, 120_000, 'Pa').default(101_325),
    })
    .prefault({}),
  source: z.strictObject({
    voltage_Vrms: quantity(0.001, 1_000, 'V'),
    Rg_ohm: quantity(0, 1_000, 'Ω').default(0),
    Rcable_ohm: quantity(0, 100, 'Ω').default(0),
  }),
  filters: z.array(filter).max(40, { error: 'at most 40 filters' }).default([]),
  driver,
  array: array.prefault({}),
  enclosure,
  cabin: cabin.nullable().default(null),
  distance_m: quantity(0.05, 100, 'm').default(1),
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
  /** Null where neither Pe_W nor an Xmax_mm is given. */
  max_spl_dB: curve.nullable(),
  max_spl_limit: z.array(limitCauseSchema).nullable(),
  excursion_inner_mm: curve.optional(),
  port_velocity_mps: curve.optional(),
  port_rear_velocity_mps: curve.optional(),
  pr_excursion_mm: curve.optional(),
  derived: solveResponseDerivedSchema,
});
export type SolveResponseAnswer = DeepReadonly<z.infer<typeof solveResponseAnswerSchema>>;

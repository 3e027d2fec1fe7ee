// A whole system as the circuit needs it: driver, wiring, source, enclosure, cabin, air, and where to look.
import { z } from 'zod';
import type { DeepReadonly } from './deep-readonly.ts';
import { driverParametersSchema } from './driver.ts';
import { enclosureSchema } from './enclosure.ts';
import {
  AIR_RANGES,
  ARRAY_RANGES,
  CABIN_RANGES,
  DISTANCE_M,
  FILTER_RANGES,
  FREQUENCY_HZ,
  SOURCE_RANGES,
} from './ranges.ts';

/** Most frequencies that one request may ask for. */
export const FREQUENCY_COUNT_LIMIT = 10_000;

export const airSchema = z.strictObject({
  temperatureC: AIR_RANGES.temperatureC.default(20),
  /** Of the place, not reduced to sea level. */
  pressurePa: AIR_RANGES.pressurePa.default(101_325),
});
export type AirConditions = DeepReadonly<z.infer<typeof airSchema>>;

export const sourceSchema = z.strictObject({
  voltageVrms: SOURCE_RANGES.voltageVrms,
  /** Output resistance of the amplifier. */
  outputOhm: SOURCE_RANGES.outputOhm.default(0),
  /** Both conductors of the loudspeaker cable together. */
  cableOhm: SOURCE_RANGES.cableOhm.default(0),
  /** Most that the amplifier gives before it clips; null = not stated, so it limits nothing. */
  maxVoltageVrms: SOURCE_RANGES.maxVoltageVrms.nullable().default(null),
  maxCurrentArms: SOURCE_RANGES.maxCurrentArms.nullable().default(null),
});
export type Source = DeepReadonly<z.infer<typeof sourceSchema>>;

export const coilWiringSchema = z.enum(['single', 'series', 'parallel']);
export type CoilWiring = z.infer<typeof coilWiringSchema>;

/** Why a wiring must be even; refusals show it. */
export const UNEVEN_STRINGS = {
  error: 'seriesPerString × parallelStrings: strings of the same length',
  path: ['count'],
  params: {
    why: 'in uneven strings some coils take more of the current, and cones of one box no longer move alike',
  },
};

/** Drivers alike: `parallelStrings` strings of `seriesPerString`. Coils of one driver by `coilWiring`. */
export const driverArraySchema = z
  .strictObject({
    count: ARRAY_RANGES.drivers,
    seriesPerString: ARRAY_RANGES.drivers,
    parallelStrings: ARRAY_RANGES.drivers,
    coilWiring: coilWiringSchema.default('single'),
    /** Two drivers, one behind the other, with this air between them; null = side by side. */
    isobaric: z.strictObject({ couplingLitres: ARRAY_RANGES.couplingLitres }).nullable().default(null),
  })
  .refine((array) => array.seriesPerString * array.parallelStrings === array.count, UNEVEN_STRINGS)
  .refine((array) => array.isobaric === null || array.count === 2, {
    error: '2 drivers, for an isobaric pair',
    path: ['count'],
  });
export type DriverArray = DeepReadonly<z.infer<typeof driverArraySchema>>;

/** One driver, one coil driven. */
export const SINGLE_DRIVER = {
  count: 1,
  seriesPerString: 1,
  parallelStrings: 1,
  coilWiring: 'single',
  isobaric: null,
} as const satisfies DriverArray;

const passFilter = z
  .strictObject({
    kind: z.enum(['highpass', 'lowpass']),
    /** Corner level: butterworth and bessel -3.01 dB, linkwitz-riley -6.02 dB. */
    alignment: z.enum(['butterworth', 'linkwitz-riley', 'bessel']),
    order: FILTER_RANGES.order,
    cornerHz: FREQUENCY_HZ,
  })
  .refine((filter) => filter.alignment !== 'linkwitz-riley' || filter.order % 2 === 0, {
    error: '2, 4, 6 or 8 for linkwitz-riley',
    path: ['order'],
  });
const peakingFilter = z.strictObject({
  kind: z.literal('peaking'),
  centreHz: FREQUENCY_HZ,
  gainDb: FILTER_RANGES.gainDb,
  q: FILTER_RANGES.q,
});
export const filterSchema = z.discriminatedUnion('kind', [passFilter, peakingFilter]);
export type Filter = DeepReadonly<z.infer<typeof filterSchema>>;

/** What the vehicle's body adds, on pressure only. An estimate (`shelf`) or a measurement (`curve`). */
export const cabinSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('shelf'),
    /** Longest clear length inside the body. */
    longestM: CABIN_RANGES.longestM,
    upperQ: CABIN_RANGES.q,
    /** Where the rise levels out, because the body leaks and flexes. */
    lowerHz: CABIN_RANGES.lowerHz,
    lowerQ: CABIN_RANGES.q,
  }),
  z.strictObject({
    kind: z.literal('curve'),
    points: z
      .array(z.strictObject({ frequencyHz: FREQUENCY_HZ, gainDb: CABIN_RANGES.gainDb }))
      .min(2, { error: '2 to 2000 points' })
      .max(2_000, { error: '2 to 2000 points' })
      .refine((points) => points.every((point, i) => point.frequencyHz > (points[i - 1]?.frequencyHz ?? 0)), {
        error: 'frequencies that rise from point to point',
      }),
  }),
]);
export type Cabin = DeepReadonly<z.infer<typeof cabinSchema>>;

export const frequenciesHzSchema = z
  .array(FREQUENCY_HZ)
  .min(1, { error: `1 to ${FREQUENCY_COUNT_LIMIT} frequencies` })
  .max(FREQUENCY_COUNT_LIMIT, { error: `1 to ${FREQUENCY_COUNT_LIMIT} frequencies` });

export const soundSystemSchema = z.strictObject({
  frequenciesHz: frequenciesHzSchema,
  air: airSchema.prefault({}),
  source: sourceSchema,
  filters: z.array(filterSchema).max(40, { error: 'at most 40 filters' }).default([]),
  driver: driverParametersSchema,
  array: driverArraySchema.default(SINGLE_DRIVER),
  enclosure: enclosureSchema,
  cabin: cabinSchema.nullable().default(null),
  /** Listening distance, half space. */
  distanceM: DISTANCE_M.default(1),
});
/** As a caller may write it: what has a default may be left out. */
export type SoundSystemInput = DeepReadonly<z.input<typeof soundSystemSchema>>;
export type SoundSystem = DeepReadonly<z.infer<typeof soundSystemSchema>>;

// Loudspeaker driver: the small-signal (Thiele-Small) parameters and the limits that its maker states.
import { z } from 'zod';
import type { DeepReadonly } from './deep-readonly.ts';
import { quantity } from './quantity.ts';
import { DRIVER_RANGES } from './ranges.ts';

const BOTH_OR_NEITHER = 'both l2Mh and r2Ohm, or neither';

const driverQuantities = {
  /** Resonance in free air. */
  fsHz: DRIVER_RANGES.fsHz,
  /** Mechanical Q at fs. */
  qms: DRIVER_RANGES.qms,
  /** Electrical Q at fs with every coil driven. */
  qes: DRIVER_RANGES.qes,
  /** Air as stiff as the suspension, at 20 °C and 101 325 Pa. */
  vasLitres: DRIVER_RANGES.vasLitres,
  /** Piston area, to the middle of the surround. */
  sdCm2: DRIVER_RANGES.sdCm2,
  /** Direct-current resistance of one coil. */
  reOhm: DRIVER_RANGES.reOhm,
  /** Inductance of one coil with the others open; 0 = left out. */
  leMh: DRIVER_RANGES.leMh,
  /** Lossy part of one coil's inductance, parallel to `r2Ohm`; null = none. */
  l2Mh: DRIVER_RANGES.l2Mh.nullable(),
  r2Ohm: DRIVER_RANGES.r2Ohm.nullable(),
  /** Peak travel one way from rest; null = not stated, so no excursion limit is shown. */
  xmaxMm: DRIVER_RANGES.xmaxMm.nullable(),
  /** Rated noise power of the whole driver, all coils; null = not stated. */
  peWatts: DRIVER_RANGES.peWatts.nullable(),
  /** Air that basket and magnet take from the box. */
  displacementLitres: DRIVER_RANGES.displacementLitres,
};

export const coilCountSchema = z.literal([1, 2], { error: '1 or 2 coils' });

/** A driver that the circuit can be built from: nothing missing, nothing contradictory. Units in the key names. */
export const driverParametersSchema = z
  .strictObject({ ...driverQuantities, coils: coilCountSchema })
  .refine((driver) => (driver.l2Mh === null) === (driver.r2Ohm === null), {
    error: BOTH_OR_NEITHER,
    path: ['r2Ohm'],
  });
export type DriverParameters = DeepReadonly<z.infer<typeof driverParametersSchema>>;

const given = <T extends z.ZodType>(schema: T) => schema.nullable().default(null);

/** What a data sheet or a measurement may give: any of these, null = not given. Re and BL are of one coil. */
export const driverDataSheetSchema = z.strictObject({
  fsHz: given(driverQuantities.fsHz),
  qms: given(driverQuantities.qms),
  qes: given(driverQuantities.qes),
  qts: given(quantity(0.02, 70, '')),
  vasLitres: given(driverQuantities.vasLitres),
  sdCm2: given(driverQuantities.sdCm2),
  reOhm: given(driverQuantities.reOhm),
  mmsGrams: given(quantity(0.05, 10_000, 'g')),
  cmsMmPerN: given(quantity(0.0001, 100, 'mm/N')),
  rmsNsPerM: given(quantity(0.001, 1_000, 'N s/m')),
  blTm: given(quantity(0.1, 200, 'T m')),
  leMh: given(driverQuantities.leMh),
  l2Mh: driverQuantities.l2Mh.default(null),
  r2Ohm: driverQuantities.r2Ohm.default(null),
  xmaxMm: driverQuantities.xmaxMm.default(null),
  peWatts: driverQuantities.peWatts.default(null),
  displacementLitres: given(driverQuantities.displacementLitres),
  coils: coilCountSchema.default(1),
});
/** As typed: every field may be left out. */
export type DriverDataSheetInput = DeepReadonly<z.input<typeof driverDataSheetSchema>>;
export type DriverDataSheet = DeepReadonly<z.infer<typeof driverDataSheetSchema>>;

/** The figures of a data sheet that hang together by physics, so that some give the others. */
export const LINKED_DRIVER_FIELDS = [
  'fsHz',
  'qms',
  'qes',
  'qts',
  'vasLitres',
  'sdCm2',
  'reOhm',
  'mmsGrams',
  'cmsMmPerN',
  'rmsNsPerM',
  'blTm',
] as const satisfies readonly (keyof DriverDataSheet)[];
export type LinkedDriverField = (typeof LINKED_DRIVER_FIELDS)[number];

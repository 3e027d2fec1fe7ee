// Measured sweeps: columns of frequency, magnitude and phase as a meter or an analyser wrote them, read once and kept
// with what was known when they were taken.
import { z } from 'zod';
import { quantity } from '../acoustics/quantity.ts';
import { CHAMBER_RANGES, PORT_RANGES, SOURCE_RANGES } from '../acoustics/ranges.ts';
import { idSchema, notesSchema, shopDateSchema, shortTextSchema } from '../common/index.ts';

/** What the second column holds: ohm for `impedance`, dB for the others. */
export const SWEEP_KINDS = ['impedance', 'response', 'noise', 'mic-calibration'] as const;
export const sweepKindSchema = z.enum(SWEEP_KINDS);
export type SweepKind = z.infer<typeof sweepKindSchema>;

/** Largest file that is read, characters: 20,000 rows of three long numbers. */
export const SWEEP_TEXT_LIMIT = 800_000;
/** Rows kept of a sweep; longer ones are averaged in narrow bands when they are read. */
export const SWEEP_ROWS_KEPT = 2_000;

/** A sweep as it is kept. Rising in frequency; lists run parallel. */
export const sweepColumnsSchema = z
  .strictObject({
    frequenciesHz: z.array(z.number().positive()).min(2).max(SWEEP_ROWS_KEPT),
    /** Ohm of an impedance sweep, dB of any other. */
    values: z.array(z.number()).max(SWEEP_ROWS_KEPT),
    /** Inductive is positive; null = the file had none. */
    phaseRad: z.array(z.number()).max(SWEEP_ROWS_KEPT).nullable(),
  })
  .refine(
    ({ frequenciesHz, values, phaseRad }) =>
      values.length === frequenciesHz.length &&
      (phaseRad === null || phaseRad.length === frequenciesHz.length),
    { error: 'columns of equal length' },
  );
export type SweepColumns = {
  readonly frequenciesHz: readonly number[];
  readonly values: readonly number[];
  readonly phaseRad: readonly number[] | null;
};

/** How a file's columns are to be read; `auto` goes by its header words, then by what is usual. */
export const columnUnitsSchema = z.strictObject({
  magnitude: z.enum(['auto', 'ohm', 'dB']).default('auto'),
  phase: z.enum(['auto', 'degrees', 'radians']).default('auto'),
});
export type ColumnUnits = z.infer<typeof columnUnitsSchema>;

/** How a file was read, so that the person can see whether that is right. */
export type SweepReading = {
  readonly columns: SweepColumns;
  /** Rows of figures in the file; more than are kept where bands were averaged. */
  readonly rowsRead: number;
  readonly magnitude: 'ohm' | 'dB';
  /** Null = no third column. */
  readonly phase: 'degrees' | 'radians' | null;
  readonly decimalComma: boolean;
};

export const SWEEP_OWNERS = ['driver', 'job', 'vehicle-model'] as const;
export type SweepOwner = (typeof SWEEP_OWNERS)[number];

type UseOf = { readonly kind: SweepKind; readonly owner: SweepOwner; readonly words: string };

/** What a sweep is for; it says what the columns hold and what it belongs to. */
export const SWEEP_USES = {
  'free-air': { kind: 'impedance', owner: 'driver', words: 'Driver in free air' },
  'added-mass': { kind: 'impedance', owner: 'driver', words: 'Driver with added mass' },
  'known-box': { kind: 'impedance', owner: 'driver', words: 'Driver in a known box' },
  'built-box': { kind: 'impedance', owner: 'job', words: 'Built box' },
  'port-blocked': { kind: 'impedance', owner: 'job', words: 'Built box, port blocked' },
  'in-car': { kind: 'response', owner: 'vehicle-model', words: 'In the car' },
  'near-cone': { kind: 'response', owner: 'vehicle-model', words: 'Near the cone' },
  'background-noise': { kind: 'noise', owner: 'vehicle-model', words: 'Noise, nothing playing' },
  'microphone-calibration': {
    kind: 'mic-calibration',
    owner: 'vehicle-model',
    words: 'Microphone calibration',
  },
} as const satisfies Record<string, UseOf>;
export type SweepUse = keyof typeof SWEEP_USES;
export const sweepUseSchema = z.enum([
  'free-air',
  'added-mass',
  'known-box',
  'built-box',
  'port-blocked',
  'in-car',
  'near-cone',
  'background-noise',
  'microphone-calibration',
]) satisfies z.ZodType<SweepUse>;

/** Where the trial box's cone looks. */
export const FIRING_DIRECTIONS = ['forward', 'rearward', 'up', 'down', 'left', 'right'] as const;
export const firingDirectionSchema = z.enum(FIRING_DIRECTIONS);
export type FiringDirection = z.infer<typeof firingDirectionSchema>;
export const FIRING_WORDS: Record<FiringDirection, string> = {
  forward: 'firing forward',
  rearward: 'firing rearward',
  up: 'firing up',
  down: 'firing down',
  left: 'firing left',
  right: 'firing right',
};

const typedSchema = z.string().max(60);

/** The box that played while the sweeps were taken: what the prediction is made from. */
export const trialBoxSchema = z.strictObject({
  /** A driver of the catalogue; one of them. */
  driverId: idSchema,
  net: z.strictObject({ litres: CHAMBER_RANGES.netLitres, typed: typedSchema }),
  /** Null = closed. */
  tuning: z.strictObject({ hz: PORT_RANGES.tuningHz, typed: typedSchema }).nullable(),
  drive: z.strictObject({ volts: SOURCE_RANGES.voltageVrms, typed: typedSchema }),
});
export type TrialBox = z.infer<typeof trialBoxSchema>;

/** What has to be known beside the columns; null where the use needs none. */
export const sweepConditionsSchema = z.strictObject({
  /** `added-mass`: on the cone. */
  addedMass: z.strictObject({ grams: quantity(0.1, 5_000, 'g'), typed: typedSchema }).nullable(),
  /** `known-box`: net, unlined and tight. */
  knownBox: z.strictObject({ litres: CHAMBER_RANGES.netLitres, typed: typedSchema }).nullable(),
  /** `in-car`, `near-cone`. */
  trial: trialBoxSchema.nullable(),
});
export type SweepConditions = z.infer<typeof sweepConditionsSchema>;

const importFields = {
  /** The file's text, or what was pasted. */
  text: z
    .string()
    .min(1, 'Paste the columns or choose a file.')
    .max(SWEEP_TEXT_LIMIT, 'A sweep of at most 800,000 characters is read.'),
  fileName: shortTextSchema,
  units: columnUnitsSchema.prefault({}),
  conditions: sweepConditionsSchema,
  /** Where in the vehicle: of the trial box. */
  place: shortTextSchema,
  direction: firingDirectionSchema.nullable(),
  notes: notesSchema,
  takenOn: shopDateSchema.nullable(),
};

/** By what the sweep belongs to; each takes its own uses only. */
export const importSweepSchemas = {
  driver: z.strictObject({
    driverId: idSchema,
    use: z.enum(['free-air', 'added-mass', 'known-box']),
    ...importFields,
  }),
  job: z.strictObject({ jobId: idSchema, use: z.enum(['built-box', 'port-blocked']), ...importFields }),
  'vehicle-model': z.strictObject({
    modelId: idSchema,
    use: z.enum(['in-car', 'near-cone', 'background-noise', 'microphone-calibration']),
    ...importFields,
  }),
} as const satisfies Record<SweepOwner, z.ZodType>;
export type ImportSweepInput = Omit<z.infer<(typeof importSweepSchemas)['driver']>, 'driverId' | 'use'> & {
  readonly use: SweepUse;
};

/** A kept sweep as the screens get it. */
export type SweepView = {
  readonly id: string;
  readonly use: SweepUse;
  readonly kind: SweepKind;
  readonly columns: SweepColumns;
  readonly conditions: SweepConditions;
  readonly place: string;
  readonly direction: FiringDirection | null;
  readonly notes: string;
  readonly fileName: string;
  readonly takenOn: string | null;
  readonly takenBy: string;
  readonly importedAt: string;
  readonly archived: boolean;
};

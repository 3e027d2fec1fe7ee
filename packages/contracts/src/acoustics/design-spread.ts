// What becomes of a design when driver and box aren't quite as stated: slopes one by one, and a band of many draws.
import { z } from 'zod';
import type { DeepReadonly } from './deep-readonly.ts';
import { designBandSchema, designSystemSchema } from './design-system.ts';
import { quantity, wholeNumber } from './quantity.ts';
import { FREQUENCY_HZ, LOSS_Q } from './ranges.ts';

const percent = (most: number) => quantity(0, most, '%');

/**
 * Each ± is read as two standard deviations and nothing is drawn beyond three. All drivers of a system share one draw, as
 * all its chambers and ports do. fs, Q and Vas follow from Cms, BL, Mms and Re: they don't spread by themselves.
 */
export const spreadSchema = z.strictObject({
  /** Suspension: the drift with age and temperature is most of it. */
  cmsPercent: percent(50).default(15),
  blPercent: percent(30).default(5),
  mmsPercent: percent(30).default(5),
  rePercent: percent(50).default(5),
  netLitresPercent: percent(30).default(3),
  portLengthMm: quantity(0, 50, 'mm').default(3),
  /** Leak Q, drawn evenly over its logarithm; null = as in the system. */
  ql: z
    .strictObject({ least: LOSS_Q, most: LOSS_Q })
    .refine(({ least, most }) => least <= most, { error: 'at least the lower one', path: ['most'] })
    .nullable()
    .default({ least: 5, most: 15 }),
  /** Sheets thicker or thinner than nominal: litres that all chambers lose per mm; null = left out. */
  sheet: z
    .strictObject({ litresPerMm: quantity(-50, 50, 'L/mm'), toleranceMm: quantity(0, 5, 'mm') })
    .nullable()
    .default(null),
});
export type Spread = DeepReadonly<z.infer<typeof spreadSchema>>;

export const toleranceBandSchema = z.strictObject({
  system: designSystemSchema,
  spread: spreadSchema.prefault({}),
  /** Where the band of curves is drawn. */
  shown: designBandSchema.prefault({ lowHz: 10, highHz: 120 }),
  points: wholeNumber(10, 300).default(60),
  /** From whose loudest point the corner and from whose mean the peak is counted; what lies outside `shown` is left out. */
  band: designBandSchema.prefault({ lowHz: 30, highHz: 80 }),
  draws: wholeNumber(20, 2_000).default(200),
  seed: wholeNumber(0, 4_294_967_295).default(1),
  /** Null = not asked for. */
  target: z
    .strictObject({
      cornerBelowHz: FREQUENCY_HZ.nullable().default(null),
      peakBelowDb: quantity(0, 40, 'dB').nullable().default(null),
    })
    .prefault({}),
});
export type ToleranceBandInput = DeepReadonly<z.input<typeof toleranceBandSchema>>;
export type ToleranceBandQuestion = DeepReadonly<z.infer<typeof toleranceBandSchema>>;

export type SpreadParameter =
  | 'cms'
  | 'bl'
  | 'mms'
  | 're'
  | 'net-litres'
  | 'port-length'
  | 'ql'
  | 'sheet-thickness';

/** 5, 50 and 95 of a hundred draws lie below; `asDrawn` is the system as given. */
export type SpreadFigure = {
  readonly asDrawn: number;
  readonly p5: number;
  readonly p50: number;
  readonly p95: number;
};

export type ToleranceBand = {
  readonly frequenciesHz: readonly number[];
  readonly asDrawnDb: readonly number[];
  readonly p5Db: readonly number[];
  readonly p50Db: readonly number[];
  readonly p95Db: readonly number[];
  /** Down to where the level stays within 3 dB of its loudest in the band. */
  readonly lowCornerHz: SpreadFigure;
  /** Highest level in the band above the band's mean. */
  readonly peakDb: SpreadFigure;
  /** Mean level of the band. */
  readonly outputDb: SpreadFigure;
  /** Draws that meet every target, with Wilson's 95 % interval of the share; null = no target. */
  readonly chance: {
    readonly met: number;
    readonly draws: number;
    readonly share: number;
    readonly leastShare: number;
    readonly mostShare: number;
  } | null;
  /** Share of each figure's variance that goes with a parameter (squared correlation), largest first. */
  readonly matters: {
    readonly lowCorner: readonly ParameterShare[];
    readonly peak: readonly ParameterShare[];
    readonly output: readonly ParameterShare[];
  };
  /** All chambers together at the ends of the sheet's tolerance; null = left out. */
  readonly sheetLitres: { readonly least: number; readonly most: number } | null;
  readonly seed: number;
};

export type ParameterShare = { readonly parameter: SpreadParameter; readonly share: number };

export const sensitivitySchema = z.strictObject({ system: designSystemSchema });
export type SensitivityInput = DeepReadonly<z.input<typeof sensitivitySchema>>;

/** fs, Qes, Qms and Vas move alone here; Cms, BL, Mms and Re take them along. */
export type SensitivityParameter =
  | 'fs'
  | 'qms'
  | 'qes'
  | 'vas'
  | 'cms'
  | 'bl'
  | 'mms'
  | 're'
  | 'net-litres'
  | 'port-length'
  | 'port-bore'
  | 'air-temperature';

/** Percent of the figure per percent of the parameter (d ln y / d ln x); null = the system has no such figure. */
export type Sensitivity = {
  readonly parameter: SensitivityParameter;
  readonly fc: number | null;
  readonly qtc: number | null;
  /** Of the port or radiators; of the front chamber in a bandpass box. */
  readonly tuning: number | null;
  readonly f3: number | null;
};

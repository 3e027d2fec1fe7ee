// The figures of each kind of part, as a catalogue keeps them.
import { z } from 'zod';
import { driverDataSheetSchema } from '../acoustics/index.ts';
import { PART_KINDS, type PartKind } from './part-kinds.ts';

const mm = (max: number) => z.number().positive().max(max);
const mmOrNull = (max: number) => z.number().positive().max(max).nullable().default(null);

/** Loudspeaker: electrical and mechanical figures, and what the carpenter needs. */
export const driverFiguresSchema = z.strictObject({
  dataSheet: driverDataSheetSchema,
  /** Nominal size in inches as the trade calls it; null = not stated. */
  nominalInches: z.number().positive().max(40).nullable().default(null),
  nominalOhm: z.number().positive().max(64).nullable().default(null),
  overallDiaMm: mm(800),
  cutoutDiaMm: mm(800),
  boltCircleDiaMm: mmOrNull(800),
  boltCount: z.number().int().min(3).max(24).nullable().default(null),
  boltSizeMm: mmOrNull(12),
  flangeThicknessMm: mmOrNull(60),
  mountingDepthMm: mm(600),
  magnetDiaMm: mmOrNull(600),
  poleVentDiaMm: z.number().min(0).max(200).nullable().default(null),
  sideVents: z.boolean().default(false),
  xmechMm: mmOrNull(200),
  massKg: z.number().positive().max(100).nullable().default(null),
});
export type DriverFigures = z.infer<typeof driverFiguresSchema>;

export const amplifierFiguresSchema = z.strictObject({
  channels: z.number().int().min(1).max(16),
  /** Rated power of one channel by load; continuous. */
  ratings: z
    .array(
      z.strictObject({ loadOhm: z.number().positive().max(64), watts: z.number().positive().max(50_000) }),
    )
    .min(1)
    .max(12),
  minimumLoadOhm: z.number().positive().max(64),
  bridgedMinimumLoadOhm: z.number().positive().max(64).nullable().default(null),
  ratingBasis: z.enum(['CTA-2006', 'other', 'unknown']).default('unknown'),
  amplifierClass: z.enum(['A', 'AB', 'D', 'other']).default('D'),
  fuseTotalA: z.number().positive().max(2_000).nullable().default(null),
  lengthMm: mmOrNull(1_200),
  widthMm: mmOrNull(1_200),
  heightMm: mmOrNull(400),
  massKg: z.number().positive().max(100).nullable().default(null),
});
export type AmplifierFigures = z.infer<typeof amplifierFiguresSchema>;

export const processorFiguresSchema = z.strictObject({
  inputs: z.number().int().min(1).max(64),
  outputs: z.number().int().min(1).max(64),
  outputVolts: z.number().positive().max(50).nullable().default(null),
  lengthMm: mmOrNull(600),
  widthMm: mmOrNull(600),
  heightMm: mmOrNull(200),
});
export type ProcessorFigures = z.infer<typeof processorFiguresSchema>;

export const sourceFiguresSchema = z.strictObject({
  preampOutputs: z.number().int().min(0).max(16),
  outputVolts: z.number().positive().max(50).nullable().default(null),
});
export type SourceFigures = z.infer<typeof sourceFiguresSchema>;

/** Calliper reading of a real sheet, mm. */
export const measuredThicknessMmSchema = z.number().positive().max(100);

export const sheetFiguresSchema = z.strictObject({
  material: z.enum(['mdf', 'birch-ply', 'ply', 'light-mdf', 'other']),
  nominalThicknessMm: z.number().positive().max(100),
  /** Null = not measured yet, so cut lists stay draft. */
  measuredThicknessMm: measuredThicknessMmSchema.nullable().default(null),
  lengthMm: mm(5_000),
  widthMm: mm(5_000),
  /** Along which side the face grain runs; `none` for boards without grain. */
  grain: z.enum(['length', 'width', 'none']).default('none'),
  densityKgPerM3: z.number().min(50).max(3_000),
  emissionClass: z.string().max(40).default(''),
  labelSeen: z.boolean().default(false),
});
export type SheetFigures = z.infer<typeof sheetFiguresSchema>;

export const finishFiguresSchema = z.strictObject({
  finish: z.enum(['carpet', 'vinyl', 'coating', 'paint', 'other']),
  /** Thickness on the finished face, mm. */
  thicknessMm: z.number().min(0).max(20),
  rollWidthMm: mmOrNull(3_000),
  /** Coatings: square metres per litre and coat. */
  coverageM2PerLitre: z.number().positive().max(50).nullable().default(null),
  coats: z.number().int().min(1).max(10).default(1),
  wasteBasisPoints: z.number().int().min(0).max(10_000).default(1_500),
  recoatHours: z.number().min(0).max(240).default(0),
  handleHours: z.number().min(0).max(720).default(24),
  flammabilityStated: z.boolean().default(false),
});
export type FinishFigures = z.infer<typeof finishFiguresSchema>;

export const hardwareFiguresSchema = z.strictObject({
  use: z.enum([
    'screw',
    'bolt',
    'insert',
    't-nut',
    'terminal',
    'grille',
    'gasket',
    'bracket',
    'cable',
    'fuse',
    'connector',
    'other',
  ]),
  size: z.string().max(60).default(''),
  packQuantity: z.number().int().min(1).max(10_000).default(1),
  /** Cable: conductor metal must be known before a fuse is chosen. */
  conductor: z.enum(['copper', 'copper-clad-aluminium', 'unknown']).nullable().default(null),
  areaMm2: z.number().positive().max(200).nullable().default(null),
});
export type HardwareFigures = z.infer<typeof hardwareFiguresSchema>;

export const supplyFiguresSchema = z.strictObject({
  use: z.enum(['glue', 'contact-adhesive', 'sealant', 'lining', 'abrasive', 'other']),
  /** Glue and contact adhesive: litres per square metre; sealant: litres per metre of seam; null = counted by hand. */
  usePerUnit: z.number().positive().max(50).nullable().default(null),
  clampMinutes: z.number().int().min(0).max(10_080).nullable().default(null),
  cureMinutes: z.number().int().min(0).max(20_160).nullable().default(null),
  minimumTemperatureC: z.number().min(-20).max(40).nullable().default(null),
});
export type SupplyFigures = z.infer<typeof supplyFiguresSchema>;

export const partKindSchema = z.enum(PART_KINDS);

export const partFiguresSchemas = {
  driver: driverFiguresSchema,
  amplifier: amplifierFiguresSchema,
  processor: processorFiguresSchema,
  source: sourceFiguresSchema,
  sheet: sheetFiguresSchema,
  finish: finishFiguresSchema,
  hardware: hardwareFiguresSchema,
  supply: supplyFiguresSchema,
} as const satisfies Record<PartKind, z.ZodType>;

export type PartFigures = { [K in PartKind]: z.infer<(typeof partFiguresSchemas)[K]> };

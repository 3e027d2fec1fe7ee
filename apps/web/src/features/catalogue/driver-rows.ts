// The fields of a driver, in the order in which data sheets and carpenters ask for them.
import type { FigureUnit } from '@gusset/units';

type MountingName =
  | 'figures.overallDiaMm'
  | 'figures.cutoutDiaMm'
  | 'figures.mountingDepthMm'
  | 'figures.flangeThicknessMm'
  | 'figures.magnetDiaMm'
  | 'figures.poleVentDiaMm'
  | 'figures.boltCircleDiaMm'
  | 'figures.boltSizeMm';

export const MOUNTING_ROWS: readonly {
  readonly name: MountingName;
  readonly maxMm: number;
  readonly isOptional: boolean;
}[] = [
  { name: 'figures.overallDiaMm', maxMm: 800, isOptional: false },
  { name: 'figures.cutoutDiaMm', maxMm: 800, isOptional: false },
  { name: 'figures.mountingDepthMm', maxMm: 600, isOptional: false },
  { name: 'figures.flangeThicknessMm', maxMm: 60, isOptional: true },
  { name: 'figures.magnetDiaMm', maxMm: 600, isOptional: true },
  { name: 'figures.poleVentDiaMm', maxMm: 200, isOptional: true },
  { name: 'figures.boltCircleDiaMm', maxMm: 800, isOptional: true },
  { name: 'figures.boltSizeMm', maxMm: 12, isOptional: true },
];

type SheetName =
  | 'figures.nominalInches'
  | 'figures.nominalOhm'
  | `figures.dataSheet.${
      | 'fsHz'
      | 'qms'
      | 'qes'
      | 'qts'
      | 'sdCm2'
      | 'reOhm'
      | 'mmsGrams'
      | 'cmsMmPerN'
      | 'rmsNsPerM'
      | 'blTm'
      | 'leMh'
      | 'l2Mh'
      | 'r2Ohm'
      | 'xmaxMm'
      | 'peWatts'}`
  | 'figures.xmechMm';

export type SheetRow = {
  readonly name: SheetName;
  readonly min: number;
  readonly max: number;
  readonly unit?: FigureUnit;
  readonly digits?: number;
};

/** Size and resonance: what is printed first. */
export const RESONANCE_ROWS: readonly SheetRow[] = [
  { name: 'figures.nominalInches', min: 0.5, max: 40 },
  { name: 'figures.nominalOhm', min: 0.25, max: 64, unit: 'ohm' },
  { name: 'figures.dataSheet.fsHz', min: 5, max: 2_000, unit: 'hertz' },
  { name: 'figures.dataSheet.qms', min: 0.1, max: 200 },
  { name: 'figures.dataSheet.qes', min: 0.02, max: 100 },
  { name: 'figures.dataSheet.qts', min: 0.02, max: 70 },
];

/** After Vas: piston, coil, travel, and what measuring rigs give. */
export const MOTOR_ROWS: readonly SheetRow[] = [
  { name: 'figures.dataSheet.sdCm2', min: 1, max: 20_000 },
  { name: 'figures.dataSheet.reOhm', min: 0.05, max: 200, unit: 'ohm' },
  { name: 'figures.dataSheet.xmaxMm', min: 0.05, max: 200 },
  { name: 'figures.xmechMm', min: 0.05, max: 200 },
  { name: 'figures.dataSheet.peWatts', min: 0.1, max: 20_000, unit: 'watt' },
  { name: 'figures.dataSheet.mmsGrams', min: 0.05, max: 10_000, unit: 'gram' },
  { name: 'figures.dataSheet.cmsMmPerN', min: 0.0001, max: 100, digits: 4 },
  { name: 'figures.dataSheet.rmsNsPerM', min: 0.001, max: 1_000 },
  { name: 'figures.dataSheet.blTm', min: 0.1, max: 200, unit: 'tesla-metre' },
  { name: 'figures.dataSheet.leMh', min: 0, max: 100, unit: 'millihenry' },
  { name: 'figures.dataSheet.l2Mh', min: 0.0001, max: 100, unit: 'millihenry', digits: 4 },
  { name: 'figures.dataSheet.r2Ohm', min: 0.0001, max: 10_000, unit: 'ohm', digits: 4 },
];

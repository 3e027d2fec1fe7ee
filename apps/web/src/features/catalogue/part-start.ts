// What the form of a new part begins with: nothing known is null, so that the contract asks for what is needed.
import type { PartInput, PartKind, partInputSchemas } from '@gusset/contracts/records';
import type { z } from 'zod';
import type { PartRow } from './part-calls.ts';

/** What a form may hold before it is whole: figures that are not typed yet are null. */
type Unfinished<T> = { [Key in keyof T]: T[Key] | null };
export type PartValues = { [K in PartKind]: z.input<(typeof partInputSchemas)[K]> }[PartKind];
type StartOf<K extends PartKind> = Unfinished<Extract<PartInput, { kind: K }>['figures']>;

const NEW_FIGURES: { readonly [K in PartKind]: StartOf<K> } = {
  driver: {
    dataSheet: {
      fsHz: null,
      qms: null,
      qes: null,
      qts: null,
      vasLitres: null,
      sdCm2: null,
      reOhm: null,
      mmsGrams: null,
      cmsMmPerN: null,
      rmsNsPerM: null,
      blTm: null,
      leMh: null,
      l2Mh: null,
      r2Ohm: null,
      xmaxMm: null,
      peWatts: null,
      displacementLitres: null,
      coils: 1,
    },
    nominalInches: null,
    nominalOhm: null,
    overallDiaMm: null,
    cutoutDiaMm: null,
    boltCircleDiaMm: null,
    boltCount: null,
    boltSizeMm: null,
    flangeThicknessMm: null,
    mountingDepthMm: null,
    magnetDiaMm: null,
    poleVentDiaMm: null,
    sideVents: false,
    xmechMm: null,
    massKg: null,
  },
  amplifier: {
    channels: 1,
    ratings: [{ loadOhm: 4, watts: 100 }],
    minimumLoadOhm: null,
    bridgedMinimumLoadOhm: null,
    ratingBasis: 'unknown',
    amplifierClass: 'D',
    fuseTotalA: null,
    lengthMm: null,
    widthMm: null,
    heightMm: null,
    massKg: null,
  },
  processor: {
    inputs: null,
    outputs: null,
    outputVolts: null,
    lengthMm: null,
    widthMm: null,
    heightMm: null,
  },
  source: { preampOutputs: null, outputVolts: null },
  sheet: {
    material: 'mdf',
    nominalThicknessMm: null,
    measuredThicknessMm: null,
    lengthMm: null,
    widthMm: null,
    grain: 'none',
    densityKgPerM3: null,
    emissionClass: '',
    labelSeen: false,
  },
  finish: {
    finish: 'carpet',
    thicknessMm: null,
    rollWidthMm: null,
    coverageM2PerLitre: null,
    coats: 1,
    wasteBasisPoints: 1_500,
    recoatHours: 0,
    handleHours: 24,
    flammabilityStated: false,
  },
  hardware: { use: 'screw', size: '', packQuantity: 1, conductor: null, areaMm2: null },
  supply: { use: 'glue', usePerUnit: null, clampMinutes: null, cureMinutes: null, minimumTemperatureC: null },
};

const NEW_COMMON = {
  maker: '',
  name: '',
  code: '',
  unit: 'each',
  supplierId: null,
  buyPriceMinor: 0,
  sellPriceMinor: 0,
  stockQuantity: 0,
  leadDays: null,
  notes: '',
} as const;

const USUAL_UNIT: Readonly<Record<PartKind, PartInput['unit']>> = {
  driver: 'each',
  amplifier: 'each',
  processor: 'each',
  source: 'each',
  sheet: 'sheet',
  finish: 'm2',
  hardware: 'each',
  supply: 'litre',
};

export type PartStart = Readonly<Record<string, unknown>>;

export function newPartStart(kind: PartKind): PartStart {
  return { ...NEW_COMMON, kind, unit: USUAL_UNIT[kind], figures: NEW_FIGURES[kind] };
}

/** The input that would give this part; prices that this person does not see count as none. */
export function partStart(part: PartRow): PartStart {
  const { kind, maker, name, code, unit, supplierId, stockQuantity, leadDays, notes, figures } = part;
  return {
    kind,
    maker,
    name,
    code,
    unit,
    supplierId,
    buyPriceMinor: part.buyPriceMinor ?? 0,
    sellPriceMinor: part.sellPriceMinor ?? 0,
    stockQuantity,
    leadDays,
    notes,
    figures,
  };
}

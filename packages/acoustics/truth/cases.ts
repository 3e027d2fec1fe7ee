// Systems that the truth is made for: every enclosure, with losses, wiring, filters, cabin and thin air somewhere.
// The radiators are invented.
import type { SoundSystemInput } from '@gusset/contracts/acoustics';
import { medlar12, medlar12Dual, quince10 } from './drivers.ts';

export type TruthCase = { readonly id: string; readonly input: SoundSystemInput };

const FREQUENCIES_HZ = Array.from({ length: 25 }, (_, i) => Number((10 * 40 ** (i / 24)).toPrecision(5)));

const flanged = { kind: 'flanged' } as const;
const free = { kind: 'free' } as const;

const roundPort = {
  mouth: { shape: 'round', diameterMm: 100 },
  outerEnd: flanged,
  innerEnd: free,
  sizing: { by: 'tuning', tuningHz: 31 },
} as const;

const flaredPorts = {
  mouth: { shape: 'round', diameterMm: 76 },
  count: 2,
  outerEnd: { kind: 'flanged', flareRadiusMm: 19 },
  innerEnd: { kind: 'free', flareRadiusMm: 19 },
  sizing: { by: 'length', lengthMm: 340 },
  qp: 40,
} as const;

const slotPort = {
  mouth: { shape: 'rectangular', widthMm: 320, heightMm: 45 },
  outerEnd: { kind: 'flanged', walls: 1 },
  innerEnd: { kind: 'free', walls: 1 },
  sizing: { by: 'length', lengthMm: 520 },
  qp: 25,
} as const;

const base = { frequenciesHz: FREQUENCIES_HZ, source: { voltageVrms: 10 }, driver: quince10 } as const;
const dualTuned = {
  kind: 'dual-tuned-bandpass',
  rear: { netLitres: 52, ql: 9, qa: 60 },
  rearPort: { ...roundPort, sizing: { by: 'tuning', tuningHz: 29 } },
  front: { netLitres: 21, ql: 12 },
  frontPort: {
    ...roundPort,
    mouth: { shape: 'round', diameterMm: 130 },
    sizing: { by: 'tuning', tuningHz: 61 },
  },
} as const;
const singleTuned = {
  kind: 'single-tuned-bandpass',
  rear: { netLitres: 26, ql: 15, qa: 45, fillFactor: 1.12 },
  front: { netLitres: 18, ql: 8 },
  frontPort: { ...flaredPorts, sizing: { by: 'tuning', tuningHz: 55 } },
} as const;
const pair = (
  seriesPerString: 1 | 2,
  coilWiring: 'single' | 'series' | 'parallel',
  couplingLitres: number,
) => ({
  count: 2,
  seriesPerString,
  parallelStrings: 2 / seriesPerString,
  coilWiring,
  isobaric: { couplingLitres },
});

export const TRUTH_CASES: readonly TruthCase[] = [
  { id: 'baffle', input: { ...base, driver: medlar12, enclosure: { kind: 'infinite-baffle' } } },
  { id: 'closed', input: { ...base, enclosure: { kind: 'closed', chamber: { netLitres: 30 } } } },
  {
    id: 'closed-lossy-four-dual-coils',
    input: {
      ...base,
      driver: medlar12Dual,
      source: { voltageVrms: 24, outputOhm: 0.06, cableOhm: 0.11 },
      array: { count: 4, seriesPerString: 2, parallelStrings: 2, coilWiring: 'parallel' },
      enclosure: { kind: 'closed', chamber: { netLitres: 160, fillFactor: 1.15, ql: 7, qa: 30 } },
    },
  },
  {
    id: 'closed-one-coil-of-two',
    input: {
      ...base,
      driver: medlar12Dual,
      array: { count: 1, seriesPerString: 1, parallelStrings: 1, coilWiring: 'single' },
      enclosure: { kind: 'closed', chamber: { netLitres: 45, qa: 50 } },
    },
  },
  {
    id: 'closed-filters-and-cabin',
    input: {
      ...base,
      distanceM: 1.5,
      filters: [
        { kind: 'highpass', alignment: 'butterworth', order: 4, cornerHz: 22 },
        { kind: 'lowpass', alignment: 'linkwitz-riley', order: 4, cornerHz: 85 },
        { kind: 'peaking', centreHz: 62, gainDb: -4, q: 2.2 },
      ],
      cabin: { kind: 'shelf', longestM: 2.6, upperQ: 0.8, lowerHz: 14, lowerQ: 0.6 },
      enclosure: { kind: 'closed', chamber: { netLitres: 30, ql: 9 } },
    },
  },
  {
    id: 'closed-bessel',
    input: {
      ...base,
      filters: [
        { kind: 'lowpass', alignment: 'bessel', order: 4, cornerHz: 90 },
        { kind: 'highpass', alignment: 'bessel', order: 2, cornerHz: 24 },
        { kind: 'lowpass', alignment: 'butterworth', order: 3, cornerHz: 140 },
      ],
      enclosure: { kind: 'closed', chamber: { netLitres: 30 } },
    },
  },
  {
    id: 'vented',
    input: {
      ...base,
      source: { voltageVrms: 20 },
      driver: medlar12,
      enclosure: { kind: 'vented', chamber: { netLitres: 55, ql: 7 }, port: roundPort },
    },
  },
  {
    id: 'vented-lossless',
    input: { ...base, enclosure: { kind: 'vented', chamber: { netLitres: 48 }, port: roundPort } },
  },
  {
    id: 'vented-flared-pair-of-ports',
    input: {
      ...base,
      driver: medlar12Dual,
      array: { count: 1, seriesPerString: 1, parallelStrings: 1, coilWiring: 'series' },
      enclosure: { kind: 'vented', chamber: { netLitres: 62, ql: 7, qa: 80 }, port: flaredPorts },
    },
  },
  {
    id: 'vented-slot-high-and-hot',
    input: {
      ...base,
      air: { temperatureC: 38, pressurePa: 83_500 },
      driver: medlar12,
      source: { voltageVrms: 15, cableOhm: 0.2 },
      array: { count: 2, seriesPerString: 1, parallelStrings: 2 },
      enclosure: { kind: 'vented', chamber: { netLitres: 110, ql: 6, qa: 70 }, port: slotPort },
    },
  },
  {
    id: 'passive-radiators',
    input: {
      ...base,
      source: { voltageVrms: 18 },
      enclosure: {
        kind: 'passive-radiator',
        chamber: { netLitres: 28, ql: 10, qa: 60 },
        radiator: {
          count: 2,
          fsHz: 24,
          qms: 9,
          vasLitres: 60,
          sdCm2: 360,
          addedMassGrams: 120,
          xmaxMm: 16,
        },
      },
    },
  },
  { id: 'bandpass-single', input: { ...base, enclosure: singleTuned } },
  {
    id: 'bandpass-single-six-drivers',
    input: {
      ...base,
      driver: { ...medlar12Dual, sdCm2: 210, vasLitres: 16 },
      array: { count: 6, seriesPerString: 3, parallelStrings: 2, coilWiring: 'parallel' },
      enclosure: { ...singleTuned, rear: { netLitres: 90, ql: 15 }, front: { netLitres: 60, ql: 8 } },
    },
  },
  { id: 'bandpass-dual', input: { ...base, driver: medlar12, enclosure: dualTuned } },
  {
    id: 'isobaric-parallel-closed',
    input: {
      ...base,
      array: pair(1, 'single', 5.5),
      enclosure: { kind: 'closed', chamber: { netLitres: 16, ql: 8, qa: 40 } },
    },
  },
  {
    id: 'isobaric-series-vented',
    input: {
      ...base,
      driver: medlar12Dual,
      source: { voltageVrms: 12, outputOhm: 0.05, cableOhm: 0.08 },
      array: pair(2, 'parallel', 9),
      enclosure: { kind: 'vented', chamber: { netLitres: 34, ql: 7 }, port: roundPort },
    },
  },
  {
    id: 'isobaric-parallel-bandpass-dual',
    input: { ...base, driver: medlar12, array: pair(1, 'single', 8), enclosure: dualTuned },
  },
  {
    id: 'isobaric-baffle',
    input: { ...base, array: pair(1, 'single', 3), enclosure: { kind: 'infinite-baffle' } },
  },
];

/** Those that are also followed in time. */
export const STEP_CASES: readonly string[] = ['closed-lossy-four-dual-coils', 'vented', 'bandpass-dual'];

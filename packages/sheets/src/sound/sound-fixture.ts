// For tests and the bench: one Quince Q-10 with every figure stated, and designs of each kind of box round it.
import { driverFiguresSchema } from '@gusset/contracts/records';
import {
  type DriverFact,
  EMPTY_PORT,
  EMPTY_SOUND_INPUT,
  type SoundFacts,
  type SoundInput,
  type SoundPort,
  type SoundRadiator,
  type SoundResult,
} from '@gusset/contracts/sound';
import { soundSheet } from './sound-sheet.ts';

export const QUINCE_ID = '00000000-0000-7000-8000-000000000010';

/** Quince Q-10 of the acoustics reference: sealed 30.0 L gives alpha 1.6, fc 47.567 Hz, Qtc 0.75332 without losses. */
export const QUINCE_DRIVER: DriverFact = {
  id: QUINCE_ID,
  name: 'Quince Q-10',
  figures: driverFiguresSchema.parse({
    dataSheet: {
      fsHz: 29.5,
      qms: 4.6,
      qes: 0.52,
      vasLitres: 48,
      sdCm2: 340,
      reOhm: 3.6,
      leMh: 0,
      xmaxMm: 11,
      peWatts: 300,
    },
    overallDiaMm: 269,
    cutoutDiaMm: 236,
    mountingDepthMm: 141,
  }),
};

export const QUINCE_FACTS: SoundFacts = { driver: QUINCE_DRIVER, longestCabinM: 2.5 };

export const typed = (value: number) => ({ value, typed: String(value) });
export const litres = (value: number) => ({ litres: value, typed: String(value) });
export const length = (mm: number) => ({ mm, typed: String(mm), unit: 'mm' as const });

export const CLOSED_INPUT: SoundInput = {
  ...EMPTY_SOUND_INPUT,
  driverId: QUINCE_ID,
  drive: { watts: 300, typed: '300' },
  targetNet: litres(30),
};

/** A round one of 100 mm, flared with 20 mm at both ends. */
export const ROUND_PORT: SoundPort = {
  ...EMPTY_PORT,
  diameter: length(100),
  outerFlare: length(20),
  innerFlare: length(20),
  tuning: typed(32),
};

/** 280 × 40 mm along the floor of the box. */
export const SLOT_PORT: SoundPort = {
  ...EMPTY_PORT,
  shape: 'slot',
  width: length(280),
  height: length(40),
  walls: 1,
  tuning: typed(34),
};

export const RADIATOR: SoundRadiator = {
  count: 2,
  fsHz: typed(18),
  qms: typed(6),
  vasLitres: typed(60),
  sdCm2: typed(480),
  addedMassGrams: typed(40),
  xmaxMm: typed(16),
};

export const VENTED_INPUT: SoundInput = {
  ...CLOSED_INPUT,
  enclosure: 'vented',
  targetNet: litres(60),
  leak: 'usual',
  port: ROUND_PORT,
};

export const INPUTS_BY_KIND: Readonly<Record<SoundInput['enclosure'], SoundInput>> = {
  'infinite-baffle': { ...CLOSED_INPUT, enclosure: 'infinite-baffle', targetNet: null },
  closed: CLOSED_INPUT,
  vented: VENTED_INPUT,
  'passive-radiator': {
    ...CLOSED_INPUT,
    enclosure: 'passive-radiator',
    targetNet: litres(45),
    radiator: RADIATOR,
  },
  'single-tuned-bandpass': {
    ...CLOSED_INPUT,
    enclosure: 'single-tuned-bandpass',
    targetNet: litres(28),
    front: { net: litres(22), fill: 'none' },
    port: { ...SLOT_PORT, tuning: typed(52) },
  },
  'dual-tuned-bandpass': {
    ...CLOSED_INPUT,
    enclosure: 'dual-tuned-bandpass',
    targetNet: litres(50),
    front: { net: litres(24), fill: 'none' },
    rearPort: { ...ROUND_PORT, tuning: typed(31) },
    port: { ...SLOT_PORT, tuning: typed(68) },
  },
};

/** The result, or a failed test that says why there is none. */
export function soundResultOf(input: SoundInput, facts: SoundFacts = QUINCE_FACTS): SoundResult {
  const outcome = soundSheet.compute(input, facts, {});
  if (outcome.state !== 'ready') throw new Error(JSON.stringify(outcome));
  return outcome.result;
}

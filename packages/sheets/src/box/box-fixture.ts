// For tests and the bench: a box of 18 mm board for one Quince Q-10 in the Merle estate, every figure stated.
import { buildCavity, HATCH_ESTATE, NO_SURROUNDINGS } from '@gusset/cargo';
import type { BoxFacts, BoxInput, BoxSheetResult, SheetFact } from '@gusset/contracts/box';
import { type CavityResult, DEFAULT_CLEARANCES, type Measurement } from '@gusset/contracts/cargo';
import { driverFiguresSchema, finishFiguresSchema, sheetFiguresSchema } from '@gusset/contracts/records';
import type { SoundFacts, SoundInput, SoundResult } from '@gusset/contracts/sound';
import { isRefusal } from '@gusset/units';
import { soundSheet } from '../sound/sound-sheet.ts';
import type { BoxUpstream } from './box-design.ts';
import { boxSheet } from './box-sheet.ts';

export const MDF_ID = '00000000-0000-7000-8000-000000000018';
export const PLY_ID = '00000000-0000-7000-8000-000000000025';
export const CARPET_ID = '00000000-0000-7000-8000-000000000004';
export const QUINCE_ID = '00000000-0000-7000-8000-000000000010';

export const length = (mm: number) => ({ mm, typed: String(mm), unit: 'mm' as const });

export const MDF: SheetFact = {
  id: MDF_ID,
  name: 'MDF 18',
  figures: sheetFiguresSchema.parse({
    material: 'mdf',
    nominalThicknessMm: 18,
    measuredThicknessMm: 18,
    lengthMm: 2440,
    widthMm: 1220,
    densityKgPerM3: 720,
  }),
};

/** Quince Q-10 of the acoustics reference, with the figures of its drawing. */
export const QUINCE = {
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
      displacementLitres: 2,
    },
    overallDiaMm: 269,
    cutoutDiaMm: 236,
    boltCircleDiaMm: 254,
    boltCount: 8,
    flangeThicknessMm: 6,
    mountingDepthMm: 141,
    magnetDiaMm: 156,
    massKg: 6.4,
  }),
};

export const BOX_FACTS: BoxFacts = {
  carcass: MDF,
  baffle: null,
  finishes: [
    {
      id: CARPET_ID,
      name: 'Charcoal carpet',
      figures: finishFiguresSchema.parse({ finish: 'carpet', thicknessMm: 4 }),
    },
  ],
  driver: QUINCE,
  clearances: DEFAULT_CLEARANCES,
  payloadKg: 450,
};

export const SOUND_FACTS: SoundFacts = { driver: QUINCE, longestCabinM: 2.5 };
export const SOUND_INPUT: SoundInput = {
  ...soundSheet.emptyInput(),
  driverId: QUINCE_ID,
  drive: { watts: 300, typed: '300' },
  targetNet: { litres: 30, typed: '30' },
};

export function soundResult(changes: Partial<SoundInput> = {}): SoundResult {
  const outcome = soundSheet.compute({ ...SOUND_INPUT, ...changes }, SOUND_FACTS, {});
  if (outcome.state !== 'ready') throw new Error(JSON.stringify(outcome));
  return outcome.result;
}

const reading = (key: string, valueMm: number): Measurement => ({
  key,
  valueMm,
  typed: String(valueMm),
  plusMinusMm: 2,
  method: 'tape',
  takenBy: 'M. Ilves',
  takenAt: '2026-11-24T09:30:00Z',
});

const lean = (valueRad: number): Measurement => ({
  key: 'seatLean',
  valueRad,
  typed: String(valueRad),
  plusMinusRad: 0,
  method: 'tape',
  takenBy: 'M. Ilves',
  takenAt: '2026-11-24T09:30:00Z',
});

function cavityOf(readings: readonly Measurement[]): CavityResult {
  const level = [reading('floorRise', 0), reading('sillLean', 0), reading('lidFrame', 0)];
  const cavity = buildCavity(HATCH_ESTATE, [...level, ...readings], NO_SURROUNDINGS);
  if (isRefusal(cavity)) throw new Error(JSON.stringify(cavity));
  return cavity;
}

/** A space 800 deep, 500 high and 1000 wide with square corners, open at its whole rear, way in 950 wide. */
export function squareCavity(depthMm = 800): CavityResult {
  return cavityOf([
    reading('floorDepth', depthMm),
    reading('seatHeight', 500),
    reading('opening', 500),
    reading('roofDepth', depthMm),
    reading('sillHeight', 0),
    lean(0),
    reading('openingWidth', 950),
    reading('archWidth', 1000),
  ]);
}

/** The Merle estate: a seat that leans 3 in 4, a sill 120 high, a hatch that leans the other way. */
export function leaningCavity(): CavityResult {
  return cavityOf([
    reading('floorDepth', 800),
    reading('seatHeight', 520),
    reading('opening', 500),
    reading('roofDepth', 110),
    reading('sillHeight', 120),
    lean(Math.atan2(3, 4)),
    reading('openingWidth', 950),
    reading('archWidth', 1000),
  ]);
}

/** 600 × 380 × 320 mm outside, 18 mm board all round, no braces: (564 × 344 × 284) mm³ = 55.100544 L inside. */
export const BOX_INPUT: BoxInput = {
  ...boxSheet.emptyInput(),
  outside: { width: length(600), height: length(380), depth: length(320), depthTop: null, kneeHeight: null },
  carcassId: MDF_ID,
  bracing: { kind: 'none' },
};

export const BOX_UPSTREAM: BoxUpstream = { survey: { cavity: squareCavity() }, sound: soundResult() };

export function boxOutcome(
  changes: Partial<BoxInput> = {},
  facts: BoxFacts = BOX_FACTS,
  upstream: BoxUpstream = BOX_UPSTREAM,
) {
  return boxSheet.compute({ ...BOX_INPUT, ...changes }, facts, upstream);
}

/** The result, or a failed test that says why there is none. */
export function boxResult(...given: Parameters<typeof boxOutcome>): BoxSheetResult {
  const outcome = boxOutcome(...given);
  if (outcome.state !== 'ready') throw new Error(JSON.stringify(outcome));
  return outcome.result;
}

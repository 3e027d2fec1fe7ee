// Between sheet 03 and the search: what the sheet already knows, and a found design as the sheet's own fields.
import { arrayResistanceOhm, deriveDriver } from '@gusset/acoustics';
import type { PassiveRadiator } from '@gusset/contracts/acoustics';
import {
  EMPTY_PORT,
  FILL_EFFECT,
  LEAK_Q,
  type SoundDesign,
  type SoundFacts,
  type SoundInput,
  type SoundRadiator,
} from '@gusset/contracts/sound';
import { cabinOf } from '@gusset/sheets';
import { isRefusal } from '@gusset/units';
import type { SearchDefaults } from './search-entry.ts';
import type { FoundDesign } from './search-words.ts';

/** Nominal load over direct-current resistance, as drivers are named (IEC 60268-5). */
const NOMINAL_OF_RESISTANCE = 1 / 0.8;

export function searchDefaults(input: SoundInput, facts: SoundFacts): SearchDefaults {
  return {
    netLitres: input.targetNet === null ? null : input.targetNet.litres + (frontLitres(input) ?? 0),
    watts: input.drive?.watts ?? null,
    loadOhm: loadOf(input, facts),
    cabin: cabinOf(input.cabin, facts).cabin,
    losses: { ...FILL_EFFECT[input.fill], ql: LEAK_Q[input.leak] },
    radiators: radiatorsOf(input.radiator),
  };
}

/** What the sheet goes on with when a design is taken; filters, lining and car stay as they are. */
export function takenDesign(found: FoundDesign, { fill, radiator }: SoundDesign): Partial<SoundDesign> {
  const { driverId, count, seriesPerString, coilWiring, enclosure } = found;
  return {
    driverId,
    count,
    seriesPerString,
    coilWiring,
    isobaric: null,
    drive: { watts: toTenth(found.watts), typed: toTenth(found.watts).toString() },
    enclosure: enclosure.kind,
    ...chambersOf(found, fill),
    ...(found.port === null || found.tuningHz === null
      ? {}
      : {
          port: {
            ...EMPTY_PORT,
            diameter: { mm: found.port.diameterMm, typed: String(found.port.diameterMm), unit: 'mm' },
            tuning: typedTenth(found.tuningHz),
          },
        }),
    ...(enclosure.kind === 'passive-radiator'
      ? { radiator: { ...radiator, addedMassGrams: typedTenth(enclosure.radiator.addedMassGrams) } }
      : {}),
  };
}

function chambersOf({ enclosure }: FoundDesign, fill: SoundDesign['fill']): Partial<SoundDesign> {
  if (enclosure.kind === 'infinite-baffle') return {};
  if (!('rear' in enclosure)) return { targetNet: typedLitres(enclosure.chamber.netLitres) };
  return {
    targetNet: typedLitres(enclosure.rear.netLitres),
    front: { net: typedLitres(enclosure.front.netLitres), fill },
  };
}

function frontLitres({ enclosure, front }: SoundInput): number | null {
  const hasFront = enclosure === 'single-tuned-bandpass' || enclosure === 'dual-tuned-bandpass';
  return hasFront ? (front.net?.litres ?? null) : null;
}

function loadOf({ count, seriesPerString, coilWiring }: SoundInput, { driver }: SoundFacts): number | null {
  const sheet = driver === null ? null : deriveDriver(driver.figures.dataSheet);
  if (sheet === null || isRefusal(sheet)) return null;
  const parallelStrings = count / seriesPerString;
  const array = { count, seriesPerString, parallelStrings, coilWiring, isobaric: null };
  return arrayResistanceOhm(sheet.driver, array) * NOMINAL_OF_RESISTANCE;
}

/** The radiator of the sheet, once its figures are all there; the search finds the mass itself. */
function radiatorsOf({ count, fsHz, qms, vasLitres, sdCm2, xmaxMm }: SoundRadiator): PassiveRadiator[] {
  if (fsHz === null || qms === null || vasLitres === null || sdCm2 === null) return [];
  return [
    {
      count,
      fsHz: fsHz.value,
      qms: qms.value,
      vasLitres: vasLitres.value,
      sdCm2: sdCm2.value,
      addedMassGrams: 0,
      xmaxMm: xmaxMm?.value ?? null,
    },
  ];
}

function toTenth(value: number): number {
  return Math.round(value * 10) / 10;
}

function typedTenth(value: number) {
  return { value: toTenth(value), typed: String(toTenth(value)) };
}

function typedLitres(litres: number) {
  return { litres: Math.round(litres * 100) / 100, typed: String(Math.round(litres * 100) / 100) };
}

// Sheets of the first program: their inputs and results still read, and say what they said.
import {
  keptSoundInput,
  type SoundInput,
  type SoundResult,
  toSoundInput,
  toSoundResult,
} from '@gusset/contracts/sound';
import { describe, expect, it } from 'vitest';
import { soundKeyFigures } from './sound-figures.ts';
import { CLOSED_INPUT, QUINCE_FACTS, QUINCE_ID, soundResultOf } from './sound-fixture.ts';
import { soundSheet } from './sound-sheet.ts';
import { soundHeadline } from './sound-words.ts';

/** As it stands in databases: nine keys, one closed box. */
const EARLIER_INPUT = {
  driverId: QUINCE_ID,
  count: 1,
  seriesPerString: 1,
  coilWiring: 'single',
  drive: { watts: 300, typed: '300' },
  targetNet: { litres: 30, typed: '30' },
  fill: 'lined',
  cabin: 'estimate',
  notes: 'typed then',
};

/** A result as it was kept then: today's closed box without what came later. */
function earlierResult(): unknown {
  const result = soundResultOf({ ...CLOSED_INPUT, fill: 'lined' });
  const later = [
    'isobaric',
    'enclosure',
    'chambers',
    'ports',
    'radiator',
    'amplifier',
    'tuningHz',
    'rearTuningHz',
    'reachesToHz',
    'travelStretches',
    'travelLimitWatts',
    'letter',
    'name',
    'cabin',
    'cabinLabel',
    'target',
    'variants',
  ];
  const laterCurves = ['phaseRad', 'currentArms', 'realPowerWatts', 'apparentPowerVa', 'drives'];
  const without = (value: object, keys: readonly string[]) =>
    Object.fromEntries(Object.entries(value).filter(([key]) => !keys.includes(key)));
  return { ...without(result, later), curves: without(result.curves, laterCurves) };
}

describe('an input of the first program', () => {
  it('reads as a closed box with nothing typed lost', () => {
    const read = keptSoundInput(EARLIER_INPUT);
    expect(read).toMatchObject({
      ...EARLIER_INPUT,
      enclosure: 'closed',
      leak: 'tight',
      variants: [],
      letter: 'A',
    });
  });
  it('is worked out to the same figures as before', () => {
    const kept: unknown = EARLIER_INPUT;
    const outcome = soundSheet.compute(kept as SoundInput, QUINCE_FACTS, {}); // what the database hands over
    expect(outcome).toMatchObject({ state: 'ready', result: { netLitres: 30, rdcOhm: 3.6 } });
    expect(outcome).toEqual(soundSheet.compute(toSoundInput(kept as SoundInput), QUINCE_FACTS, {}));
  });
  it('is not made of something that is no input', () => {
    expect(keptSoundInput({ ...EARLIER_INPUT, count: 'two' })).toBeNull();
    expect(keptSoundInput('sound')).toBeNull();
  });
});

describe('a result of the first program', () => {
  const kept = earlierResult() as SoundResult; // what the database hands over
  it('reads as today’s closed box', () => {
    const today = soundResultOf({ ...CLOSED_INPUT, fill: 'lined' });
    const read = toSoundResult(kept);
    expect(read).toMatchObject({
      enclosure: 'closed',
      chambers: [{ role: 'only', netLitres: 30 }],
      travelLimitWatts: today.travelLimitWatts,
      travelStretches: today.travelStretches,
      cabin: 'estimate',
    });
    expect(read.amplifier.mostAmps).toBeCloseTo(today.amplifier.mostAmps, 4);
    expect(soundHeadline(read)).toEqual(soundHeadline(today));
  });
  it('lists no change beside the same design issued today', () => {
    expect(soundKeyFigures(kept)).toEqual(soundKeyFigures(soundResultOf({ ...CLOSED_INPUT, fill: 'lined' })));
  });
  it('reaches the sheets that read it in today’s shape', () => {
    expect(soundSheet.shared?.result(kept)).toMatchObject({ ports: [], chambers: [{ netLitres: 30 }] });
  });
});
